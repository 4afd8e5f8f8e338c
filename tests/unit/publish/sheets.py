"""A hand-made batch sheet, complete enough for a page."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from entremetry.dessert.batch_sheet import (
    Allergens,
    BatchSheet,
    ComponentBatch,
    CutOuts,
    FillStep,
    IngredientAmount,
    MouldUse,
    Purchase,
    Slip,
    Wall,
)
from entremetry.larder.constituents import Constituents
from entremetry.method.made import Change
from entremetry.sources.figure import Figure
from unit.publish.sections import dome

HOSTILE = "</script><script>alert(1)</script><img src=x onerror=alert(2)> \x07& \"quoted\" 'so'"


def figure(value: float, unit: str) -> Figure:
    return Figure(value=value, unit=unit, because="by hand")


def amount(name: str, mass_g: float, household: str = "", **more: Any) -> IngredientAmount:
    key = name.casefold().replace(" ", "-")
    known: dict[str, Any] = {"household_error": None, "written": f"{mass_g} g", **more}
    return IngredientAmount(
        line=key, id=key, name=name, mass=mass_g / 1e3, household=household, **known
    )


def component(
    key: str, name: str, kind: str, lines: tuple[IngredientAmount, ...], *method: str
) -> ComponentBatch:
    mass = sum(line.mass for line in lines)
    return ComponentBatch(
        id=key,
        name=name,
        kind=kind,
        factor=1.0,
        mass=figure(mass, "kg"),
        ready_mass=mass * 0.95,
        volume=figure(mass / 700.0, "m3"),
        per_piece=figure(mass * 0.95 / 6.0, "kg"),
        density=figure(700.0, "kg/m3"),
        loss_fraction=0.05,
        changes=(
            Change(
                step="pour",
                reason="stays in bowl and bag",
                mass=-0.05 * mass,
                because="5 %",
                source="common_practice",
            ),
        ),
        lines=lines,
        method=method,
        constituents=Constituents(water=mass),
        brix=0.0,
        time=3600.0,
        hands_on=900.0,
    )


MOUSSE = component(
    "mousse",
    "Blackcurrant mousse",
    "mousse",
    (
        amount("Blackcurrant purée", 190, "3/4 cup", household_error=0.02),
        amount("Caster sugar", 45, "3 1/2 tbsp", household_error=-0.04),
        amount("Gelatine sheets, gold", 6, "3 sheets", note="200 Bloom, soaked in 30 g of water"),
        amount("Cream, 35 % fat", 210, "7/8 cup", household_error=0.01, note="very cold"),
    ),
    "Soak the gelatine in 30 g of cold water for 10 min.",
    "Warm a third of the purée with the sugar to 60 °C and melt the gelatine in it.",
    "Add the rest of the purée and cool to 26 °C.",
    "Whip the cream to soft ribbons (overrun 90 %) and fold it in.",
)
INSERT = component(
    "insert",
    "Vanilla cream insert",
    "insert",
    (
        amount("Cream, 35 % fat", 90, "3/8 cup"),
        amount("Egg yolk", 20, "1 large yolk", household_error=0.15),
        amount("Vanilla bean", 2.5, "1/2 pod", own=True),
    ),
    "Heat the cream with the vanilla, pour it over the yolk and cook to 82 °C.",
    "Strain, cool to 30 °C, pour into half-spheres of 40 mm and freeze.",
)
BASE = component(
    "base",
    "Hazelnut shortcrust",
    "base",
    (
        amount("Wheat flour", 90, "3/4 cup"),
        amount("Butter", 55, "1/2 stick"),
        amount("Ground hazelnuts", 25, "1/4 cup"),
        amount("Salt", 0.8, "1/8 tsp"),
    ),
    "Rub the butter into flour, hazelnuts, sugar and salt; rest 1 h in the cold.",
    "Roll to 3 mm, cut discs of 60 mm, bake at 160 °C (fan) for 15-18 min.",
)
GLAZE = component(
    "glaze",
    "Mirror glaze",
    "glaze",
    (amount("Caster sugar", 120, "2/3 cup"), amount("Glucose syrup", 120, ""), amount("Water", 60)),
    "Boil to 103 °C, cool to 60 °C, add the gelatine, blend without drawing in air.",
)

SHEET = BatchSheet(
    id="blackcurrant-vanilla-dome",
    name="Blackcurrant and vanilla dome",
    about="A dark fruit mousse around a soft vanilla heart, on hazelnut shortcrust.",
    author="A. Baker",
    keywords=(),
    pieces=6,
    serves=1,
    mould=MouldUse(
        id="hemisphere-70",
        name="Half-sphere mould",
        size="6 x 70 mm",
        is_vessel=False,
        fills_upside_down=True,
        cavity_volume=figure(89.8e-6, "m3"),
        coated_area=figure(77.0e-4, "m2"),
        cavities=6,
        pieces_per_cavity=1,
        cavities_per_tray=6,
        trays=1,
        fillings=1,
    ),
    components=(INSERT, BASE, MOUSSE, GLAZE),
    fill_steps=(
        FillStep(
            component="mousse", text="Pipe 38 g of mousse, to 14 mm below the rim.", mass=0.038
        ),
        FillStep(component="insert", text="Press the frozen insert in until it is 9 mm down."),
        FillStep(component="mousse", text="Cover with 9 g, set the base on top and level."),
    ),
    assembly=(
        "Freeze until the centre is at -18 °C: 6 h.",
        "Unmould, and glaze at 32 °C within 3 min.",
        "Thaw at 4 °C for 4 h and serve.",
    ),
    walls=(
        Wall(
            insert="vanilla cream insert",
            around="Blackcurrant mousse",
            thinnest=0.008,
            place="pole",
        ),
    ),
    cut_outs=(
        CutOuts(
            component="base",
            size="60 mm disc",
            count=6,
            per_sheet=24,
            sheets=1,
            sheet="400 x 300 mm",
            pattern="staggered rows",
            at_most=27,
            rolled_mass=0.160,
            offcut_mass=0.040,
            offcuts="re-rolled",
        ),
    ),
    shopping=(
        Purchase(
            id="cream-35",
            name="Cream, 35 % fat",
            mass=0.3,
            buy="2 x 200 g tub",
            bought_mass=0.4,
            left_over=0.1,
        ),
        Purchase(
            id="gelatine",
            name="Gelatine sheets, gold",
            mass=0.006,
            buy="3 sheets",
            bought_mass=0.006,
            left_over=0.0,
            effect="2 % more gelatine than written",
        ),
        Purchase(
            id="sugar", name="Caster sugar", mass=0.165, buy="", bought_mass=0.165, left_over=0.0
        ),
    ),
    section=dome(),
    piece_mass=figure(0.092, "kg"),
    time=50_400.0 + 1200.0,
    hands_on=7_800.0,
    assumptions=("The mousse keeps 90 % of the air of the cream when it is folded (from memory).",),
    cautions=("The custard holds egg yolk: cook it to 82 °C and cool it below 5 °C within 2 h.",),
    slips=(
        Slip(place="Vanilla cream insert, step 1", found="60 °C (150 °F)", right="60 °C (140 °F)"),
    ),
    allergens=Allergens(
        eu=("eggs", "gluten:wheat", "milk", "nuts:hazelnut"),
        us=("egg", "milk", "tree-nuts:hazelnut", "wheat"),
    ),
    own_ingredients=(),
)


def hostile() -> BatchSheet:
    """The sheet with a hostile text in every text a page shows."""
    line = replace(MOUSSE.lines[0], name=HOSTILE, household=HOSTILE, note=HOSTILE)
    bad = replace(MOUSSE, name=HOSTILE, lines=(line,), method=(HOSTILE,))
    part = replace(SHEET.section.parts[0], name=HOSTILE)
    return replace(
        SHEET,
        name=HOSTILE,
        about=HOSTILE,
        author=HOSTILE,
        components=(bad,),
        mould=replace(SHEET.mould, name=HOSTILE, size=HOSTILE),
        fill_steps=(FillStep(component="mousse", text=HOSTILE),),
        assembly=(HOSTILE,),
        cut_outs=(replace(SHEET.cut_outs[0], size=HOSTILE, sheet=HOSTILE, pattern=HOSTILE),),
        shopping=(replace(SHEET.shopping[0], name=HOSTILE, buy=HOSTILE, effect=HOSTILE),),
        section=replace(SHEET.section, parts=(part,)),
        assumptions=(HOSTILE,),
        cautions=(HOSTILE,),
        slips=(Slip(place=HOSTILE, found=HOSTILE, right=HOSTILE),),
    )
