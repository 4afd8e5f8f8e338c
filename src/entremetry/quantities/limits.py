"""What is absurd in a kitchen: the widest value of each kind that is accepted."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.errors import QuantityError
from entremetry.quantities.unit import A_KIND, Kind
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """Lowest and highest accepted SI value of a kind, in words too."""

    low: float
    high: float
    words: str
    zero: bool = False


LIMITS: dict[Kind, Limit] = {
    Kind.MASS: Limit(low=1e-9, high=1000.0, words=say_later("more than 0 g, up to 1000 kg")),
    Kind.VOLUME: Limit(low=1e-12, high=1.0, words=say_later("more than 0 ml, up to 1000 l")),
    Kind.LENGTH: Limit(low=1e-6, high=10.0, words=say_later("more than 0 mm, up to 10 m")),
    Kind.AREA: Limit(low=1e-12, high=100.0, words=say_later("more than 0 mm², up to 100 m²")),
    Kind.TEMPERATURE: Limit(low=70.0, high=1273.15, words=say_later("-203 °C to 1000 °C")),
    Kind.TEMPERATURE_DIFFERENCE: Limit(
        low=0.0, high=1000.0, words=say_later("0 °C to 1000 °C"), zero=True
    ),
    Kind.DURATION: Limit(
        low=0.0, high=366 * 86400.0, words=say_later("0 min to 366 days"), zero=True
    ),
    Kind.FRACTION: Limit(low=0.0, high=10.0, words=say_later("0 % to 1000 %"), zero=True),
    Kind.DENSITY: Limit(low=10.0, high=5000.0, words=say_later("0.01 g/ml to 5 g/ml")),
    Kind.MASS_PER_AREA: Limit(
        low=1e-6, high=1000.0, words=say_later("more than 0 g/cm², up to 100 g/cm²")
    ),
    Kind.COUNT: Limit(low=1e-6, high=1e6, words=say_later("more than 0, up to 1000000")),
}
"""Ours: common practice, no source. They catch slips, not bad taste."""


def require(kind: Kind, value: float, written: str, *, zero: bool = False) -> float:
    """Return `value`, or raise QuantityError if it is absurd for its kind."""
    limit = LIMITS[kind]
    if value == 0 and (zero or limit.zero):
        return value
    if not limit.low <= value <= limit.high:
        found = say("'{text}', out of bounds for {kind}", text=written, kind=say(A_KIND[kind]))
        raise QuantityError(found, say(limit.words))
    return value
