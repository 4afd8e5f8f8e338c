"""What the page needs to scale a dessert: a few coefficients for each component.

Every mass is a closed form of the mould: so much in a litre of cavity, on an area of coating, on
the foot, on a portion. With all that lies in the mould kept in proportion it is exact.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.adapt.proportion import foot_area
from entremetry.dessert.cut_outs import dough_share
from entremetry.dessert.dessert import Component
from entremetry.dessert.needs import coated_area, coats_top_only, total
from entremetry.dessert.placement import BasePlacement, CoatingPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.mould import Mould


@dataclass(frozen=True, slots=True, kw_only=True)
class Coefficients:
    """Finished mass of a component on one cavity: by volume [kg/m3], areas [kg/m2], piece [kg].

    `pour` and `caught` are those of a coating, the first in kept masses; `dough` what to make for
    one base, in base masses.
    """

    volume: float = 0.0
    coated: float = 0.0
    foot: float = 0.0
    portion: float = 0.0
    pour: float = 0.0
    caught: float = 0.0
    dough: float = 1.0


def coefficients(reckoning: Reckoning) -> dict[str, Coefficients]:
    """Coefficients of every component, from what each is placed as."""
    return {c.id: _coefficients(reckoning, c) for c in reckoning.dessert.components}


def _coefficients(reckoning: Reckoning, component: Component) -> Coefficients:
    need = total(reckoning.needs, component.id)
    mould, document = reckoning.dessert.mould, reckoning.dessert.document
    placed = [p for p in document.placement if p.component == component.id]
    role = placed[0].role if placed else ""
    volume, foot = mould.solid.volume, foot_area(mould)
    match placed[0] if placed else None:
        case CoatingPlacement() as film:
            kept = need.mass
            return Coefficients(
                coated=kept / coated(mould, film, reckoning),
                pour=max(film.pour or 0.0, kept) / kept if film.pour else 0.0,
                caught=film.caught,
            )
        case BasePlacement() as base:
            share = dough_share(base)
            if base.sits == "inside" and _thickens(reckoning, component.id):
                return Coefficients(volume=need.mass / volume, dough=share)
            return Coefficients(foot=need.mass / foot, dough=share)
    if role == "soak":
        return Coefficients(foot=need.mass / foot)
    if role == "garnish" and document.portions is not None:
        return Coefficients(portion=need.mass / reckoning.per_cavity)
    return Coefficients(volume=need.mass / volume)


def coated(mould: Mould, film: CoatingPlacement, reckoning: Reckoning) -> float:
    """Area of a mould's piece that a coating covers. [m2]"""
    in_portions = reckoning.dessert.document.portions is not None
    return coated_area(film, mould, in_portions=in_portions)


def film_of(reckoning: Reckoning) -> CoatingPlacement | None:
    """The coating of a dessert, if it has one."""
    placements = reckoning.dessert.document.placement
    return next((p for p in placements if isinstance(p, CoatingPlacement)), None)


def top_only(reckoning: Reckoning) -> bool:
    """Whether only the top is coated."""
    film = film_of(reckoning)
    in_portions = reckoning.dessert.document.portions is not None
    return film is not None and coats_top_only(
        film, reckoning.dessert.mould, in_portions=in_portions
    )


def _thickens(reckoning: Reckoning, component: str) -> bool:
    """Whether a base inside weighs more where it lies thicker: not if it is cut as rolled."""
    base = next(
        p
        for p in reckoning.dessert.document.placement
        if isinstance(p, BasePlacement) and p.component == component
    )
    return math.isclose(reckoning.bases[component].thickness, base.thickness)


def draws(component: Component) -> Iterator[tuple[str, float]]:
    """Other components in one formula of a component, with their masses. [kg]"""
    for line in component.lines:
        if line.component:
            yield line.component, line.mass
