"""Nutrition of what a piece holds: each amount with what it comes from and what is not known."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from entremetry.labels.content import Content
from entremetry.labels.energy import Fuel
from entremetry.labels.english import percent
from entremetry.labels.reported import HELD, REPORTED
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.sources.figure import Figure
from entremetry.words import say

OF_TABLES = 0.10
"""How far the tables and the packets of one food lie apart: our_own, about a tenth."""
NAMED = 3  # components that a reason names
SALT_IN_SODIUM = 2.5  # eu_1169_2011, annex I


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """An ingredient whose value nobody reports, and its share of the food by mass."""

    id: str
    name: str
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """How much of a nutrient there is [kg]: what is known, and no more than `highest`."""

    name: str
    figure: Figure
    highest: float
    missing: tuple[Missing, ...] = ()

    @property
    def known(self) -> float:
        """The part that is known. [kg]"""
        return self.figure.value


def amounts(content: Content, parts: Iterable[Content] = ()) -> dict[str, Amount]:
    """Every nutrient of a food; `parts` are the components that the reasons name. [kg]"""
    shares = tuple(parts)
    found = [_made_of(name, content, shares) for name in CONSTITUENTS]
    found += [_held(name, content, shares) for name in HELD]
    return {amount.name: amount for amount in found}


def fuel(content: Content) -> Fuel:
    """What of a food gives energy."""
    parts = content.constituents
    erythritol = sum(
        content.held[i.id] * i.composition.polyols
        for i in _ingredients(content)
        if i.kind == "erythritol"
    )
    return Fuel(
        carbohydrate=parts.sugars + parts.starch + parts.other_carbohydrate,
        polyols=max(0.0, parts.polyols - erythritol),
        erythritol=erythritol,
        protein=parts.protein,
        fat=parts.fat,
        alcohol=parts.alcohol,
        organic_acids=parts.organic_acids,
        fibre=parts.fibre,
    )


CONSTITUENTS = (
    "fat",
    "carbohydrate",
    "total_carbohydrate",
    "sugars",
    "polyols",
    "fibre",
    "protein",
    "alcohol",
)


def _value(name: str, content: Content) -> float:
    parts = content.constituents
    if name == "carbohydrate":  # eu_1169_2011, annex I: with polyols, without fibre
        return parts.sugars + parts.polyols + parts.starch + parts.other_carbohydrate
    if name == "total_carbohydrate":  # cfr_21_101_9 (c)(6): by difference, with fibre
        return parts.carbohydrate
    return float(getattr(parts, name))


def _made_of(name: str, content: Content, parts: tuple[Content, ...]) -> Amount:
    """A nutrient that the constituents hold; sugars and fibre are blank for some foods."""
    value = _value(name, content)
    lacking = [i for i in _ingredients(content) if name in i.not_reported]
    beyond = sum(content.held[i.id] * _undivided(i) for i in lacking)
    return Amount(
        name=name,
        figure=_figure(value, {part.name: _value(name, part) for part in parts}, content),
        highest=value + beyond,
        missing=_missing(content, lacking) if beyond > 0.0 else (),
    )


def _undivided(ingredient: Ingredient) -> float:
    """Carbohydrate in which sugars or fibre can hide that a source leaves blank."""
    return ingredient.composition.starch + ingredient.composition.other_carbohydrate


def _held(name: str, content: Content, parts: tuple[Content, ...]) -> Amount:
    """A nutrient that follows its ingredients, since the constituents do not hold it."""
    reported = REPORTED[name]
    lacking = [i for i in _ingredients(content) if reported.of(i) is None]
    value = _sum(name, content)
    beyond = sum(content.held[i.id] * reported.at_most(i) for i in lacking)
    return Amount(
        name=name,
        figure=_figure(value, {part.name: _sum(name, part) for part in parts}, content),
        highest=value + beyond,
        missing=_missing(content, lacking) if beyond > 0.0 else (),
    )


def _sum(name: str, content: Content) -> float:
    return math.fsum(
        content.held[i.id] * (REPORTED[name].of(i) or 0.0) for i in _ingredients(content)
    )


def _ingredients(content: Content) -> list[Ingredient]:
    return [content.ingredients[name] for name in content.held]


def _missing(content: Content, lacking: Iterable[Ingredient]) -> tuple[Missing, ...]:
    found = [
        Missing(id=i.id, name=ingredient_name(i), share=content.held[i.id] / content.mass)
        for i in lacking
    ]
    return tuple(sorted(found, key=lambda each: -each.share))


def _figure(value: float, by_part: Mapping[str, float], content: Content) -> Figure:
    first = sorted(by_part.items(), key=lambda item: -item[1])[:NAMED]
    named = [f"{name} {percent(share / value)}" for name, share in first if value and share > 0.0]
    sources = sorted({i.source for i in _ingredients(content) if not i.source.startswith("own: ")})
    return Figure(
        value=value,
        unit="kg",
        because=", ".join(named) or say("sum over the ingredients that are in it"),
        sources=tuple(sources),
        relative_error=OF_TABLES,
    )
