"""Values and limits as a cook reads them."""

from __future__ import annotations

from math import isfinite

from entremetry.checks.band import Band
from entremetry.checks.verdict import Input
from entremetry.words import decimal, say


def number(value: float) -> str:
    """A number with the digits that matter at the bench, as it is written where it is read."""
    size = abs(value)
    places = 0 if size >= 100.0 else 1 if size >= 1.95 else 2
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else decimal(text)


def amount(value: float, unit: str) -> str:
    """A number with its unit."""
    return f"{number(value)} {unit}".rstrip()


def said(band: Band) -> str:
    """Where a value should lie, in words."""
    if isfinite(band.low) and isfinite(band.high):
        high = amount(band.high, band.unit)
        return say("{low} to {high}", low=number(band.low), high=high)
    if isfinite(band.low):
        return say("at least {amount}", amount=amount(band.low, band.unit))
    return say("at most {amount}", amount=amount(band.high, band.unit))


def given(name: str, value: float, unit: str) -> Input:
    """An input of a verdict."""
    return Input(name=name, said=amount(value, unit))
