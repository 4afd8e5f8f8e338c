"""All that a page computes with in the reader's browser, as one JSON object of its own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from entremetry.adapt.proportion import foot_area
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.dessert import Line
from entremetry.dessert.household_amount import SPOONS
from entremetry.dessert.needs import piece_share
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.gelatine_swap import dry_part, in_place_of
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.publish.cold_tables import ColdTable, points
from entremetry.publish.reader_amounts import coated, coefficients, draws, film_of, top_only
from entremetry.publish.reader_measures import Words, measure_words, packed
from entremetry.words import say_later

MASS_ERROR = 0.005
"""The page's masses against the library's, as shares; found over a grid of moulds in the tests."""
TIME_ERROR = 0.03
SYSTEMS = {
    SPOONS: say_later("Spoons and millilitres"),
    "us": say_later("US cups"),
    "metric": say_later("Metric cups"),
    "uk": say_later("British spoons"),
    "au": say_later("Australian cups"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ColdTimes:
    """Tables of freezing and thawing by family and step, and the minutes in the own mould."""

    tables: Mapping[str, Mapping[str, ColdTable]]
    own: Mapping[str, float]


def reader_model(
    reckoning: Reckoning, sheet: BatchSheet, measures: str, times: ColdTimes | None = None
) -> dict[str, Any]:
    """What the page's script starts from; SI units, minutes for times of steps."""
    mould, document = reckoning.dessert.mould, reckoning.dessert.document
    film, portions = film_of(reckoning), document.portions
    gelatines = _gelatines(reckoning)
    texts: dict[str, int] = {}
    return {
        "pieces": sheet.pieces,
        "per_cavity": reckoning.per_cavity,
        "portion": [portions.length, portions.width, portions.trim] if portions else None,
        "share": piece_share(reckoning.dessert),
        "upside_down": mould.fills_upside_down,
        "vessel": mould.vessel,
        "top_only": top_only(reckoning),
        "mould": {
            "volume": mould.solid.volume,
            "coated": coated(mould, film, reckoning) if film else 0.0,
            "foot": foot_area(mould),
            "height": mould.solid.height,
        },
        "components": [
            _component(reckoning, sheet, each.id, gelatines) for each in sheet.components
        ],
        "order": [c.id for c in reversed(reckoning.dessert.components)],
        "fill": [_fill(reckoning, step.component, step.mass) for step in sheet.fill_steps],
        "gelatines": [{"id": g.id, "name": ingredient_name(g)} for g in gelatines],
        "measures": {
            system: packed(_words(reckoning, sheet, gelatines, system), texts)
            for system in SYSTEMS
            if system in (measures, "us", "metric")
        },
        "texts": list(texts),
        "cold": _cold(times),
        "assembly": [_minutes(step.time) for step in document.assembly],
        "cold_steps": [step.step for step in document.assembly],
    }


def _component(
    reckoning: Reckoning, sheet: BatchSheet, component: str, gelatines: tuple[Ingredient, ...]
) -> dict[str, Any]:
    own = next(c for c in reckoning.dessert.components if c.id == component)
    batch = next(c for c in sheet.components if c.id == component)
    by_name = {line.name: line for line in own.lines}
    return {
        "id": component,
        **asdict(coefficients(reckoning)[component]),
        "ready": reckoning.makings[component].mix.mass,
        "made": batch.mass.value / batch.factor,
        "density": batch.density.value,
        "time": _minutes(batch.time),
        "draws": dict(draws(own)),
        "lines": [
            {
                "mass": line.mass / batch.factor,
                "measure": line.id if line.line in by_name else None,
                "water": line.line not in by_name,
                **_swaps(by_name.get(line.line), gelatines),
            }
            for line in batch.lines
        ],
    }


def _swaps(line: Line | None, gelatines: tuple[Ingredient, ...]) -> dict[str, Any]:
    """Mass of each gelatine in the place of one kilogram of a line, and the Bloom it stands for."""
    ingredient = line.ingredient if line else None
    if ingredient is None or ingredient.bloom is None:
        return {}
    return {
        "swaps": [in_place_of(1.0, ingredient, other).linear for other in gelatines],
        "strength": dry_part(ingredient) * ingredient.bloom,
    }


def _gelatines(reckoning: Reckoning) -> tuple[Ingredient, ...]:
    """Gelatines to choose from, if the dessert has any: sheets and powders, the strongest last."""
    lines = [line for c in reckoning.dessert.components for line in c.lines]
    if not any(line.ingredient is not None and line.ingredient.bloom for line in lines):
        return ()
    found = [i for i in reckoning.dessert.larder if i.bloom is not None and dry_part(i) == 1.0]
    return tuple(sorted(found, key=lambda i: ("powder" in i.id, i.bloom)))


def _words(
    reckoning: Reckoning, sheet: BatchSheet, gelatines: tuple[Ingredient, ...], system: str
) -> dict[str, Words]:
    masses: dict[str, list[float]] = {}
    known: dict[str, Ingredient] = {}
    for component in reckoning.dessert.components:
        factor = next((c.factor for c in sheet.components if c.id == component.id), 0.0)
        for line in component.lines:
            if line.ingredient is not None and line.mass * factor > 0.0:
                known[line.ingredient.id] = line.ingredient
                masses.setdefault(line.ingredient.id, []).append(line.mass * factor)
    setting = [m for i, ms in masses.items() if known[i].bloom is not None for m in ms]
    for other in gelatines if setting else ():
        known[other.id] = other
        masses.setdefault(other.id, []).extend((min(setting) / 1.5, max(setting) * 1.5))
    return {name: measure_words(known[name], found, system) for name, found in masses.items()}


def _fill(reckoning: Reckoning, component: str, mass: float | None) -> dict[str, Any]:
    found = coefficients(reckoning)[component]
    by = "foot" if found.foot else "volume"
    return {"by": by, "mass": mass}


def _cold(times: ColdTimes | None) -> dict[str, Any]:
    if times is None:
        return {"own": {}, "tables": {}}
    return {
        "own": dict(times.own),
        "tables": {
            family: {
                step: {
                    "nodes": [points(axis) for axis in table.axes],
                    "ends": [axis[:2] for axis in table.axes],
                    "values": table.values,
                }
                for step, table in steps.items()
            }
            for family, steps in times.tables.items()
        },
    }


def _minutes(seconds: float | None) -> float:
    return (seconds or 0.0) / 60.0
