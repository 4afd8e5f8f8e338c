"""Sentences with the masses in them marked, so that a page can scale them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache

from entremetry.dessert.dessert import Component
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.telling import Teller
from entremetry.words import current

LARGE = 1e5  # times: then a mass has four digits or more
KILOGRAMS = {"mg": 1e-6, "g": 1e-3, "kg": 1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A stretch of a sentence; `mass` is that of one formula where it is an amount. [kg]"""

    text: str
    mass: float | None = None


def method_parts(
    reckoning: Reckoning, component: Component, *, pieces: int, fan: bool | None
) -> tuple[tuple[Part, ...], ...]:
    """The method of a component as the batch sheet tells it, in parts."""
    required = reckoning.requirements(pieces)
    factor = required[component.id].factor
    large = {k: replace(r, factor=r.factor * LARGE) for k, r in required.items()}
    told, enlarged = (
        Teller(reckoning.dessert, reckoning.makings, each, fan).method(component)
        for each in (required, large)
    )
    return tuple(
        tuple(_parts(here, there, factor)) for here, there in zip(told, enlarged, strict=True)
    )


def _parts(text: str, enlarged: str, factor: float) -> Iterator[Part]:
    """A sentence cut at the amounts that grow with the batch."""
    amount = _amount(current().decimal)
    here, there = list(amount.finditer(text)), list(amount.finditer(enlarged))
    if amount.sub("", text) != amount.sub("", enlarged):
        yield Part(text=text)
        return
    done = 0
    for one, other in zip(here, there, strict=True):
        if one[0] != other[0]:
            yield Part(text=text[done : one.start()])
            yield Part(text=one[0], mass=_kilograms(other) / LARGE / factor)
            done = one.end()
    yield Part(text=text[done:])


@cache
def _amount(point: str) -> re.Pattern[str]:
    """A mass in a sentence, with the decimal sign of its language."""
    sign = re.escape(point)
    return re.compile(rf"(?<![\d{sign}])(\d+(?:{sign}\d+)?) (mg|g|kg)\b")


def _kilograms(amount: re.Match[str]) -> float:
    return float(amount[1].replace(current().decimal, ".")) * KILOGRAMS[amount[2]]
