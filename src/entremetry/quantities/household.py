"""A mass in household measures: what a hand can measure, and how far it drifts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from math import log

from entremetry.errors import QuantityError
from entremetry.quantities.number import mixed_text
from entremetry.quantities.parsing import parse_mass
from entremetry.quantities.printing import format_mass
from entremetry.quantities.spoonfuls import Spoonful, spoonfuls, volume_of
from entremetry.quantities.things import things
from entremetry.quantities.unit import Measures
from entremetry.words import decimal, say

LIMIT = 0.05
"""Drift that needs no words: the tolerance of household measures themselves."""
WIDEST = 0.20
"""Drift beyond which cups and spoons are no help at all, and the scales are asked for."""
_MOST_COUNTED = 12
_NEVER_HALVED = ("egg", "yolk", "white", "pinch", "drop", "dash")


class Method(StrEnum):
    """How the household amount is meant to be measured."""

    COUNTED = "counted"
    SPOONS = "cups and spoons"
    JUG = "jug"
    SCALES = "scales"


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureWeight:
    """What one measure weighs: a cup or spoon of a volume [m³], or a counted thing (None)."""

    measure: str
    volume: float | None
    mass: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Household:
    """The words, the mass they mean [kg], and how far that is from the mass asked for.

    `number` is how many things are counted, if any are.
    """

    text: str
    mass: float
    relative_error: float
    method: Method
    number: float | None = None


def household(
    mass: float,
    *,
    weights: Sequence[MeasureWeight],
    system: Measures | str,
    weigh_only: bool = False,
    density: float | None = None,
    limit: float = LIMIT,
) -> Household:
    """Return the simplest household amount whose drift is within `limit`.

    Where there is none, the nearest one says its drift; where that is wide, or if the
    ingredient is `weigh_only` (gelatine, pectin, salt), the scales are asked for.
    """
    if not mass > 0:
        raise QuantityError(decimal(f"{mass * 1000:g} g"), say("a mass of more than 0 g"))
    counted = _counted(mass, weights, limit)
    if weigh_only:
        return _weighed(mass, counted.text if counted else "")
    measured = [weight for weight in weights if weight.volume is not None]
    if counted:
        return counted
    if measured:
        return _spooned(mass, measured, Measures(system), limit)
    poured = _poured(mass, density, limit) if density else None
    return poured or _weighed(mass)


def _weighed(mass: float, counted: str = "") -> Household:
    """Ask for the scales; so many things may help to find the mass."""
    shown = format_mass(mass)
    weigh = say("weigh: {mass}", mass=shown)
    text = f"{counted} ({weigh})" if counted else weigh
    return _household(mass, parse_mass(shown), text, Method.SCALES)


def _household(
    mass: float, meant: float, text: str, method: Method, number: float | None = None
) -> Household:
    """Make the result with its drift."""
    drift = (meant - mass) / mass
    return Household(text=text, mass=meant, relative_error=drift, method=method, number=number)


def _counted(mass: float, weights: Sequence[MeasureWeight], limit: float) -> Household | None:
    """Return whole or half things within the limit, if there are any."""
    results = []
    for weight in weights:
        number = _number_of_things(mass / weight.mass, weight.measure)
        if weight.volume is None and 0 < number <= _MOST_COUNTED:
            text = f"{decimal(mixed_text(number))} {things(weight.measure, number)}"
            meant = number * weight.mass
            results.append(_household(mass, meant, text, Method.COUNTED, number))
    fitting = [each for each in results if abs(each.relative_error) <= limit]
    return min(fitting, key=lambda each: abs(each.relative_error), default=None)


def _number_of_things(number: float, measure: str) -> float:
    """Round to whole things, or to halves of what can be halved; a half goes up."""
    steps = 1 if any(word in measure for word in _NEVER_HALVED) else 2
    return int(number * steps + 0.5) / steps


def _spooned(
    mass: float, weights: Sequence[MeasureWeight], measures: Measures, limit: float
) -> Household:
    """Return the simplest cups and spoons."""
    weigh = _weigher(weights)
    cup = volume_of("cup", measures)
    found = spoonfuls(mass / weigh(cup), measures)
    best, its_mass = _simplest(mass, found, weigh, limit)
    drift = (its_mass - mass) / mass
    if abs(drift) > WIDEST:
        return _weighed(mass)
    text = str(best) if abs(drift) <= limit else _with_drift(str(best), drift)
    return _household(mass, its_mass, text, Method.SPOONS)


def _simplest(
    mass: float,
    found: Iterable[tuple[int, Sequence[Spoonful]]],
    weigh: Callable[[float], float],
    limit: float,
) -> tuple[Spoonful, float]:
    """Within the limit the simplest spoonful with its mass, else the nearest."""
    nearest: list[tuple[float, Spoonful, float]] = []
    for _, alike in found:
        masses = [(each, _mass_of(each, weigh)) for each in alike]
        drifts = [(abs(meant - mass) / mass, each, meant) for each, meant in masses]
        nearest.append(min(drifts, key=_drift))
        if nearest[-1][0] <= limit:
            return nearest[-1][1:]
    return min(nearest, key=_drift)[1:]


def _drift(found: tuple[float, Spoonful, float]) -> float:
    return found[0]


def _weigher(weights: Sequence[MeasureWeight]) -> Callable[[float], float]:
    """Return what a volume weighs, from the weight whose volume is the nearest."""
    known = [(weight.volume, weight.mass) for weight in weights if weight.volume]

    @cache
    def weigh(volume: float) -> float:
        nearest, mass = min(known, key=lambda pair: abs(log(pair[0] / volume)))
        return mass * volume / nearest

    return weigh


def _mass_of(spoonful: Spoonful, weigh: Callable[[float], float]) -> float:
    """Mass of a spoonful, each of its terms by its own measure."""
    return sum(term.number * weigh(term.volume) for term in spoonful.terms)


def _with_drift(text: str, drift: float) -> str:
    """Say how far a measure is from what is wanted."""
    percent = f"{abs(drift) * 100:.0f}"
    if drift > 0:
        return say("about {measure} ({percent} % more)", measure=text, percent=percent)
    return say("about {measure} ({percent} % less)", measure=text, percent=percent)


def _poured(mass: float, density: float, limit: float) -> Household | None:
    """Return millilitres in steps that a jug or a syringe shows, if near enough."""
    millilitres = mass / density * 1e6
    step = next(s for below, s in _JUG_STEPS if millilitres < below)
    shown = round(millilitres / step) * step
    meant = shown * 1e-6 * density
    if abs(meant - mass) > limit * mass:
        return None
    return _household(mass, meant, f"{decimal(f'{shown:g}')} ml", Method.JUG)


_JUG_STEPS = ((5.0, 0.5), (50.0, 1.0), (250.0, 5.0), (float("inf"), 10.0))
