"""Placement in a glass or a dish: all in layers, from the bottom up, with room below the rim."""

from __future__ import annotations

from entremetry.adapt.base_fit import cut_inside, sheet_for, spoken
from entremetry.adapt.build import Build, Part, is_soft
from entremetry.adapt.common_layout import tail
from entremetry.adapt.form import Form
from entremetry.adapt.insert_layout import MOST_INSERT
from entremetry.adapt.layout import Entry, Layout, Wanted
from entremetry.adapt.mould_layout import THICK_BASE, THINNEST_BASE
from entremetry.adapt.written import length, mass, millimetres
from entremetry.dessert.placement import BasePlacement
from entremetry.errors import FitError
from entremetry.quantities import format_fraction, format_length
from entremetry.words import decimal, say

FULL = {Form.GLASS: (0.60, 0.85), Form.DISH: (0.80, 0.85)}
"""Share of the height to which a vessel is filled; common practice, no source."""
CLEAR = 0.0015  # m between a base and the glass
LEAST_LAYER = 0.003  # m; less cannot be levelled: common_practice
GLAZE_LAYER = 0.003  # m: common_practice
CRUMB_LAYER = 0.008  # m of crumble at most: common_practice
CRUMB_DENSITY = 450.0  # kg/m3, heaped: common_practice
GRAM = 1e-3


def vessel_layout(wanted: Wanted) -> Layout:
    """Place everything in a vessel.

    Raises
    ------
    FitError
        If the vessel is too shallow for the layers.
    """
    layout, build = Layout(), wanted.build
    crumbs = _crumb_mass(wanted)
    glaze = _glaze(layout, build)
    top = _fill_level(wanted)
    cavity = wanted.mould.solid
    layout.volume = cavity.volume_below(top)
    over = (GLAZE_LAYER if glaze else 0.0) + _crumb_height(wanted, crumbs, top)
    _layers(layout, wanted, top - over)
    if glaze is not None:
        layout.entries.append({"component": glaze.id, "as": "layer", "height": length(GLAZE_LAYER)})
        layout.glazes.append(glaze.id)
        layout.tell(
            glaze.id,
            say("poured as a top layer of {height}", height=decimal(length(GLAZE_LAYER))),
            say("a vessel has no sides to glaze, and what runs off a glass is lost"),
        )
    for part, amount in crumbs:
        layout.entries.append({"component": part.id, "as": "layer", "mass": mass(amount)})
        if isinstance(part.placement, BasePlacement):
            layout.crumbs.append(part.id)
            layout.tell(
                part.id,
                say(
                    "{mass} baked as crumbs and strewn on top, no cut-outs",
                    mass=decimal(mass(amount)),
                ),
                say("a crisp dough under cream in a glass is soft in hours, and no spoon cuts it"),
            )
        else:
            told = say("{mass} on top", mass=decimal(mass(amount)))
            layout.tell(part.id, told, say("crumbs follow the area of the vessel"))
    layout.tell(
        "",
        say(
            "filled to {height} of {whole}",
            height=decimal(length(millimetres(top))),
            whole=format_length(cavity.height),
        ),
        say("a vessel is filled to 60 to 85 % of its height, which leaves the rim clean"),
    )
    tail(layout, wanted, build, {})
    return layout


def _fill_level(wanted: Wanted) -> float:
    """As high as the author's portion stands, within what looks neither empty nor full. [m]"""
    cavity = wanted.mould.solid
    low, high = (share * cavity.height for share in FULL[wanted.form])
    volume = wanted.build.portion * wanted.servings.serves
    if volume >= cavity.volume_below(high):
        return high
    return max(low, cavity.level_at(volume))


def _glaze(layout: Layout, build: Build) -> Part | None:
    """The first coating that gels, to be poured as a layer; all others are left out."""
    found = None
    for part in build.coatings:
        if found is None and build.gels(part):
            found = part
            continue
        layout.left_out.append(part.id)
        because = say("it coats the sides of a piece, and in a vessel there are none")
        layout.tell(part.id, say("left out"), because)
    return found


def _crumb_mass(wanted: Wanted) -> list[tuple[Part, float]]:
    """Rolled doughs and loose crumbs that go on top, with their masses in one vessel. [kg]"""
    found = []
    build, cavity = wanted.build, wanted.mould.solid
    served = wanted.servings.serves / build.servings.serves / build.reckoning.per_cavity
    area = cavity.area_at(0.6 * cavity.height)
    for part in build.parts:
        dough = isinstance(part.placement, BasePlacement) and part.is_rolled
        if dough or part.is_loose and part.placement.role == "layer":
            density = build.reckoning.density[part.id]
            before = part.volume * served * density
            most = CRUMB_LAYER * area * (CRUMB_DENSITY if dough else density)
            found.append((part, max(1.0, round(min(before, most) / GRAM)) * GRAM))
    return found


def _crumb_height(wanted: Wanted, crumbs: list[tuple[Part, float]], top: float) -> float:
    """What the crumbs take below a level. [m]"""
    cavity = wanted.mould.solid
    volume = sum(
        amount / (CRUMB_DENSITY if part.is_rolled else wanted.build.reckoning.density[part.id])
        for part, amount in crumbs
    )
    return top - cavity.level_at(max(cavity.volume_below(top) - volume, 0.0))


def _layers(layout: Layout, wanted: Wanted, top: float) -> None:
    """Bases and soft parts from the bottom to a level."""
    cavity = wanted.mould.solid
    soft = [p for p in wanted.build.upward if is_soft(p)]
    waiting = [p for p in wanted.build.upward if _is_cake(p)]
    level = 0.0
    reserve = sum(_thickness(wanted, p) for p in waiting) * cavity.area_at(0.3 * cavity.height)
    room = max(cavity.volume_below(top) - reserve, 0.0)
    shares = _shares(wanted, soft)
    for number, part in enumerate(soft):
        level, waiting = _with_bases(layout, wanted, waiting, level)
        goal = min(cavity.volume_below(level) + shares[number] * room, cavity.volume_below(top))
        height = max(millimetres(cavity.level_at(goal) - level), LEAST_LAYER)
        if number == len(soft) - 1:
            height = millimetres(top - level)
        if height < LEAST_LAYER - 1e-9:
            raise _too_shallow(wanted, part)
        layout.entries.append({"component": part.id, "as": "layer", "height": length(height)})
        layout.poured.append(part.id)
        level += height
        layout.tell(
            part.id,
            say("a layer of {height}", height=decimal(length(height))),
            _why(part, shares[number]),
        )
    level, waiting = _with_bases(layout, wanted, waiting, level)
    if waiting:
        raise _too_shallow(wanted, waiting[0])


def _why(part: Part, share: float) -> str:
    soft = format_fraction(share)
    if part.placement.role != "insert":
        return say("layers keep their shares; {share} of what is soft", share=soft)
    return say(
        "a layer is all an insert can be where nothing is frozen or turned out; {share} of what "
        "is soft",
        share=soft,
    )


def _shares(wanted: Wanted, soft: list[Part]) -> list[float]:
    """Share of each soft part; inserts no more than a third of it, if they were inside."""
    whole = sum(p.volume for p in soft)
    shares = [p.volume / whole for p in soft]
    inserts = sum(s for s, p in zip(shares, soft, strict=True) if p.placement.role == "insert")
    if not MOST_INSERT < inserts < 1.0:
        return shares
    down, up = MOST_INSERT / inserts, (1.0 - MOST_INSERT) / (1.0 - inserts)
    return [
        s * (down if p.placement.role == "insert" else up)
        for s, p in zip(shares, soft, strict=True)
    ]


def _is_cake(part: Part) -> bool:
    return isinstance(part.placement, BasePlacement) and not part.is_rolled


def _thickness(wanted: Wanted, part: Part) -> float:
    placement = part.placement
    assert isinstance(placement, BasePlacement)
    most = max(millimetres(THICK_BASE * wanted.mould.solid.height), THINNEST_BASE)
    return min(placement.thickness, most)


def _with_bases(
    layout: Layout, wanted: Wanted, waiting: list[Part], level: float
) -> tuple[float, list[Part]]:
    """Lay every base that finds room at this level; a round bottom holds none at first."""
    while waiting:
        part, *rest = waiting
        thickness = _thickness(wanted, part)
        try:
            cut = cut_inside(
                wanted.mould.solid,
                level=level,
                thickness=thickness,
                inset=CLEAR,
                clear=CLEAR,
                name=part.component.name,
            )
        except FitError:
            return level, waiting
        layout.entries.append(_base_entry(layout, part, cut, thickness))
        level, waiting = level + thickness, rest
    return level, waiting


def _base_entry(layout: Layout, part: Part, cut: dict[str, str], thickness: float) -> Entry:
    placement = part.placement
    assert isinstance(placement, BasePlacement)
    entry = {k: v for k, v in part.raw.items() if k != "sits"}
    entry = {**entry, "cut_out": cut, "thickness": length(thickness)}
    if abs(thickness - placement.thickness) < 5e-4:
        entry["thickness"] = part.raw["thickness"]
    sheet = sheet_for(placement, cut, part.raw.get("sheet"))
    if sheet is not None:
        entry["sheet"] = sheet
    layout.cut[part.id] = cut
    layout.tell(
        part.id,
        say("cut as {cut}", cut=spoken(cut)),
        say("cake goes in first, cut to the vessel, and drinks from above"),
    )
    return entry


def _too_shallow(wanted: Wanted, part: Part) -> FitError:
    return FitError(
        say(
            "{mould} is too shallow for all layers: nothing is left for {name}",
            mould=wanted.mould.name,
            name=part.component.name,
        ),
        parts=(part.component.name, wanted.mould.name),
        missing=LEAST_LAYER,
    )
