"""Quantities as answers say them, with the signs and words of the language that is spoken."""

from __future__ import annotations

from entremetry.quantities import (
    format_celsius,
    format_duration,
    format_fraction,
    format_mass,
    format_volume,
)
from entremetry.words import say

HOUR = 60
TWO_DAYS = 48 * HOUR


def mass(kilograms: float) -> str:
    """A mass as a scale shows it."""
    return format_mass(kilograms)


def volume(cubic_metres: float) -> str:
    """A volume as a jug shows it."""
    return format_volume(cubic_metres)


def share(fraction: float) -> str:
    """A share in per cent."""
    return format_fraction(fraction)


def celsius(kelvin: float) -> str:
    """A temperature to a tenth of a degree."""
    return format_celsius(kelvin, decimals=1)


def time(minutes: float) -> str:
    """A time in minutes, hours or, from two on, days."""
    whole = round(minutes)
    if whole < TWO_DAYS:
        return format_duration(60.0 * whole)
    days, hours = divmod(round(whole / HOUR), 24)
    told = say("{number} days", number=days)
    return f"{told} {hours} h" if hours else told
