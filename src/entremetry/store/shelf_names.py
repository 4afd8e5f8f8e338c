"""Names of the built-in moulds, in the language that is spoken."""

from __future__ import annotations

import re

from entremetry.words import say, say_later

_SIZE = re.compile(r"\d.* mm")
_NAMES = frozenset(
    (
        say_later("Bar {size}"),
        say_later("Conical glass {size}"),
        say_later("Coupe {size}"),
        say_later("Cube {size}"),
        say_later("Cylinder {size}"),
        say_later("Frame {size}"),
        say_later("Half-round log {size}"),
        say_later("Half-sphere {size}"),
        say_later("Insert disc {size}"),
        say_later("Insert log {size}"),
        say_later("Low dome {size}"),
        say_later("Oval dome {size}"),
        say_later("Ring {size}"),
        say_later("Rounded log {size}"),
        say_later("Savarin {size}"),
        say_later("Serving dish {size}"),
        say_later("Sphere {size} in two halves"),
        say_later("Square frame {size}"),
        say_later("Straight glass {size}"),
        say_later("Truncated cone {size}"),
    )
)


def shelf_name(written: str) -> str:
    """Name of a mould of the shelf; its size stays as it is written."""
    size = _SIZE.search(written)
    name = _SIZE.sub("{size}", written)
    return say(name, size=size[0]) if size and name in _NAMES else written
