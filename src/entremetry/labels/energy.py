"""Energy by the factors of each jurisdiction."""

from __future__ import annotations

from dataclasses import dataclass

EU_SOURCE = "eu_1169_2011"
US_SOURCE = "cfr_21_101_9"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel:
    """What gives energy, by mass. [kg] Carbohydrate is without polyols, fibre and acids."""

    carbohydrate: float = 0.0
    polyols: float = 0.0
    erythritol: float = 0.0
    protein: float = 0.0
    fat: float = 0.0
    alcohol: float = 0.0
    organic_acids: float = 0.0
    fibre: float = 0.0


EU_FACTORS: dict[str, tuple[float, float]] = {
    "carbohydrate": (17.0, 4.0),
    "polyols": (10.0, 2.4),
    "erythritol": (0.0, 0.0),
    "protein": (17.0, 4.0),
    "fat": (37.0, 9.0),
    "alcohol": (29.0, 7.0),
    "organic_acids": (13.0, 3.0),
    "fibre": (8.0, 2.0),
}
"""Annex XIV of eu_1169_2011: kJ and kcal in a gram. `polyols` are those beside erythritol."""
US_FACTORS: dict[str, float] = {
    "carbohydrate": 4.0,
    "polyols": 2.4,
    "erythritol": 0.0,
    "protein": 4.0,
    "fat": 9.0,
    "alcohol": 7.0,
    "organic_acids": 4.0,
    "fibre": 4.0,
}
"""Kcal in a gram by cfr_21_101_9 (c)(1)(i)(B): 4 for total carbohydrate, of which fibre and acids
are a part there; sugar alcohols by (F). Those of alcohol and of sugar alcohols from_memory."""


def eu_kilojoules(fuel: Fuel) -> float:
    """Energy of a declaration under eu_1169_2011. [kJ]"""
    return 1e3 * sum(_mass(fuel, name) * kj for name, (kj, _) in EU_FACTORS.items())


def eu_kilocalories(fuel: Fuel) -> float:
    """Energy of a declaration under eu_1169_2011, from its own factors, not from kJ. [kcal]"""
    return 1e3 * sum(_mass(fuel, name) * kcal for name, (_, kcal) in EU_FACTORS.items())


def us_kilocalories(fuel: Fuel) -> float:
    """Calories of a declaration under cfr_21_101_9. [kcal]"""
    return 1e3 * sum(_mass(fuel, name) * kcal for name, kcal in US_FACTORS.items())


def shares(fuel: Fuel) -> tuple[tuple[str, float], ...]:
    """Names of what gives energy, with their shares of it, the largest first."""
    total = eu_kilojoules(fuel)
    found = [(name, 1e3 * _mass(fuel, name) * kj) for name, (kj, _) in EU_FACTORS.items()]
    found.sort(key=lambda item: -item[1])
    return tuple((name, each / total) for name, each in found if each > 0.0)


def _mass(fuel: Fuel, name: str) -> float:
    mass: float = getattr(fuel, name)
    return mass
