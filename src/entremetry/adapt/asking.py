"""What is asked of a component in words: 'fat=30 %', 'sugars=-20 %', 'cream-35=250..400 g'."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from entremetry.adapt.swap import Swap
from entremetry.dessert.dessert import Component, Line
from entremetry.errors import QuantityError, UnknownName
from entremetry.formula.measure import Measure
from entremetry.formula.measures import USUAL, measure_named
from entremetry.formula.wish import Wish, kept
from entremetry.physics.gelatine import BloomRule
from entremetry.words import quoted, say, say_later

NUMBER = re.compile(r"([+\-−]?)\s*(\d+(?:[.,]\d+)?)\s*(\S*)")
TEMPERATURES = ("°C", "C", "c", "°c")
KILOGRAMS = {"g": 1e-3, "kg": 1.0, "": 1e-3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a person asks of one component, as typed.

    `targets` are measures with a value, `keeps` measures that must stay, `pins` lines that must,
    `bounds` lines with two ends. What is usual is kept as well, unless it stands in the way.
    """

    component: str
    targets: tuple[str, ...] = ()
    keeps: tuple[str, ...] = ()
    pins: tuple[str, ...] = ()
    bounds: tuple[str, ...] = ()
    swaps: tuple[Swap, ...] = ()
    rule: BloomRule = BloomRule.LINEAR


@dataclass(frozen=True, slots=True)
class Room:
    """Ends within which lines may change. [kg]"""

    ends: dict[str, tuple[float, float]] = field(default_factory=dict)


def wishes(asked: Asked, before: dict[str, float | None], dropped: Iterable[str]) -> list[Wish]:
    """Wishes of a person, then what is usually kept and not asked for otherwise.

    Raises
    ------
    UnknownName
        If there is no such measure.
    QuantityError
        If a value cannot be read, or the component has no such measure.
    """
    made = [_target(text, before) for text in asked.targets]
    made += [_keep(name, before) for name in asked.keeps]
    named = {wish.measure.name for wish in made} | set(dropped)
    for name in USUAL:
        value = before[name]
        if name not in named and value:
            made.append(kept(measure_named(name), value, firm=False))
    return made


def room(asked: Asked, component: Component) -> Room:
    """Ends of the lines that a person pinned or bounded.

    Raises
    ------
    UnknownName
        If the formula has no such line.
    QuantityError
        If a mass cannot be read.
    """
    ends: dict[str, tuple[float, float]] = {}
    for name in asked.pins:
        line = line_named(component, name)
        ends[line.name] = (line.mass, line.mass)
    for text in asked.bounds:
        name, ends_text = _parts(text, say_later("LINE=LOW..HIGH, such as cream-35=250..400 g"))
        low, high = _span(ends_text, text)
        ends[line_named(component, name).name] = (
            0.0 if low is None else _mass(low, text),
            math.inf if high is None else _mass(high, text),
        )
    return Room(ends)


def line_named(component: Component, name: str) -> Line:
    """Line with this name, or the only one with this ingredient."""
    of_ingredient = [
        line
        for line in component.lines
        if line.ingredient is not None and name in (line.ingredient.id, line.ingredient.name)
    ]
    by_name = [line for line in component.lines if line.name == name]
    found = by_name or of_ingredient
    if len(found) != 1:
        raise UnknownName(
            "line of {component}",
            name,
            [ln.name for ln in component.lines],
            component=component.name,
        )
    return found[0]


def _keep(name: str, before: dict[str, float | None]) -> Wish:
    measure = measure_named(name)
    return kept(measure, _there(measure, before), firm=True)


def _target(text: str, before: dict[str, float | None]) -> Wish:
    name, value = _parts(
        text, say_later("NAME=VALUE, such as fat=30 %, sugars=-20 % or brix=28..32")
    )
    measure = measure_named(name)
    now = _there(measure, before)
    if ".." in value:
        low_text, high_text = _span(value, text)
        low = -math.inf if low_text is None else _value(low_text, measure, now, text)
        high = math.inf if high_text is None else _value(high_text, measure, now, text)
        if low > high:
            raise QuantityError(quoted(text), say("two ends, the lower one first"))
        return Wish(measure=measure, aim=min(max(now, low), high), low=low, high=high)
    aim = _value(value, measure, now, text)
    half = measure.tolerance(aim)
    return Wish(measure=measure, aim=aim, low=aim - half, high=aim + half)


def _there(measure: Measure, before: dict[str, float | None]) -> float:
    value = before[measure.name]
    if value is None:
        accepted = say(
            "a measure that this component has: it is too dry or too strong for that one"
        )
        raise QuantityError(quoted(measure.name), accepted)
    return value


def _value(text: str, measure: Measure, now: float, whole: str) -> float:
    """A value in the unit of its measure, or with a sign and % a change relative to now."""
    found = NUMBER.fullmatch(text.strip())
    accepted = say("a number in {unit}, or a change such as -20 %", unit=measure.unit)
    if found is None:
        raise QuantityError(quoted(whole), accepted)
    sign, digits, unit = found.groups()
    number = float(digits.replace(",", ".")) * (-1.0 if sign in ("-", "−") else 1.0)
    if sign and unit == "%":
        return now * (1.0 + number / 100.0)
    if measure.name == "yield" and unit in KILOGRAMS:
        return _above_zero(number * KILOGRAMS[unit], whole)
    if unit not in ("", measure.unit, *(TEMPERATURES if measure.unit == "°C" else ())):
        raise QuantityError(quoted(whole), accepted)
    return measure.read(number)


def _mass(text: str, whole: str) -> float:
    found = NUMBER.fullmatch(text.strip())
    if found is None or found[3] not in KILOGRAMS or found[1] in ("-", "−"):
        raise QuantityError(
            quoted(whole),
            say("masses in g or kg, such as {example}", example="cream-35=250..400 g"),
        )
    return float(found[2].replace(",", ".")) * KILOGRAMS[found[3]]


def _above_zero(value: float, whole: str) -> float:
    if not value > 0.0:
        raise QuantityError(quoted(whole), say("more than nothing"))
    return value


def _parts(text: str, accepted: str) -> tuple[str, str]:
    name, equals, value = text.partition("=")
    if not (equals and name.strip() and value.strip()):
        raise QuantityError(quoted(text), say(accepted))
    return name.strip(), value.strip()


def _span(text: str, whole: str) -> tuple[str | None, str | None]:
    """Both ends of a span, of which one may be left out; a unit at the end goes for both."""
    low, dots, high = (part.strip() for part in text.partition(".."))
    if not dots:
        return low, low
    if not low and not high:
        raise QuantityError(quoted(whole), say("LOW..HIGH, of which one may be left out"))
    unit = high.lstrip("+-−0123456789.,")
    if low and low[-1:].isdigit():
        low += unit
    return low or None, high or None
