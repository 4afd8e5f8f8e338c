"""From what one cavity takes to what must be made, through losses and component in component."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from entremetry.dessert.cut_outs import dough_share
from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.needs import Need, total
from entremetry.dessert.placement import BasePlacement, CoatingPlacement
from entremetry.method.made import Made
from entremetry.quantities import format_mass
from entremetry.words import decimal, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Requirement:
    """Finished mass to make of one component [kg], the factor of its formula, and why."""

    component: str
    ready: float
    factor: float
    because: str


def requirements(
    dessert: Dessert,
    makings: Mapping[str, Made],
    found: Sequence[Need],
    cavities: int,
) -> dict[str, Requirement]:
    """What must be made of every component, those that use others first."""
    drawn: dict[str, float] = dict.fromkeys(dessert.names, 0.0)
    result: dict[str, Requirement] = {}
    for component in reversed(dessert.components):
        need = total(found, component.id)
        ready, because = _ready(dessert, need, cavities)
        if drawn[component.id]:
            ready += drawn[component.id]
            others = say("{mass} goes into others", mass=format_mass(drawn[component.id]))
            because = "; ".join(text for text in (because, others) if text)
        factor = ready / makings[component.id].mix.mass
        result[component.id] = Requirement(
            component=component.id, ready=ready, factor=factor, because=because
        )
        for other, mass in _draws(component).items():
            drawn[other] += mass * factor
    return result


def poured(placement: CoatingPlacement, kept: float, count: int) -> float:
    """Glaze to make for `count` pieces poured one after another. [kg]

    The jug holds one pour at the start; each later piece takes away what it keeps and what of
    its run-off is not caught: pour + (n - 1) (kept + (1 - caught) (pour - kept)).
    """
    if placement.pour is None:
        return kept * count
    pour = max(placement.pour, kept)
    return pour + (count - 1) * (kept + (1.0 - placement.caught) * (pour - kept))


def _ready(dessert: Dessert, need: Need, cavities: int) -> tuple[float, str]:
    if not need.mass:
        return 0.0, ""
    for placement in dessert.document.placement:
        if placement.component != need.component:
            continue
        if isinstance(placement, CoatingPlacement) and placement.pour is not None:
            return _poured_and_why(placement, need, cavities)
        if isinstance(placement, BasePlacement) and placement.sheet is not None:
            share = dough_share(placement)
            because = say(
                "{because}, × {number}, × {share} for the offcuts",
                because=need.because,
                number=cavities,
                share=decimal(f"{share:.2f}"),
            )
            return need.mass * cavities * share, because
    because = say("{because}; × {number}", because=need.because, number=cavities)
    return need.mass * cavities, because


def _poured_and_why(placement: CoatingPlacement, need: Need, cavities: int) -> tuple[float, str]:
    ready = poured(placement, need.mass, cavities)
    because = say(
        "{because}: {kept} stays on each; {pour} is poured over each and "
        "{percent}% of the run-off is used again",
        because=need.because,
        kept=format_mass(need.mass),
        pour=format_mass(max(placement.pour or 0.0, need.mass)),
        percent=f"{placement.caught * 100:.0f}",
    )
    return ready, because


def _draws(component: Component) -> dict[str, float]:
    draws: dict[str, float] = {}
    for line in component.lines:
        if line.component:
            draws[line.component] = draws.get(line.component, 0.0) + line.mass
    return draws
