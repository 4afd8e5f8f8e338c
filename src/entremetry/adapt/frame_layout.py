"""Placement in a frame that is filled as it is served and cut into bars."""

from __future__ import annotations

from entremetry.adapt.base_fit import cut_inside, sheet_for, spoken
from entremetry.adapt.build import Part, is_soft
from entremetry.adapt.common_layout import coat, tail
from entremetry.adapt.insert_layout import MOST_INSERT
from entremetry.adapt.layout import Entry, Layout, Wanted
from entremetry.adapt.servings import bars
from entremetry.adapt.written import length, mass, millimetres
from entremetry.dessert.placement import BasePlacement
from entremetry.errors import FitError
from entremetry.quantities import format_fraction, format_length
from entremetry.words import decimal, say, say_later

LEAST_LAYER = 0.004  # m; less cannot be levelled in a frame: common_practice
GRAM = 1e-3


HEIGHT_FOLLOWS = say_later("its height follows the frame's; {share} of what is soft")
SHOWN_IN_EACH = say_later(
    "every bar shall show it, and an insert of its own shape would be cut in two; {share} of what "
    "is soft"
)


def frame_layout(wanted: Wanted) -> Layout:
    """Place everything in a frame.

    Raises
    ------
    FitError
        If the frame is too small for one bar, or a layer would run out of the cut sides.
    """
    layout, build = Layout(volume=wanted.mould.solid.volume), wanted.build
    outer = build.outer
    if not bars(wanted.mould, wanted.portions) or outer is None:
        raise _no_bars(wanted)
    _require_set(wanted)
    base = 0.0
    for part in build.upward:
        if isinstance(part.placement, BasePlacement):
            base += _base(layout, wanted, part, part.placement, base)
    room = wanted.mould.solid.height - base
    for part, share in _shares(wanted):
        if part is outer:
            layout.entries.append({"component": part.id, "as": "filling"})
            continue
        height = max(millimetres(share * room), LEAST_LAYER)
        layout.entries.append({"component": part.id, "as": "layer", "height": length(height)})
        layout.poured.append(part.id)
        why = HEIGHT_FOLLOWS if part.placement.role != "insert" else SHOWN_IN_EACH
        layout.tell(
            part.id,
            say("a layer of {height}", height=decimal(length(height))),
            say(why, share=format_fraction(share)),
        )
    layout.poured.append(outer.id)
    for part in build.coatings:
        coat(layout, wanted, part)
    _strewn(layout, wanted)
    tail(layout, wanted, build, {})
    if not base:
        told = say("bars without a base are hard to lift: add a sponge")
        layout.tell("", told, "", kind="caution")
    return layout


def _base(
    layout: Layout, wanted: Wanted, part: Part, placement: BasePlacement, level: float
) -> float:
    """A base that fills the frame at a level; its thickness. [m]"""
    cut = cut_inside(
        wanted.mould.solid,
        level=level,
        thickness=placement.thickness,
        inset=0.0,
        clear=0.0,
        name=part.component.name,
    )
    entry: Entry = {k: v for k, v in part.raw.items() if k != "sits"} | {"cut_out": cut}
    sheet = sheet_for(placement, cut, part.raw.get("sheet"))
    if sheet is not None:
        entry["sheet"] = sheet
    layout.entries.append(entry)
    layout.cut[part.id] = cut
    layout.tell(
        part.id,
        say("one sheet, {cut}, at the bottom of the frame", cut=spoken(cut)),
        say("a frame is filled as it is served, and base and mousse are cut together"),
    )
    return placement.thickness


def _shares(wanted: Wanted) -> list[tuple[Part, float]]:
    """Soft parts from the base up, with their shares of what is soft."""
    soft = [p for p in wanted.build.upward if is_soft(p)]
    whole = sum(p.volume for p in soft)
    return [
        (
            p,
            min(p.volume / whole, MOST_INSERT)
            if p.placement.role == "insert"
            else p.volume / whole,
        )
        for p in soft
    ]


def _require_set(wanted: Wanted) -> None:
    """Refuse a layer that nothing sets: its cut sides would run."""
    for part in wanted.build.upward:
        if is_soft(part) and wanted.build.form.is_vessel and not wanted.build.is_set(part):
            raise FitError(
                say(
                    "{name} holds nothing that sets it, so it would run out of the cut sides of "
                    "bars from {mould}; it can be an insert inside the mousse of a mould, or stay "
                    "in a vessel",
                    name=part.component.name,
                    mould=wanted.mould.name,
                ),
                parts=(part.component.name, wanted.mould.name),
                missing=0.0,
            )


def _strewn(layout: Layout, wanted: Wanted) -> None:
    """Crumbs that lay in a vessel are strewn on the bars."""
    for part in wanted.build.parts:
        if part.is_loose and part.placement.role == "layer":
            served = part.volume / wanted.build.servings.serves
            amount = served * wanted.build.reckoning.density[part.id]
            written = mass(max(1.0, round(amount / GRAM)) * GRAM)
            layout.entries.append({"component": part.id, "as": "garnish", "mass": written})
            told = say("{mass} on each bar", mass=decimal(written))
            layout.tell(part.id, told, say("under the mousse it would go soft"))


def _no_bars(wanted: Wanted) -> FitError:
    portions = wanted.portions
    return FitError(
        say(
            "{mould} gives no bar of {length} × {width} with a mousse in it; "
            "a larger frame or a mould would do",
            mould=wanted.mould.name,
            length=format_length(portions.length),
            width=format_length(portions.width),
        ),
        parts=(say("one bar"), wanted.mould.name),
        missing=0.0,
    )
