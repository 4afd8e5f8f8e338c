"""The batch sheet as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from entremetry.cli.listing import listed
from entremetry.dessert.batch_sheet import (
    BatchSheet,
    ComponentBatch,
    CutOuts,
    FillStep,
    IngredientAmount,
    Purchase,
)
from entremetry.quantities import format_mass, format_volume


def as_json(sheet: BatchSheet) -> str:
    """One JSON object; masses in g, volumes in ml, lengths in mm."""
    return json.dumps(
        {
            "id": sheet.id,
            "name": sheet.name,
            "pieces": sheet.pieces,
            "serves": sheet.serves,
            "mould": _mould(sheet),
            "components": [_component(component) for component in sheet.components],
            "fill_steps": [_fill_step(step) for step in sheet.fill_steps],
            "assembly": list(sheet.assembly),
            "walls": [
                {
                    "insert": wall.insert,
                    "around": wall.around,
                    "towards": wall.place,
                    "thinnest_mm": _mm(wall.thinnest),
                }
                for wall in sheet.walls
            ],
            "cut_outs": [_cut_outs(cut) for cut in sheet.cut_outs],
            "shopping": [_purchase(purchase) for purchase in sheet.shopping],
            "piece_mass_g": _g(sheet.piece_mass.value),
            "assumptions": list(sheet.assumptions),
            "cautions": list(sheet.cautions),
            "slips": [
                {"place": slip.place, "found": slip.found, "right": slip.right}
                for slip in sheet.slips
            ],
            "allergens_eu": list(sheet.allergens.eu),
            "allergens_us": list(sheet.allergens.us),
            "own_ingredients": [
                {"id": own.id, "name": own.name, "overridden": sorted(own.overridden)}
                for own in sheet.own_ingredients
            ],
        },
        ensure_ascii=False,
        indent=2,
    )


def _mould(sheet: BatchSheet) -> dict[str, Any]:
    use = sheet.mould
    return {
        "id": use.id,
        "name": use.name,
        "size": use.size,
        "vessel": use.is_vessel,
        "cavity_volume_ml": _ml(use.cavity_volume.value),
        "coated_area_cm2": round(use.coated_area.value * 1e4, 2),
        "cavities": use.cavities,
        "pieces_per_cavity": use.pieces_per_cavity,
        "trays": use.trays,
        "fillings": use.fillings,
    }


def _component(component: ComponentBatch) -> dict[str, Any]:
    return {
        "id": component.id,
        "name": component.name,
        "kind": component.kind,
        "factor": round(component.factor, 6),
        "mass_g": _g(component.mass.value),
        "ready_mass_g": _g(component.ready_mass),
        "volume_ml": _ml(component.volume.value),
        "per_piece_g": _g(component.per_piece.value),
        "density_g_per_ml": round(component.density.value / 1e3, 4),
        "loss_percent": round(component.loss_fraction * 100.0, 3),
        "brix_percent": round(component.brix, 1),
        "because": component.mass.because,
        "ingredients": [_ingredient(line) for line in component.lines],
        "method": list(component.method),
    }


def _ingredient(line: IngredientAmount) -> dict[str, Any]:
    return {
        "id": line.id,
        "name": line.name,
        "mass_g": _g(line.mass),
        "household": line.household,
        "household_error_percent": None
        if line.household_error is None
        else round(line.household_error * 100.0, 1),
        "note": line.note,
        "own": line.own,
    }


def _fill_step(step: FillStep) -> dict[str, Any]:
    return {
        "component": step.component,
        "text": step.text,
        "mass_g": None if step.mass is None else _g(step.mass),
        "below_rim_mm": None if step.below_rim is None else _mm(step.below_rim),
    }


def _cut_outs(cut: CutOuts) -> dict[str, Any]:
    return {
        "component": cut.component,
        "size": cut.size,
        "count": cut.count,
        "per_sheet": cut.per_sheet,
        "at_most": cut.at_most,
        "sheets": cut.sheets,
        "sheet": cut.sheet,
        "pattern": cut.pattern,
        "rolled_mass_g": _g(cut.rolled_mass),
        "offcut_mass_g": _g(cut.offcut_mass),
        "offcuts": cut.offcuts,
    }


def _purchase(purchase: Purchase) -> dict[str, Any]:
    return {
        "id": purchase.id,
        "name": purchase.name,
        "mass_g": _g(purchase.mass),
        "buy": purchase.buy,
        "bought_mass_g": _g(purchase.bought_mass),
        "left_over_g": _g(purchase.left_over),
        "effect": purchase.effect,
    }


def as_text(sheet: BatchSheet) -> str:
    """The batch sheet as one reads it in a terminal or prints it."""
    return "\n".join(_lines(sheet))


def _lines(sheet: BatchSheet) -> Iterator[str]:
    use = sheet.mould
    yield f"{sheet.name}: {sheet.pieces} piece{'s' if sheet.pieces > 1 else ''}"
    yield f"{use.name}, {format_volume(use.cavity_volume.value)} a cavity, {_fillings(sheet)}"
    yield f"One piece weighs about {format_mass(sheet.piece_mass.value)}."
    for component in sheet.components:
        yield ""
        yield from _component_lines(component)
    yield from listed("Fill", [step.text for step in sheet.fill_steps])
    yield from listed("Then", sheet.assembly)
    yield from listed("Walls", [_wall(sheet, index) for index in range(len(sheet.walls))])
    yield from listed("Cut out", [_cut(cut) for cut in sheet.cut_outs])
    yield from listed("Buy", [_buy(purchase) for purchase in sheet.shopping])
    own = [f"{i.name}: own {_figures(i.overridden)}" for i in sheet.own_ingredients]
    yield from listed("Your own ingredients", own)
    yield from listed("Taken for granted", sheet.assumptions)
    slips = [f"{s.place}: {s.found} should be {s.right}" for s in sheet.slips]
    yield from listed("Measures that disagree", slips)
    yield from listed("Allergens (check the packets)", sheet.allergens.eu)
    yield from listed("Beware", sheet.cautions)


def _figures(overridden: frozenset[str]) -> str:
    return ", ".join(sorted(overridden)).replace("_", " ")


def _fillings(sheet: BatchSheet) -> str:
    use = sheet.mould
    count = f"{use.cavities} to fill" if use.cavities > 1 else "one to fill"
    if use.pieces_per_cavity > 1:
        count += f", each cut into {use.pieces_per_cavity}"
    return count + (f", in {use.fillings} rounds" if use.fillings > 1 else "")


def _component_lines(component: ComponentBatch) -> Iterator[str]:
    loss = f", {component.loss_fraction:.1%} lost" if component.loss_fraction > 1e-6 else ""
    yield (
        f"{component.name}: {format_mass(component.mass.value)} to weigh, "
        f"{format_mass(component.per_piece.value)} in a piece{loss}"
    )
    width = max(len(line.name) for line in component.lines)
    for line in component.lines:
        note = f"  ({line.note})" if line.note else ""
        yield f"  {format_mass(line.mass):>8}  {line.name:<{width}}  {line.household}{note}"
    for number, text in enumerate(component.method, start=1):
        yield f"  {number}. {text}"


def _wall(sheet: BatchSheet, index: int) -> str:
    wall = sheet.walls[index]
    return (
        f"{wall.around} around the {wall.insert}: {_mm(wall.thinnest):.1f} mm at its thinnest, "
        f"towards the {wall.place}"
    )


def _cut(cut: CutOuts) -> str:
    return (
        f"{cut.count} of {cut.size}, {cut.per_sheet} on a sheet of {cut.sheet} ({cut.pattern}); "
        f"{format_mass(cut.rolled_mass)} of dough or batter, offcuts {cut.offcuts}"
    )


def _buy(purchase: Purchase) -> str:
    effect = f" ({purchase.effect})" if purchase.effect else ""
    return f"{purchase.name}: {purchase.buy}{effect}"


def _g(mass: float) -> float:
    return round(mass * 1e3, 3)


def _ml(volume: float) -> float:
    return round(volume * 1e6, 3)


def _mm(length: float) -> float:
    return round(length * 1e3, 2)
