"""How much of each finished component one cavity takes, and why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from entremetry.dessert.cut_outs import BaseMass, cut_area
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.placed import Placed
from entremetry.dessert.placement import (
    BasePlacement,
    CoatingPlacement,
    GarnishPlacement,
    SoakPlacement,
)
from entremetry.kitchen.mould import Mould
from entremetry.quantities import format_area, format_length, format_mass, format_volume
from entremetry.words import decimal, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """Finished mass [kg] and volume [m3] of a component in or on one cavity.

    `on_piece` is what one piece of it holds: less than its share where a frame is trimmed. [kg]
    """

    component: str
    mass: float
    volume: float
    on_piece: float
    because: str


def coats_top_only(placement: CoatingPlacement, mould: Mould, *, in_portions: bool) -> bool:
    """Whether a coating lies on the top alone: as stated, else in vessels and cut frames."""
    if placement.where is not None:
        return placement.where == "top"
    return mould.vessel or in_portions


def coated_area(placement: CoatingPlacement, mould: Mould, *, in_portions: bool) -> float:
    """Area that is coated: all but the face on the base, or the top alone. [m2]"""
    solid = mould.solid
    top_only = coats_top_only(placement, mould, in_portions=in_portions)
    if mould.fills_upside_down:
        return solid.area_at(0.0) if top_only else solid.wall_area
    top = solid.area_at(solid.height)
    return top if top_only else solid.wall_area - solid.area_at(0.0) + top


def needs(
    dessert: Dessert,
    placed: Placed,
    density: Mapping[str, float],
    bases: Mapping[str, BaseMass],
    pieces_per_cavity: int,
) -> tuple[Need, ...]:
    """Everything that goes into or onto one cavity, in the order of placement."""
    share = piece_share(dessert)
    found = [_soft(part.component, part.volume, density) for part in placed.filled]
    found += [
        _soft(part.component, part.solid.volume, density)
        for part in placed.inclusions
        if not part.is_base
    ]
    garnishes = []
    for placement in dessert.document.placement:
        if isinstance(placement, BasePlacement):
            found.append(_base(placement, bases[placement.component]))
        elif isinstance(placement, CoatingPlacement):
            found.append(_coating(placement, dessert, density))
        elif isinstance(placement, SoakPlacement):
            found.append(_soak(placement, dessert, density))
        elif isinstance(placement, GarnishPlacement):
            garnishes.append(_garnish(placement, density, pieces_per_cavity))
    shared = (replace(need, on_piece=need.mass * share) for need in found)
    return (*shared, *garnishes)


def piece_share(dessert: Dessert) -> float:
    """Share of a cavity that one piece is, by area; the rest of a frame is trimmed off."""
    portions, solid = dessert.document.portions, dessert.mould.solid
    if portions is None:
        return 1.0
    return portions.length * portions.width / (solid.length * solid.width)


def total(found: Sequence[Need], component: str) -> Need:
    """All that one cavity takes of a component."""
    mine = [need for need in found if need.component == component]
    return Need(
        component=component,
        mass=sum(need.mass for need in mine),
        volume=sum(need.volume for need in mine),
        on_piece=sum(need.on_piece for need in mine),
        because="; ".join(need.because for need in mine),
    )


def _soft(component: str, volume: float, density: Mapping[str, float]) -> Need:
    mass = volume * density[component]
    return Need(
        component=component,
        mass=mass,
        volume=volume,
        on_piece=mass,
        because=say(
            "{volume} at {density} g/ml",
            volume=format_volume(volume),
            density=decimal(f"{density[component] / 1e3:.2f}"),
        ),
    )


def _base(placement: BasePlacement, base: BaseMass) -> Need:
    area = cut_area(placement)
    return Need(
        component=placement.component,
        mass=base.finished,
        volume=area * placement.thickness,
        on_piece=base.finished,
        because=say(
            "cut-out of {area}, {thickness} thick: {mass} finished",
            area=format_area(area),
            thickness=format_length(base.thickness),
            mass=format_mass(base.finished),
        ),
    )


def _coating(placement: CoatingPlacement, dessert: Dessert, density: Mapping[str, float]) -> Need:
    area = coated_area(placement, dessert.mould, in_portions=dessert.document.portions is not None)
    rho = density[placement.component]
    if placement.film is not None:
        mass, film = area * placement.film * rho, _film(placement.film)
    else:
        assert placement.per_area is not None  # the document allows exactly one measure
        mass, film = area * placement.per_area, _per_area(placement.per_area)
    return Need(
        component=placement.component,
        mass=mass,
        volume=mass / rho,
        on_piece=mass,
        because=say("{area} coated with {film}", area=format_area(area), film=film),
    )


def _film(thickness: float) -> str:
    return say("a film of {thickness}", thickness=format_length(thickness))


def _per_area(per_area: float) -> str:
    return f"{decimal(f'{per_area / 10:.2f}')} g/cm²"


def _soak(placement: SoakPlacement, dessert: Dessert, density: Mapping[str, float]) -> Need:
    if placement.mass is not None:
        mass = placement.mass
        because = say("{mass} brushed on each base", mass=format_mass(mass))
    else:
        assert placement.per_area is not None  # the document allows exactly one measure
        area = sum(
            cut_area(other)
            for other in dessert.document.placement
            if isinstance(other, BasePlacement) and other.component == placement.on
        )
        mass = area * placement.per_area
        shown = _per_area(placement.per_area)
        because = say("{area} soaked with {mass}", area=format_area(area), mass=shown)
    return Need(
        component=placement.component,
        mass=mass,
        volume=mass / density[placement.component],
        on_piece=mass,
        because=because,
    )


def _garnish(
    placement: GarnishPlacement, density: Mapping[str, float], pieces_per_cavity: int
) -> Need:
    mass = placement.mass * pieces_per_cavity
    return Need(
        component=placement.component,
        mass=mass,
        volume=mass / density[placement.component],
        on_piece=placement.mass,
        because=say("{mass} on each piece", mass=format_mass(placement.mass)),
    )
