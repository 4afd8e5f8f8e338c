"""The vertical section of one cavity with everything in and on it, to scale."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from entremetry.dessert.batch_sheet import DrawnPart, Position, Section
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.needs import Need, coated_area, coats_top_only, total
from entremetry.dessert.placed import Inclusion, Placed
from entremetry.dessert.placement import (
    BasePlacement,
    CoatingPlacement,
    DiscCutOut,
    GarnishPlacement,
)
from entremetry.shapes import Floats, Log, Solid, placed_section


def drawn_section(
    dessert: Dessert, placed: Placed, kinds: Mapping[str, str], found: tuple[Need, ...]
) -> Section:
    """Gather what a drawing needs; levels in m above the closed end."""
    mould = dessert.mould
    parts = [*_filled(placed, kinds), *_inclusions(placed, kinds)]
    parts += _outside(dessert, placed, kinds, found)
    return Section(
        cavity=_outline(mould.solid, across=_is_log(mould.solid)),
        height=mould.solid.height,
        served_upside_down=mould.fills_upside_down,
        is_vessel=mould.vessel,
        parts=tuple(parts),
    )


def _filled(placed: Placed, kinds: Mapping[str, str]) -> Iterator[DrawnPart]:
    for part in placed.filled:
        yield DrawnPart(
            component=part.component,
            name=part.name,
            kind=kinds[part.component],
            position=Position.FILLING,
            low=part.low,
            high=part.high,
        )


def _inclusions(placed: Placed, kinds: Mapping[str, str]) -> Iterator[DrawnPart]:
    across = _is_log(placed.cavity)
    for part in placed.inclusions:
        yield DrawnPart(
            component=part.component,
            name=part.name,
            kind=kinds[part.component],
            position=Position.BASE if part.is_base else Position.INSERT,
            low=part.low,
            high=part.high,
            width=part.solid.width if across else part.solid.length,
            outlines=_placed_outline(part, across=across),
        )


def _placed_outline(part: Inclusion, *, across: bool) -> tuple[Floats, ...]:
    """Outline of an insert in place; a log is cut across its length."""
    if not across or not isinstance(part.solid, Log):
        return placed_section(part.solid, part.low, (part.aside, 0.0), part.turned)
    turn, lift = (-1.0, part.high) if part.turned else (1.0, part.low)
    return tuple(o * (1.0, turn) + (0.0, lift) for o in part.solid.cross_outline())


def _outline(solid: Solid, *, across: bool) -> tuple[Floats, ...]:
    return solid.cross_outline() if across and isinstance(solid, Log) else solid.section()


def _is_log(solid: Solid) -> bool:
    return isinstance(solid, Log)


def _outside(
    dessert: Dessert, placed: Placed, kinds: Mapping[str, str], found: tuple[Need, ...]
) -> Iterator[DrawnPart]:
    names, height = dessert.names, placed.cavity.height
    for placement in dessert.document.placement:
        if isinstance(placement, BasePlacement) and placement.sits == "under":
            below = -placement.thickness if not dessert.mould.fills_upside_down else height
            yield DrawnPart(
                component=placement.component,
                name=names[placement.component],
                kind=kinds[placement.component],
                position=Position.BASE,
                low=below,
                high=below + placement.thickness,
                width=_width(placement, across=_is_log(placed.cavity)),
            )
        elif isinstance(placement, CoatingPlacement):
            yield DrawnPart(
                component=placement.component,
                name=names[placement.component],
                kind=kinds[placement.component],
                position=Position.COATING,
                thickness=_film(placement, dessert, found),
                top_only=coats_top_only(
                    placement, dessert.mould, in_portions=dessert.document.portions is not None
                ),
            )
        elif isinstance(placement, GarnishPlacement):
            yield DrawnPart(
                component=placement.component,
                name=names[placement.component],
                kind=kinds[placement.component],
                position=Position.GARNISH,
            )


def _width(placement: BasePlacement, *, across: bool) -> float:
    cut = placement.cut_out
    if isinstance(cut, DiscCutOut):
        return cut.diameter
    return cut.width if across else cut.length


def _film(placement: CoatingPlacement, dessert: Dessert, found: tuple[Need, ...]) -> float:
    if placement.film is not None:
        return placement.film
    area = coated_area(placement, dessert.mould, in_portions=dessert.document.portions is not None)
    return total(found, placement.component).volume / area
