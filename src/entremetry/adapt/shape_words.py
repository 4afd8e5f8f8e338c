"""The shape of an insert in words."""

from __future__ import annotations

from collections.abc import Mapping


def shape_spoken(shape: Mapping[str, str]) -> str:
    """A shape in words: 'a disc of 160 × 15 mm'."""
    match shape["kind"]:
        case "hemisphere":
            return f"a half-sphere of {shape['diameter']}"
        case "cylinder":
            return f"a disc of {_times(shape, 'diameter', 'height')}"
        case "log":
            return f"a half-round log of {_times(shape, 'length', 'width')}"
        case "ring":
            hole = shape["hole_diameter"]
            return f"a flat ring of {_times(shape, 'diameter', 'height')} with a hole of {hole}"
    return f"a bar of {_times(shape, 'length', 'width', 'height')}"


def _times(shape: Mapping[str, str], *keys: str) -> str:
    *first, last = (shape[key] for key in keys)
    return " × ".join([*(each.removesuffix(" mm") for each in first), last])
