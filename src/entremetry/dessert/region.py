"""Whose egg sizes, sticks and blocks a reader has, told by whose measures they use."""

from __future__ import annotations

AMERICAN, EUROPEAN = "(US)", "(EU)"


def region_of(measures: str | None) -> str | None:
    """Region of the larder's size classes, 'us' or 'eu'; None if no measures are known."""
    if measures is None:
        return None
    return "us" if measures == "us" else "eu"


def is_elsewhere(name: str, measures: str) -> bool:
    """Whether a thing is sold in sizes of the other region, such as '(US)' for a European."""
    other = EUROPEAN if measures == "us" else AMERICAN
    return name.endswith(other)
