"""For every rule what lets it pass, what makes it caution and what makes it fail."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from bench_texts import step_temperatures
from entremetry.timings.step_temperatures import Fact, StepTemperatures


@dataclass(frozen=True, kw_only=True)
class Case:
    """A dessert to start from, what is changed in it, and the component that is looked at."""

    component: str
    changes: Mapping[str, Any] = field(default_factory=dict)
    start: str = "dome"


def case(component: str, start: str = "dome", **changes: Any) -> Case:
    """A case; the keys of `changes` are paths."""
    return Case(component=component, changes=changes, start=start)


def insert(
    formula: Mapping[str, str], *method: Mapping[str, Any], component: str = "insert"
) -> Case:
    """A case in which the insert is made of something else."""
    steps = method or ({"step": "cook-to", "temperature": "85 °C"},)
    return case(
        component,
        **{
            "components/insert/formula": dict(formula),
            "components/insert/method": [
                *steps,
                {"step": "freeze-until", "temperature": "-15 °C", "time": "3 h"},
            ],
        },
    )


def three(
    path: str, component: str, good: Any, doubtful: Any, bad: Any, start: str = "dome"
) -> tuple[Case, ...]:
    """Three cases that differ in one value."""
    return tuple(case(component, start, **{path: value}) for value in (good, doubtful, bad))


SIMMER = {"step": "simmer", "time": "2 min"}
MELT = {"step": "melt", "temperature": "60 °C"}


def gelled(*, grams: str = "1.5 g", **others: str) -> dict[str, str]:
    """A formula with gelatine."""
    return {"gelatine-powder-200": grams, **others}


def agar(degrees: float) -> Case:
    return insert(
        {"agar-powder": "0.6 g", "raspberry-puree": "150 g"},
        {"step": "cook-to", "temperature": f"{degrees} °C"},
    )


def pectin(degrees: float) -> Case:
    return insert(
        {"pectin-nh": "2 g", "raspberry-puree": "150 g"},
        {"step": "cook-to", "temperature": f"{degrees} °C"},
    )


def jam(sugar: str) -> Case:
    return insert({"pectin-hm": "1 g", "raspberry-puree": "100 g", "caster-sugar": sugar}, SIMMER)


def starch(degrees: float) -> Case:
    return insert(
        {"corn-starch": "8 g", "whole-milk": "150 g", "caster-sugar": "15 g"},
        {"step": "cook-to", "temperature": f"{degrees} °C"},
    )


def fruit(degrees: float) -> Case:
    return insert(
        {**gelled(), "pineapple": "150 g"},
        {"step": "soak", "what": ["gelatine-powder-200"], "water": "8 g"},
        {"step": "cook-to", "what": ["pineapple"], "temperature": f"{degrees} °C"},
        {"step": "mix", "what": ["gelatine-powder-200"]},
    )


def butter(degrees: float) -> Case:
    return insert(
        {
            "egg-yolk": "60 g",
            "caster-sugar": "60 g",
            "lemon-juice": "60 g",
            "butter-unsalted": "60 g",
        },
        {
            "step": "cook-to",
            "what": ["egg-yolk", "caster-sugar", "lemon-juice"],
            "temperature": "83 °C",
        },
        {"step": "cool-to", "temperature": f"{degrees} °C"},
        {"step": "mix", "what": ["butter-unsalted"]},
    )


def chocolate(degrees: float) -> Case:
    return insert(
        {"cream-35": "100 g", "couverture-dark-66": "80 g"},
        {"step": "melt", "temperature": f"{degrees} °C"},
    )


def ganache(cream: str) -> Case:
    return insert({"cream-35": cream, "couverture-dark-70": "100 g"}, MELT)


def filled(lower: str, upper: str) -> Case:
    return case(
        "dessert",
        "layers",
        **{"placement/0/height": lower, "placement/1/height": upper, "placement/2/mass": "2 g"},
    )


def airy(density: str) -> Case:
    return case(
        "upper",
        "layers",
        **{
            "components/lower/formula": {"cream-35": "200 g", "mascarpone": "40 g"},
            "components/lower/density": density,
            "components/lower/method": [{"step": "whip", "overrun": "80 %"}],
            "components/upper/density": "0.85 g/ml",
        },
    )


def flaky(time: str) -> Case:
    return case("base", **{"assembly/5/time": time})


def chocolate_mousse(degrees: float) -> Case:
    return case(
        "mousse",
        **{
            "components/mousse/formula": {
                "whole-milk": "80 g",
                "couverture-dark-66": "90 g",
                "cream-35": "170 g",
            },
            "components/mousse/method": [
                {
                    "step": "melt",
                    "what": ["whole-milk", "couverture-dark-66"],
                    "temperature": "60 °C",
                },
                {"step": "cool-to", "temperature": f"{degrees} °C"},
                {"step": "whip", "what": ["cream-35"], "bowl": "cream", "overrun": "80 %"},
                {"step": "fold", "what": ["cream"]},
            ],
        },
    )


def whipped(cream: str) -> Case:
    return case(
        "mousse",
        **{
            "components/mousse/formula/cream-35": None,
            "components/mousse/formula/cream": {"ingredient": cream, "amount": "155 g"},
            "components/mousse/method/3/what": ["cream"],
            "components/mousse/method/3/bowl": "whipped",
            "components/mousse/method/4/what": ["whipped"],
        },
    )


def thinned(milk: str) -> Case:
    return case(
        "mousse",
        **{
            "components/mousse/formula/whole-milk": milk,
            "components/mousse/method/3/what": ["cream-35", "whole-milk"],
        },
    )


def soaked(mass: str) -> Case:
    return case(
        "syrup",
        **{
            "components/syrup": {
                "name": "Syrup",
                "kind": "soak",
                "formula": {"water": "60 g", "caster-sugar": "40 g"},
            },
            "components/base/method/2": {"step": "whip", "overrun": "20 %"},
            "placement/1/below_rim": "8 mm",
            "placement/3": {
                "component": "base",
                "as": "base",
                "cut_out": {"kind": "disc", "diameter": "60 mm"},
                "thickness": "6 mm",
            },
            "components/base/density": "0.4 g/ml",
            "placement/2": {"component": "syrup", "as": "soak", "on": "base", "mass": mass},
            "assembly/3": {"step": "rest", "time": "1 min"},
        },
    )


def light_base(density: str, thickness: str) -> Case:
    return case(
        "base",
        **{
            "mould": "ring-180",
            "components/base/density": density,
            "placement/3": {
                "component": "base",
                "as": "base",
                "cut_out": {"kind": "disc", "diameter": "160 mm"},
                "thickness": thickness,
            },
            "placement/1": {"component": "insert", "as": "garnish", "mass": "5 g"},
        },
    )


def heavy(density: str) -> Case:
    return case(
        "insert",
        **{
            "components/insert/density": density,
            "components/mousse/density": "0.5 g/ml",
            "placement/1": {
                "component": "insert",
                "as": "insert",
                "shape": {"kind": "cylinder", "diameter": "40 mm", "height": "12 mm"},
                "below_rim": "5 mm",
            },
        },
    )


def kept(hours: float, degrees: float = 4.0) -> Case:
    step = {"step": "hold", "time": f"{hours} h", "temperature": f"{degrees} °C"}
    return case("dessert", **{"assembly/6": step})


def noted(note: str) -> Case:
    return case("mousse", **{"components/mousse/method/1/note": note})


GOOD = case("mousse")
CASES: Mapping[str, tuple[Case, ...]] = {
    "sets": (
        GOOD,
        *(
            case("mousse", **{"components/mousse/formula/gelatine-sheet-gold": grams})
            for grams in ("0.8 g", "0.1 g")
        ),
    ),
    "rubbery": three(
        "components/mousse/formula/gelatine-sheet-gold", "mousse", "4 g", "8 g", "14 g"
    ),
    "soaking-water": three("components/mousse/method/0/water", "mousse", "22 g", "12 g", "6 g"),
    "gelatine-boiled": three(
        "components/mousse/method/1/temperature", "mousse", "60 °C", "90 °C", "104 °C"
    ),
    "gelatine-dissolved": (
        GOOD,
        *(
            case(
                "mousse",
                **{
                    "components/mousse/method/1/temperature": f"{warm} °C",
                    "components/mousse/method/2/temperature": "28 °C",
                },
            )
            for warm in (38, 30)
        ),
    ),
    "raw-fruit-and-gelatine": (fruit(90), fruit(75), fruit(20)),
    "poured-before-it-sets": three(
        "components/insert/method/3/temperature", "insert", "28 °C", "20 °C", "15 °C"
    ),
    "agar-boiled": (agar(95), agar(85), agar(60)),
    "pectin-boiled": (pectin(95), pectin(75), pectin(50)),
    "pectin-sugar": (jam("150 g"), jam("95 g"), jam("30 g")),
    "starch-cooked": (starch(90), starch(65), starch(45)),
    "custard": three("components/insert/method/1/temperature", "insert", "83 °C", "74 °C", "94 °C"),
    "weeping": (
        case("insert"),
        insert({**gelled(), "agar-powder": "0.3 g", "raspberry-puree": "150 g"}, SIMMER),
        insert({"agar-powder": "0.8 g", "raspberry-puree": "150 g"}, SIMMER),
    ),
    "fold-temperature": three(
        "components/mousse/method/2/temperature", "mousse", "44 °C", "36 °C", "24 °C"
    ),
    "chocolate-base-temperature": (
        chocolate_mousse(43),
        chocolate_mousse(33),
        chocolate_mousse(26),
    ),
    "layer-on-layer": three(
        "components/upper/method/1/temperature", "upper", "30 °C", "38 °C", "60 °C", "layers"
    ),
    "glaze-temperature": three("assembly/3/temperature", "glaze", "33 °C", "26 °C", "45 °C"),
    "unmould-temperature": three("assembly/1/temperature", "dessert", "-15 °C", "-8 °C", "-3 °C"),
    "ice-at-service": three("assembly/5/temperature", "mousse", "0 °C", "-2.2 °C", "-6 °C"),
    "cream-fat": (GOOD, thinned("50 g"), thinned("120 g")),
    "cream-overrun": three("components/mousse/method/3/overrun", "mousse", "90 %", "160 %", "10 %"),
    "mousse-density": three(
        "components/mousse/density", "mousse", "0.65 g/ml", "0.92 g/ml", "1.02 g/ml"
    ),
    "air-kept": three("components/mousse/method/4/kept", "mousse", "90 %", "60 %", "30 %"),
    "foam-reheated": (
        GOOD,
        *(
            case(
                "mousse",
                **{"components/mousse/method/5": {"step": "melt", "temperature": f"{warm} °C"}},
            )
            for warm in (37, 55)
        ),
    ),
    "fat-and-water": (ganache("110 g"), ganache("62 g"), ganache("40 g")),
    "butter-temperature": (butter(45), butter(24), butter(15)),
    "chocolate-melted": (chocolate(45), chocolate(34), chocolate(22)),
    "sucrose-crystals": tuple(
        insert({"water": "60 g", "caster-sugar": f"{sugar} g"}) for sugar in (60, 130, 200)
    ),
    "lactose-crystals": tuple(
        insert({"water": "100 g", "skim-milk-powder": f"{powder} g", **gelled()})
        for powder in (20, 45, 90)
    ),
    "sweetness": three(
        "components/mousse/formula/caster-sugar", "mousse", "35 g", "140 g", "450 g"
    ),
    "alcohol": tuple(
        insert({**gelled(), "raspberry-puree": "150 g", "rum-40": f"{rum} g"})
        for rum in (5, 30, 90)
    ),
    "acid-and-gelatine": tuple(
        insert({**gelled(), "raspberry-puree": "100 g", **acid})
        for acid in ({}, {"lemon-juice": "100 g"}, {"citric-acid": "8 g"})
    ),
    "insert-freezes-hard": tuple(
        insert({**gelled(), "water": "100 g", "caster-sugar": f"{sugar} g"})
        for sugar in (30, 110, 190)
    ),
    "icy": tuple(
        insert({**gelled(), "water": "100 g", "caster-sugar": f"{sugar} g"})
        for sugar in (35, 15, 2)
    ),
    "mousse-wall": (
        case("insert"),
        *(
            case(
                "insert",
                **{"placement/1/shape/diameter": size, "placement/1/below_rim": "3 mm"},
            )
            for size in ("56 mm", "62 mm")
        ),
    ),
    "insert-share": (
        case("insert"),
        *(
            case(
                "insert",
                **{"placement/1/shape/diameter": size, "placement/1/below_rim": "0 mm"},
            )
            for size in ("56 mm", "64 mm")
        ),
    ),
    "base-width": three("placement/3/cut_out/diameter", "base", "74 mm", "52 mm", "30 mm"),
    "filled-height": (
        filled("25 mm", "20 mm"),
        filled("15 mm", "10 mm"),
        filled("8 mm", "5 mm"),
    ),
    "slump": three(
        "components/mousse/formula/gelatine-sheet-gold", "mousse", "4 g", "1.9 g", "1.2 g"
    ),
    "insert-sinks": (case("insert"), heavy("1.3 g/ml"), heavy("3 g/ml")),
    "base-floats": (
        light_base("0.55 g/ml", "6 mm"),
        light_base("0.1 g/ml", "15 mm"),
        light_base("0.01 g/ml", "40 mm"),
    ),
    "layer-sinks": (airy("0.8 g/ml"), airy("0.6 g/ml"), airy("0.4 g/ml")),
    "releases": three("assembly/1/temperature", "mousse", "-15 °C", "-3.5 °C", "-2.5 °C"),
    "stays-crisp": (flaky("4 h"), flaky("14 h"), flaky("48 h")),
    "baked-dry": three("components/base/method/3/loss", "base", "11 %", "8 %", "3 %"),
    "dough-rest": three("components/base/method/1/time", "base", "40 min", "20 min", "5 min"),
    "dough-thickness": three("components/base/method/2/thickness", "base", "3 mm", "7 mm", "1 mm"),
    "soak-share": (soaked("2 g"), soaked("5.4 g"), soaked("12 g")),
    "glaze-water": three("components/glaze/formula/water", "glaze", "22 g", "90 g", "300 g"),
    "glaze-syrup": three("components/glaze/formula/water", "glaze", "22 g", "85 g", "300 g"),
    "glaze-gelatine": three(
        "components/glaze/formula/gelatine-powder-200", "glaze", "3 g", "1.6 g", "0.5 g"
    ),
    "glaze-film": three("placement/2/film", "glaze", "1.5 mm", "3 mm", "6 mm"),
    "glaze-poured": three("placement/2/pour", "glaze", "60 g", "26 g", "20 g"),
    "glaze-at-once": three("assembly/3/within", "dessert", "3 min", "8 min", "20 min"),
    "gelatine-soaked": three(
        "components/mousse/method/0/time", "mousse", "10 min", "3 min", "20 s"
    ),
    "insert-frozen": three(
        "components/insert/method/5/temperature", "insert", "-15 °C", "-5 °C", "2 °C"
    ),
    "glazed-frozen": three("assembly/1/temperature", "dessert", "-15 °C", "-8 °C", "-2 °C"),
    "raw-egg": three("components/insert/method/1/temperature", "insert", "82 °C", "65 °C", "40 °C"),
    "raw-flour": tuple(
        insert(
            {"plain-flour": "12 g", "whole-milk": "150 g"},
            {"step": "cook-to", "temperature": f"{degrees} °C"},
        )
        for degrees in (90, 65, 30)
    ),
    "cooling-in-two-stages": three(
        "components/insert/method/3/time", "insert", "30 min", "3 h", "6 h"
    ),
    "chilled-life": (kept(24), kept(100), kept(300)),
    "hours-in-the-warm": (kept(1, 20), kept(3, 20), kept(6, 20)),
    "paired-measures": (
        case("dessert"),
        noted("Warm it to 55 °C (137 °F)."),
        noted("Warm it to 60 °C (180 °F)."),
    ),
    "losses": three("components/mousse/method/5/left_behind", "mousse", "5 %", "25 %", "45 %"),
    "dose-can-be-weighed": three(
        "components/insert/formula/gelatine-sheet-gold", "insert", "2 g", "0.7 g", "0.15 g"
    ),
}


def timed(kind: str) -> tuple[StepTemperatures, ...]:
    """Enough time, rather little, much too little."""
    return tuple(
        step_temperatures(kind, written=hours * 3600.0, time=4 * 3600.0) for hours in (5, 3, 1)
    )


def touching(degrees: float) -> StepTemperatures:
    """A pour after which glaze and piece meet at this temperature."""
    fact = Fact(name="temperature where glaze and piece touch", value=degrees, unit="°C")
    return step_temperatures("glaze-at", written=None, time=60.0, facts=(fact,))


TIMES: Mapping[str, tuple[StepTemperatures, ...]] = {
    "freezing-time": timed("freeze-until"),
    "thawing-time": timed("thaw-until"),
    "cooling-time": tuple(
        step_temperatures("cool-to", written=minutes * 60.0, time=3600.0) for minutes in (50, 25, 8)
    ),
    "glaze-contact": (touching(12.0), touching(22.0), touching(27.0)),
}


def cold(kind: str, *degrees: float) -> tuple[Mapping[str, Any], ...]:
    """Kitchens with one machine at these temperatures."""
    return tuple({kind: [{"name": "Mine", "temperature": f"{each} °C"}]} for each in degrees)


KITCHENS: Mapping[str, tuple[Mapping[str, Any], ...]] = {
    "fridge-temperature": cold("fridges", 4, 7, 12),
    "freezer-temperature": cold("freezers", -18, -15, -6),
}
