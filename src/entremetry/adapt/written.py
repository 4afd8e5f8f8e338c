"""Quantities as an adapted document writes them."""

from __future__ import annotations

import math

MINUTE, HOUR = 60.0, 3600.0


def length(metres: float) -> str:
    """A length in millimetres: '12 mm'."""
    return f"{metres * 1e3:.4g} mm"


def mass(kilograms: float) -> str:
    """A mass in grams: '60 g'."""
    return f"{kilograms * 1e3:.6g} g"


def time(seconds: float) -> str:
    """A time: '45 min', '6 h', '1.5 h'."""
    if seconds < HOUR:
        return f"{seconds / MINUTE:.0f} min"
    return f"{seconds / HOUR:.6g} h"


def rounded_up(seconds: float) -> float:
    """A time rounded up to what one sets a clock to: quarters of an hour, from three hours halves.

    A heat computation is good to a tenth or so; finer would be a pretence. [s]
    """
    step = 15.0 * MINUTE if seconds < 3.0 * HOUR else 30.0 * MINUTE
    return math.ceil(seconds / step - 1e-9) * step


def millimetres(metres: float) -> float:
    """Rounded to whole millimetres. [m]"""
    return round(metres * 1e3) / 1e3


def minutes_of_hands(minutes: float) -> str:
    """Minutes of work, to the minute, from half an hour to five."""
    step = 1.0 if minutes < 30.0 else 5.0
    return f"{max(1.0, round(minutes / step) * step):.0f} min"
