"""Sentences of filling one cavity, in the language that is spoken. Masses in kg, depths in m."""

from __future__ import annotations

from entremetry.quantities import format_length, format_mass
from entremetry.words import say

MOULD, CAVITY, GLASS, VESSEL = "mould", "cavity", "glass", "vessel"
"""What is filled."""


def filled(
    kind: str, one: str, name: str, mass: float, depth: float, *, closing: bool, first: bool
) -> str:
    """Put in the first of a component, in the way of its kind, up to `depth` below the rim."""
    what = say("{mass} of the {name}", mass=format_mass(mass), name=_inside(name))
    until = f"{_level(depth)}{_levelled(closing)}"
    match kind:
        case "mousse":
            return say("Pipe {what} {into}, {until}.", what=what, into=_into(one), until=until)
        case "crumble" | "garnish":
            onto = _into(one) if first else _onto(one)
            return say("Scatter {what} {onto}, {until}.", what=what, onto=onto, until=until)
        case "base":
            return say("Spread {what} {into}, {until}.", what=what, into=_into(one), until=until)
    return say("Pour {what} {into}, {until}.", what=what, into=_into(one), until=until)


def covered(name: str, mass: float, depth: float, *, closing: bool) -> str:
    """Put in more of a component that is in already."""
    return say(
        "Cover with {mass} more of the {name}, {until}.",
        mass=format_mass(mass),
        name=_inside(name),
        until=f"{_level(depth)}{_levelled(closing)}",
    )


def brushed(base: str, soak: str, mass: float) -> str:
    """Brush a base with a syrup."""
    return say(
        "Brush the {base} with {mass} of the {soak}.",
        base=_inside(base),
        mass=format_mass(mass),
        soak=_inside(soak),
    )


def pressed_level(name: str) -> str:
    """Press a part in up to the rim."""
    return say("Press the {name} in until it is level with the rim.", name=_inside(name))


def laid_on_bottom(name: str, one: str) -> str:
    """Lay a part in first."""
    name = _inside(name)
    match one:
        case "cavity":
            return say("Lay the {name} on the bottom of each cavity.", name=name)
        case "glass":
            return say("Lay the {name} on the bottom of each glass.", name=name)
        case "vessel":
            return say("Lay the {name} on the bottom of each vessel.", name=name)
    return say("Lay the {name} on the bottom of the mould.", name=name)


def laid_on(name: str, below: float) -> str:
    """Lay a base on what is in already."""
    return say(
        "Lay the {name} on; its top is {depth} below the rim.",
        name=_inside(name),
        depth=_millimetres(below),
    )


def pressed_in(name: str, below: float, *, flat_down: bool) -> str:
    """Press in an insert to a depth."""
    fields = {"name": _inside(name), "depth": _millimetres(below)}
    if flat_down:
        return say(
            "Press in the {name}, flat side down, until its top is {depth} below the rim.", **fields
        )
    return say(
        "Press in the {name}, flat side up, until its top is {depth} below the rim.", **fields
    )


def _level(depth: float) -> str:
    if not depth:
        return say("to the rim")
    return say("to {depth} below the rim", depth=_millimetres(depth))


def _levelled(closing: bool) -> str:
    return say("; level it") if closing else ""


def _into(one: str) -> str:
    match one:
        case "cavity":
            return say("into each cavity")
        case "glass":
            return say("into each glass")
        case "vessel":
            return say("into each vessel")
    return say("into the mould")


def _onto(one: str) -> str:
    match one:
        case "cavity":
            return say("onto each cavity")
        case "glass":
            return say("onto each glass")
        case "vessel":
            return say("onto each vessel")
    return say("onto the mould")


def _millimetres(length: float) -> str:
    return format_length(round(length * 1e3) / 1e3)


def _inside(name: str) -> str:
    """Name as it stands inside a sentence."""
    return name[:1].lower() + name[1:]
