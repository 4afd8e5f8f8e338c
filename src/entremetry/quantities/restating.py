"""A number said anew in another unit, in the steps a kitchen writes for that unit."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.quantities.number import mixed_text
from entremetry.quantities.rounding import fixed, scaled, trimmed
from entremetry.quantities.unit import Kind, Unit

CLOSE = 0.025
"""A rough wording is good enough if it is as close as this."""
_CUPS = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1.0)
_STEPS: dict[str, tuple[float, ...]] = {
    "oz": (1, 0.5, 0.25),
    "in": (0.5, 0.25, 0.125),
    "cup": (0.125,),
    "tbsp": (0.5, 0.25),
    "tsp": (0.25, 0.125),
    "fl oz": (1, 0.5, 0.25),
    "pint": (0.5, 0.25, 0.125),
}
_DECIMALS = {
    "kg": (1, 2),
    "lb": (1, 2),
    "l": (1, 2),
    "cm": (0, 1),
    "m": (1, 2),
    "ft": (0, 1),
    "cl": (0, 1),
    "dl": (1, 2),
}


def wordings(number: float, unit: Unit) -> Iterator[tuple[float, str]]:
    """Yield values near a number in the steps people use with a unit, coarse before fine."""
    measure = unit.name.partition(" ")[2] or unit.name
    if unit.kind is Kind.TEMPERATURE:
        yield float(fixed(number)), fixed(number)
        return
    if measure == "cup":
        value = number // 1 + min(_CUPS, key=lambda part: abs(part - number % 1))
        yield value, mixed_text(value)
    for step in _STEPS.get(measure, ()):
        value = round(number / step) * step
        yield value, mixed_text(value)
    for decimals in _DECIMALS.get(measure, ()):
        yield float(fixed(number, decimals)), trimmed(number, decimals)
    if measure not in _STEPS and measure not in _DECIMALS:
        yield float(scaled(number)), scaled(number)


def exact(number: float) -> str:
    """Write a number with three digits that count."""
    text = f"{float(f'{number:.3g}'):f}"
    return text.rstrip("0").rstrip(".")
