"""Lines and measures of a rebalanced formula as the page prints them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.publish.typography import MINUS, NO_BREAK
from entremetry.words import decimal, say, say_as, say_as_later

if TYPE_CHECKING:
    from entremetry.adapt.rebalanced import MeasureChange, Rebalanced

ABSENT = "–"
WISHES = {"asked": say_as_later("wish", "asked for"), "kept": say_as_later("wish", "kept")}


@dataclass(frozen=True, slots=True, kw_only=True)
class LineRow:
    """A line before and after; `changed` tells that it is not the same."""

    name: str
    before: str
    after: str
    changed: bool
    pinned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureRow:
    """A measure before and after, what was wished of it, and whether that held."""

    words: str
    before: str
    after: str
    wish: str
    ends: str
    held: bool


def line_rows(result: Rebalanced) -> tuple[LineRow, ...]:
    """Lines in the order of the formula."""
    return tuple(
        LineRow(
            name=line.name,
            before=_mass(line.before),
            after=_mass(line.after),
            changed=_mass(line.before) != _mass(line.after),
            pinned=line.pinned,
        )
        for line in result.lines
    )


def measure_rows(result: Rebalanced) -> tuple[MeasureRow, ...]:
    """Measures that the component has, and those that were wished."""
    return tuple(
        MeasureRow(
            words=each.measure.said,
            before=_value(each, each.before),
            after=_value(each, each.after),
            wish=say_as("wish", WISHES[each.wish]) if each.wish else "",
            ends=say("{low} to {high}", low=_value(each, each.low), high=_value(each, each.high)),
            held=each.held,
        )
        for each in result.measures
        if each.before or each.after or each.wish
    )


def _mass(mass: float | None) -> str:
    """Mass as a document says it, so that no change is hidden by rounding."""
    return ABSENT if mass is None else decimal(f"{mass * 1e3:.6g}") + f"{NO_BREAK}g"


def _value(each: MeasureChange, value: float | None) -> str:
    if value is None or value in (float("inf"), float("-inf")):
        return ABSENT
    number = decimal(f"{each.measure.printed(value):.3g}").replace("-", MINUS)
    return f"{number}{NO_BREAK}{each.measure.unit}"
