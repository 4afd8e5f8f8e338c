"""The batch: how much of everything, for this mould and this many."""

from __future__ import annotations

import math
from collections.abc import Mapping

from entremetry.dessert.batch_sheet import (
    Allergens,
    BatchSheet,
    CutOuts,
    FillStep,
    MouldUse,
    Wall,
)
from entremetry.dessert.component_batch import component_batch, weighed
from entremetry.dessert.cut_outs import cut_outs
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.drawn_section import drawn_section
from entremetry.dessert.fill_steps import Soak, fill_steps
from entremetry.dessert.fill_words import CAVITY, GLASS, MOULD, VESSEL
from entremetry.dessert.needs import coated_area, total
from entremetry.dessert.placed import Filled
from entremetry.dessert.placement import BasePlacement, CoatingPlacement, SoakPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.dessert.shopping import shopping
from entremetry.dessert.slips import slips
from entremetry.dessert.telling import Teller
from entremetry.kitchen.mould import Mould
from entremetry.larder.ingredient import Ingredient
from entremetry.quantities import format_length, format_volume
from entremetry.sources.figure import Figure
from entremetry.words import say, say_later

CLOSED_FORM_ERROR = 0.005
WATER_WEIGHING_ERROR = 0.02
TOWARDS = {
    "side": say_later("side"),
    "closed end": say_later("closed end"),
    "rim": say_later("rim"),
}
"""Where a wall around an insert is the thinnest."""


def batch_sheet(
    reckoning: Reckoning, *, pieces: int, measures: str, fan: bool | None
) -> BatchSheet:
    """Write the batch sheet for so many pieces."""
    dessert, document = reckoning.dessert, reckoning.dessert.document
    required = reckoning.requirements(pieces)
    amounts = tuple(weighed(dessert, required))
    ingredients = tuple({ingredient.id: ingredient for ingredient, _ in amounts}.values())
    teller = Teller(dessert, reckoning.makings, required, fan)
    components = tuple(
        component_batch(component, reckoning, required[component.id], pieces, measures, teller)
        for component in dessert.components
        if required[component.id].ready > 0.0
    )
    return BatchSheet(
        id=document.id,
        name=document.name,
        about=document.about,
        author=document.author,
        keywords=tuple(document.keywords),
        pieces=pieces,
        serves=document.serves,
        mould=_mould_use(reckoning, pieces),
        components=components,
        fill_steps=_fill_steps(reckoning),
        assembly=teller.assembly(),
        walls=_walls(reckoning),
        cut_outs=_cut_outs(reckoning, pieces),
        shopping=shopping(amounts, measures),
        section=drawn_section(dessert, reckoning.placed, _kinds(dessert), reckoning.needs),
        piece_mass=_piece_mass(reckoning),
        time=max((c.time for c in components), default=0.0) + teller.assembly_time(),
        hands_on=sum(c.hands_on for c in components) + teller.assembly_hands_on(),
        assumptions=_assumptions(reckoning, teller, required),
        cautions=teller.cautions(),
        slips=slips(document, dessert.larder),
        allergens=_allergens(ingredients),
        own_ingredients=tuple(i for i in ingredients if i.overridden),
    )


def _allergens(ingredients: tuple[Ingredient, ...]) -> Allergens:
    return Allergens(
        eu=tuple(sorted({code for i in ingredients for code in i.allergens_eu})),
        us=tuple(sorted({code for i in ingredients for code in i.allergens_us})),
    )


def _kinds(dessert: Dessert) -> dict[str, str]:
    return {component.id: component.kind for component in dessert.components}


def _fill_steps(reckoning: Reckoning) -> tuple[FillStep, ...]:
    mould = reckoning.dessert.mould
    return fill_steps(
        reckoning.placed,
        kinds=_kinds(reckoning.dessert),
        density=reckoning.density,
        soaks=_soaks(reckoning),
        upright=not mould.fills_upside_down,
        one=_one(mould),
    )


def _soaks(reckoning: Reckoning) -> dict[str, Soak]:
    """What is brushed on each base, by the base's component."""
    names = reckoning.dessert.names
    return {
        p.on: Soak(
            component=p.component,
            name=names[p.component],
            mass=total(reckoning.needs, p.component).mass,
        )
        for p in reckoning.dessert.document.placement
        if isinstance(p, SoakPlacement)
    }


def _one(mould: Mould) -> str:
    if mould.vessel:
        return VESSEL if mould.material != "glass" else GLASS
    return CAVITY if mould.cavities > 1 else MOULD


def _walls(reckoning: Reckoning) -> tuple[Wall, ...]:
    around = reckoning.placed.filled
    return tuple(
        Wall(
            insert=wall.inclusion.name,
            around=_around(wall.inclusion.low, around),
            thinnest=wall.thinnest,
            place=say(TOWARDS[wall.towards]),
        )
        for wall in reckoning.placed.walls
    )


def _around(level: float, filled: tuple[Filled, ...]) -> str:
    for part in filled:
        if part.low <= level <= part.high:
            return part.name
    return say("what surrounds it")


def _cut_outs(reckoning: Reckoning, pieces: int) -> tuple[CutOuts, ...]:
    cavities, names = reckoning.cavities(pieces), reckoning.dessert.names
    found = [
        cut_outs(p, names[p.component], cavities, reckoning.bases[p.component])
        for p in reckoning.dessert.document.placement
        if isinstance(p, BasePlacement)
    ]
    return tuple(cut for cut in found if cut is not None)


def _mould_use(reckoning: Reckoning, pieces: int) -> MouldUse:
    mould, cavities = reckoning.dessert.mould, reckoning.cavities(pieces)
    at_once = mould.cavities * mould.owned
    return MouldUse(
        id=mould.id,
        name=mould.name,
        size=mould.size,
        is_vessel=mould.vessel,
        fills_upside_down=mould.fills_upside_down,
        cavity_volume=_cavity_volume(mould),
        coated_area=_coated_area(reckoning.dessert),
        cavities=cavities,
        pieces_per_cavity=reckoning.per_cavity,
        cavities_per_tray=mould.cavities,
        trays=min(mould.owned, math.ceil(cavities / mould.cavities)),
        fillings=math.ceil(cavities / at_once),
    )


def _cavity_volume(mould: Mould) -> Figure:
    error = WATER_WEIGHING_ERROR if mould.measured else CLOSED_FORM_ERROR
    way = say("weighed with water") if mould.measured else say("from its measures")
    return Figure(
        value=mould.solid.volume,
        unit="m3",
        because=say(
            "{name}, {size}: {volume}, {way}",
            name=mould.name,
            size=mould.size,
            volume=format_volume(mould.solid.volume),
            way=way,
        ),
        sources=("our_geometry",),
        relative_error=error,
    )


def _coated_area(dessert: Dessert) -> Figure:
    for placement in dessert.document.placement:
        if isinstance(placement, CoatingPlacement):
            in_portions = dessert.document.portions is not None
            area = coated_area(placement, dessert.mould, in_portions=in_portions)
            return Figure(
                value=area,
                unit="m2",
                because=say("surface of the piece but for the face it stands on")
                if placement.where != "top"
                else say("top of the piece"),
                sources=("our_geometry",),
                relative_error=CLOSED_FORM_ERROR,
            )
    return Figure(value=0.0, unit="m2", because=say("nothing is coated"))


def _piece_mass(reckoning: Reckoning) -> Figure:
    mass = sum(need.on_piece for need in reckoning.needs)
    return Figure(
        value=mass,
        unit="kg",
        because=say("sum of what one piece holds of each component"),
        relative_error=0.05,
    )


def _assumptions(
    reckoning: Reckoning, teller: Teller, required: Mapping[str, Requirement]
) -> tuple[str, ...]:
    names = reckoning.dessert.names
    texts = [
        say(
            "{name}: it is neither placed nor goes into another component that is, "
            "so none is made.",
            name=names[component],
        )
        for component, requirement in required.items()
        if requirement.ready <= 0.0
    ]
    texts += teller.assumptions()
    for component in reckoning.placed.centred:
        texts.append(
            say("{name}: no depth is given, so it sits in the middle.", name=names[component])
        )
    if reckoning.placed.free_height > 0.0005:
        free = format_length(round(reckoning.placed.free_height, 3))
        left = say("Nothing takes what is left: {depth} stay free below the rim.", depth=free)
        texts.append(left)
    return tuple(dict.fromkeys(texts))
