"""The shape of an insert in words."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.words import decimal, say


def shape_spoken(shape: Mapping[str, str]) -> str:
    """A shape in words: 'a disc of 160 × 15 mm'."""
    match shape["kind"]:
        case "hemisphere":
            return say("a half-sphere of {size}", size=decimal(shape["diameter"]))
        case "cylinder":
            return say("a disc of {size}", size=_times(shape, "diameter", "height"))
        case "log":
            return say("a half-round log of {sizes}", sizes=_times(shape, "length", "width"))
        case "ring":
            return say(
                "a flat ring of {sizes} with a hole of {hole}",
                sizes=_times(shape, "diameter", "height"),
                hole=decimal(shape["hole_diameter"]),
            )
    return say("a bar of {sizes}", sizes=_times(shape, "length", "width", "height"))


def _times(shape: Mapping[str, str], *keys: str) -> str:
    *first, last = (shape[key] for key in keys)
    return decimal(" × ".join([*(each.removesuffix(" mm") for each in first), last]))
