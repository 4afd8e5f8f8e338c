"""Placement in a mould of which the piece is released whole: inserts stay inserts."""

from __future__ import annotations

import math
from collections.abc import Sequence

from entremetry.adapt.base_fit import (
    CLEAR,
    cut_inside,
    cut_under,
    inset_of,
    sheet_for,
    spoken,
)
from entremetry.adapt.build import Part
from entremetry.adapt.common_layout import coat, tail
from entremetry.adapt.form import Form
from entremetry.adapt.insert_layout import inserts as place_inserts
from entremetry.adapt.layout import Entry, Layout, Wanted, from_base
from entremetry.adapt.written import length, mass, millimetres
from entremetry.dessert.cut_outs import cut_area
from entremetry.dessert.placement import BasePlacement, DiscCutOut, RectangleCutOut
from entremetry.errors import FitError
from entremetry.quantities import format_length
from entremetry.words import decimal, say, say_later

NO_BASE = say_later("nothing carries it: set it on a biscuit or a card when it is turned out")
THICK_BASE = 0.2  # of the height of the mould: common_practice
THINNEST_BASE = 0.003  # m
INSET = (0.005, 0.010)  # m: usual distance of a base from the edge of small and large pieces
LEAST_LAYER = 0.003  # m


def mould_layout(wanted: Wanted) -> Layout:
    """Place everything in another mould.

    Raises
    ------
    FitError
        If it makes no dessert that stands by itself, or something finds no room.
    """
    layout, build = Layout(volume=wanted.mould.solid.volume), wanted.build
    outer = _outer(wanted)
    inside = _bases(layout, wanted)
    layers, inserted = _sorted(wanted, outer)
    inserts = place_inserts(layout, wanted, inserted, sum(t for _, t in inside))
    filling: Entry = {"component": outer.id, "as": "filling"}
    if outer.placement.role != "filling":
        because = say("it holds the piece together out of its mould")
        layout.tell(outer.id, say("fills what is left"), because)
    above, below = _layers(layout, wanted, layers, outer)
    upward = [*(entry for entry, _ in inside), *below, filling, *above]
    layout.entries += [*from_base(wanted, upward), *inserts]
    for part in build.coatings:
        coat(layout, wanted, part)
    layout.entries += [e for e in _under(layout, wanted)]
    _loose(layout, wanted)
    if not build.bases:
        layout.tell("", say(NO_BASE), "", kind="caution")
    tail(layout, wanted, build, _area_factors(wanted, layout))
    return layout


def _outer(wanted: Wanted) -> Part:
    outer, mould = wanted.build.outer, wanted.mould
    if outer is None:
        raise FitError(
            say(
                "there is no mousse that could fill {mould} and stand out of it; "
                "a glass or a dish would do",
                mould=mould.name,
            ),
            parts=(say("the mousse"), mould.name),
            missing=0.0,
        )
    if wanted.build.form.is_vessel and not wanted.build.is_set(outer):
        raise FitError(
            say(
                "{name} holds nothing that sets it, so it cannot stand out of {mould}; "
                "another glass or dish would do, or gelatine in it",
                name=outer.component.name,
                mould=mould.name,
            ),
            parts=(outer.component.name, mould.name),
            missing=0.0,
        )
    return outer


def _sorted(wanted: Wanted, outer: Part) -> tuple[list[Part], list[Part]]:
    """Soft parts that stay layers, and those that are frozen as inserts, from the base up."""
    build = wanted.build
    freezes = build.form is Form.FRAME or build.form.is_vessel
    layers: list[Part] = []
    inserted: list[Part] = []
    for part in build.upward:
        role = part.placement.role
        if part is outer or role == "base" or part.is_loose:
            continue
        into = inserted if role == "insert" or freezes else layers
        into.append(part)
    return layers, inserted


def _bases(layout: Layout, wanted: Wanted) -> list[tuple[Entry, float]]:
    """Bases inside the mould with their thickness [m], the lowest first."""
    found: list[tuple[Entry, float]] = []
    height, level = wanted.mould.solid.height, 0.0
    for part in wanted.build.upward:
        placement = part.placement
        if not isinstance(placement, BasePlacement) or placement.sits == "under":
            continue
        thickness = placement.thickness
        if not part.is_rolled:
            thickness = min(thickness, max(millimetres(THICK_BASE * height), THINNEST_BASE))
        at = level if wanted.upright else height - level - thickness
        cut = cut_inside(
            wanted.mould.solid,
            level=at,
            thickness=thickness,
            inset=_inset(wanted, placement),
            clear=CLEAR,
            name=part.component.name,
        )
        found.append((_base_entry(layout, part, cut, thickness), thickness))
        level += thickness
    return found


def _inset(wanted: Wanted, placement: BasePlacement) -> float:
    """The author's own distance from the edge, or a usual one where a frame had none. [m]"""
    low, high = INSET
    before = inset_of(placement, wanted.build.reckoning.dessert.mould.solid)
    if before < CLEAR:
        return low if wanted.form is Form.SINGLE else high
    return min(max(before, low), high)


def _base_entry(layout: Layout, part: Part, cut: dict[str, str], thickness: float) -> Entry:
    placement = part.placement
    assert isinstance(placement, BasePlacement)
    entry = {**part.raw, "cut_out": cut}
    if abs(thickness - placement.thickness) > 5e-4:
        entry["thickness"] = length(thickness)
        layout.baked.append(part.id)
        layout.tell(
            part.id,
            say(
                "{thickness} thick, {before} before",
                thickness=decimal(length(thickness)),
                before=format_length(placement.thickness),
            ),
            say("a base of more than a fifth of the height leaves too little room for the rest"),
        )
    sheet = sheet_for(placement, cut, part.raw.get("sheet"))
    if sheet is not None:
        entry["sheet"] = sheet
    layout.cut[part.id] = cut
    because = say("the base follows the shape of the mould")
    layout.tell(part.id, say("cut as {cut}", cut=spoken(cut)), because)
    return entry


def _under(layout: Layout, wanted: Wanted) -> list[Entry]:
    """Bases under the piece, as much wider than it as before."""
    found = []
    for part in wanted.build.bases:
        placement = part.placement
        assert isinstance(placement, BasePlacement)
        if placement.sits == "under":
            before = -inset_of(placement, wanted.build.reckoning.dessert.mould.solid)
            cut = cut_under(wanted.mould.solid, before)
            found.append(_base_entry(layout, part, cut, placement.thickness))
    return found


def _layers(
    layout: Layout, wanted: Wanted, layers: Sequence[Part], outer: Part
) -> tuple[list[Entry], list[Entry]]:
    """Layers above and below the filling, by their share of the volume."""
    build = wanted.build
    above: list[Entry] = []
    below: list[Entry] = []
    order = list(build.upward)
    at = {True: wanted.mould.solid.height, False: 0.0}
    for part in layers:
        lower = order.index(part) < order.index(outer)
        at_rim = lower != wanted.upright
        height = _layer_height(wanted, part, at, from_rim=at_rim)
        entry = {"component": part.id, "as": "layer", "height": length(height)}
        (below if lower else above).append(entry)
        told = say("{height} high", height=decimal(length(height)))
        layout.tell(part.id, told, say("the same share of the mould as before"))
    return above, below


def _layer_height(wanted: Wanted, part: Part, at: dict[bool, float], *, from_rim: bool) -> float:
    cavity = wanted.mould.solid
    volume = part.volume / wanted.build.reckoning.placed.cavity.volume * cavity.volume
    here = at[from_rim]
    below = cavity.volume_below(here)
    there = cavity.level_at(max(below - volume, 0.0) if from_rim else below + volume)
    height = max(millimetres(abs(there - here)), LEAST_LAYER)
    at[from_rim] = here - height if from_rim else here + height
    return height


def _loose(layout: Layout, wanted: Wanted) -> None:
    """Crumbs that lay in a vessel go around the foot of a piece."""
    for part in wanted.build.parts:
        if part.is_loose and part.placement.role == "layer":
            served = wanted.servings.serves / wanted.build.servings.serves
            density = wanted.build.reckoning.density[part.id]
            amount = mass(max(1.0, math.floor(part.volume * density * served * 1e3)) * 1e-3)
            layout.entries.append({"component": part.id, "as": "garnish", "mass": amount})
            layout.tell(
                part.id,
                say("{mass} pressed along the foot of each piece", mass=decimal(amount)),
                say("loose crumbs carry nothing, and inside they would be soft when it is served"),
            )


def _area_factors(wanted: Wanted, layout: Layout) -> dict[str, float]:
    """How much larger each base is than before."""
    found = {}
    for part in wanted.build.bases:
        cut = layout.cut.get(part.id)
        placement = part.placement
        assert isinstance(placement, BasePlacement)
        if cut is not None:
            kind = DiscCutOut if cut["kind"] == "disc" else RectangleCutOut
            now = placement.model_copy(update={"cut_out": kind.model_validate(cut)})
            found[part.id] = cut_area(now) / cut_area(placement)
    return found
