"""Oven settings: fan and conventional, and the conventional pairs of °C and °F."""

from __future__ import annotations

from entremetry.quantities.rounding import fixed, rounded
from entremetry.quantities.spelling import unit_named
from entremetry.quantities.temperature import to_celsius
from entremetry.words import say

FAN_CORRECTION = 20.0
"""How much lower a fan oven is set [K]: common practice, no source, so adjustable."""

CONVENTIONAL_PAIRS: dict[int, tuple[int, ...]] = {
    110: (225,),
    120: (250,),
    130: (250,),
    135: (275,),
    140: (275,),
    150: (300,),
    160: (325,),
    165: (325,),
    170: (325,),
    175: (350,),
    180: (350,),
    190: (375,),
    200: (400,),
    205: (400,),
    210: (410, 400, 425),
    220: (425,),
    230: (450,),
    240: (475, 465),
    245: (475,),
    250: (475, 480, 500),
    260: (500,),
}
"""°C with the °F that ovens and books pair with it, the one we print first.

sizes_gas_mark and, where tables differ by 5 or 10 °C, common practice.
"""

LOWEST_OVEN = 273.15 + 120.0
_TOLERANCE = 5.0 + 1e-9


def conventional_fahrenheit(celsius: float) -> int:
    """Return the °F that goes with a setting in °C: 350 with 180."""
    pair = CONVENTIONAL_PAIRS.get(int(rounded(celsius)))
    if pair:
        return pair[0]
    exact = unit_named("°F").from_si(unit_named("°C").to_si(celsius))
    return int(rounded(exact / 5)) * 5


def is_conventional(celsius: float, fahrenheit: float) -> bool:
    """Tell whether two oven settings are used for one another, exact or not."""
    if fahrenheit in CONVENTIONAL_PAIRS.get(int(rounded(celsius)), ()):
        return celsius == int(celsius)
    if celsius < to_celsius(LOWEST_OVEN) or celsius % 5 or fahrenheit % 25:
        return False
    exact = to_celsius(unit_named("°F").to_si(fahrenheit))
    return abs(exact - celsius) <= _TOLERANCE


def oven_temperature(kelvin: float, *, fan: bool, fan_correction: float = FAN_CORRECTION) -> str:
    """Write an oven setting for both sorts of oven.

    `kelvin` is what the document says, for a fan oven if `fan`:
    160 °C fan (180 °C / 350 °F conventional), or 180 °C / 350 °F (160 °C fan).
    """
    conventional = to_celsius(kelvin) + (fan_correction if fan else 0.0)
    fanned = fixed(conventional - fan_correction)
    both = f"{fixed(conventional)} °C / {conventional_fahrenheit(conventional)} °F"
    if fan:
        return say("{fan} °C fan ({both} conventional)", fan=fanned, both=both)
    return say("{both} ({fan} °C fan)", fan=fanned, both=both)
