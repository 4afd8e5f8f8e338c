"""What a hand can measure with one country's cups and spoons."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain
from typing import TypeAlias

from entremetry.quantities.number import mixed_text
from entremetry.quantities.spelling import unit_called
from entremetry.quantities.unit import Measures
from entremetry.words import decimal, say, say_count

_CUP_FRACTIONS = (0.0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)
_TABLESPOONS = (1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0)
_TEASPOONS = (1 / 8, 1 / 4, 1 / 2, 3 / 4, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0)
_AWKWARD = {0: 0, 500: 1, 250: 2, 750: 2, 333: 2, 667: 2, 125: 3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """So many of one cup or spoon of a known volume [m³]."""

    number: float
    measure: str
    volume: float

    def __str__(self) -> str:
        amount = decimal(mixed_text(self.number))
        match self.measure:
            case "tbsp":
                return say("{amount} tbsp", amount=amount)
            case "tsp":
                return say("{amount} tsp", amount=amount)
        return say_count("{amount} cup", "{amount} cups", max(self.number, 1.0), amount=amount)

    @property
    def awkwardness(self) -> int:
        """How hard the number is to measure: whole before half before an eighth."""
        many = {"tbsp": 3.5, "tsp": 2.5}.get(self.measure, self.number)
        return 3 * (self.number > many) + _AWKWARD[round(self.number % 1 * 1000)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoonful:
    """One term, or two joined by a plus sign."""

    terms: tuple[Term, ...]

    def __str__(self) -> str:
        return " + ".join(str(term) for term in self.terms)

    @property
    def awkwardness(self) -> int:
        """How hard the whole is to measure."""
        return 10 * (len(self.terms) - 1) + sum(term.awkwardness for term in self.terms)


def volume_of(measure: str, measures: Measures) -> float:
    """Volume of one cup or spoon of a country. [m³]"""
    unit = unit_called(measure, measures)
    if unit is None:
        raise LookupError(measure)
    return unit.factor


Alike: TypeAlias = tuple[int, tuple[Spoonful, ...]]
"""How awkward, and all spoonfuls that are just so awkward."""


def spoonfuls(cups: float, measures: Measures) -> tuple[Alike, ...]:
    """What can be measured near a volume of so many cups, the least awkward first."""
    return _spoonfuls(int(cups), measures)


@lru_cache(maxsize=256)
def _spoonfuls(cups: int, measures: Measures) -> tuple[Alike, ...]:
    alike: dict[int, list[Spoonful]] = {}
    for each in _measurable(cups, measures):
        alike.setdefault(each.awkwardness, []).append(each)
    return tuple((awkward, tuple(alike[awkward])) for awkward in sorted(alike))


def _measurable(cups: int, measures: Measures) -> Iterator[Spoonful]:
    cup, tbsp, tsp = (volume_of(each, measures) for each in ("cup", "tbsp", "tsp"))
    whole = [Term(number=n, measure="cup", volume=cup) for n in _cups(cups)]
    large = [Term(number=n, measure="tbsp", volume=tbsp) for n in _TABLESPOONS]
    small = [Term(number=n, measure="tsp", volume=tsp) for n in _TEASPOONS]
    for term in chain(whole, large, small):
        yield Spoonful(terms=(term,))
    yield from _pairs(whole, [term for term in large if term.number in {1, 2, 3}])
    yield from _pairs(
        [term for term in large if term.number in {1, 2, 3}],
        [term for term in small if term.number in {0.5, 1, 1.5, 2, 2.5}],
    )


def _cups(nearest: int) -> list[float]:
    """Return the cupfuls around a number of cups, a tablespoon less included."""
    numbers = [n + part for n in range(max(nearest - 1, 0), nearest + 2) for part in _CUP_FRACTIONS]
    return [number for number in numbers if number]


def _pairs(first: list[Term], second: list[Term]) -> Iterator[Spoonful]:
    """Yield every pair of a larger and a smaller term."""
    for large in first:
        for small in second:
            yield Spoonful(terms=(large, small))
