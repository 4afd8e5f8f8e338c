"""Masses of a batch against a calculation by hand, and the laws a batch keeps."""

from __future__ import annotations

import math

import pytest

from dessert_texts import DOME, sheet_of
from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch

MOUSSE_VOLUME = 2 / 3 * math.pi * (0.035**3 - 0.020**3) - math.pi * 0.030**2 * 0.006


def component(sheet: BatchSheet, component_id: str) -> ComponentBatch:
    return next(c for c in sheet.components if c.id == component_id)


def test_the_mousse_is_volume_times_density_divided_by_what_is_kept() -> None:
    mousse = component(sheet_of(DOME), "mousse")
    in_the_mould = 6 * MOUSSE_VOLUME * 600.0
    assert mousse.ready_mass == pytest.approx(in_the_mould)
    assert mousse.mass.value == pytest.approx(in_the_mould / 0.95)
    assert mousse.loss_fraction == pytest.approx(0.05)
    assert mousse.per_piece.value == pytest.approx(MOUSSE_VOLUME * 600.0)


def test_the_lines_keep_the_proportions_of_the_formula() -> None:
    mousse = component(sheet_of(DOME), "mousse")
    masses = {line.line: line.mass for line in mousse.lines}
    whole = 0.240 + 0.200 + 0.008 + 0.040
    assert masses["puree"] == pytest.approx(mousse.mass.value * 0.240 / whole)
    assert masses["gelatine-sheet-gold"] == pytest.approx(mousse.mass.value * 0.008 / whole)
    assert masses["gelatine-sheet-gold-water"] == pytest.approx(mousse.mass.value * 0.040 / whole)


def test_what_is_weighed_is_what_is_ready_and_what_is_lost() -> None:
    for part in sheet_of(DOME).components:
        weighed = sum(line.mass for line in part.lines)
        lost = -sum(change.mass for change in part.changes if change.mass < 0)
        assert weighed == pytest.approx(part.ready_mass + lost, abs=1e-12)


def test_twice_the_pieces_take_twice_of_everything() -> None:
    one, two = sheet_of(DOME, 6), sheet_of(DOME, 12)
    for small, large in zip(one.components, two.components, strict=True):
        assert large.mass.value == pytest.approx(2.0 * small.mass.value)
    assert one.piece_mass.value == pytest.approx(two.piece_mass.value)


def test_another_mould_scales_filling_by_what_is_left_in_it() -> None:
    larger = sheet_of(DOME, mould_id="hemisphere-80")
    volume = 2 / 3 * math.pi * (0.040**3 - 0.020**3) - math.pi * 0.030**2 * 0.006
    assert component(larger, "mousse").per_piece.value == pytest.approx(volume * 600.0)
    assert component(larger, "insert").per_piece.value == pytest.approx(
        component(sheet_of(DOME), "insert").per_piece.value
    )


def test_trays_and_fillings_follow_from_cavities_owned() -> None:
    use = sheet_of(DOME, 14).mould
    assert (use.cavities, use.trays, use.fillings) == (14, 1, 3)


def test_allergens_of_everything_weighed_are_listed() -> None:
    assert sheet_of(DOME).allergens.eu == ("gluten:wheat", "milk")


def test_every_number_says_where_it_came_from() -> None:
    for part in sheet_of(DOME).components:
        assert "g ready" in part.mass.because
        assert part.per_piece.because


GLAZED = DOME.replace(
    "placement:\n",
    "  glaze: {name: Glaze, kind: glaze, density: 1.25 g/ml, formula: {puree: 100 g},\n"
    "    method: [{step: pour, left_behind: 0 %}]}\nplacement:\n",
)


def glaze(entry: str, pieces: int = 6) -> ComponentBatch:
    text = GLAZED + f"  - {{component: glaze, as: coating, {entry}}}\n"
    return component(sheet_of(text, pieces), "glaze")


def test_a_coating_covers_all_but_the_face_it_stands_on() -> None:
    area = 2.0 * math.pi * 0.035**2
    assert glaze("film: 2 mm").per_piece.value == pytest.approx(area * 0.002 * 1250.0)
    assert glaze("per_area: 1 g/cm2").per_piece.value == pytest.approx(area * 10.0)


def test_six_pours_share_one_jug() -> None:
    """Pour 600 g, 150 g stay, 85 % of the run-off is caught: 600 + 5 (150 + 0.15 x 450)."""
    area = 2.0 * math.pi * 0.035**2
    per_area = 0.150 / area / 10.0
    needed = glaze(f"per_area: {per_area:.10f} g/cm2, pour: 600 g, caught: 85 %").ready_mass
    assert needed == pytest.approx(1.6875, rel=1e-6)


CUT_RAW = DOME.replace(
    "formula: {plain-flour: 100 g}",
    "formula: {plain-flour: 100 g}\n    method: [{step: roll, thickness: 4 mm}, {step: cut}, "
    "{step: bake, at: 160 °C, loss: 10 %}]",
)


def test_a_base_cut_raw_weighs_as_dough_less_what_baking_takes() -> None:
    base = component(sheet_of(CUT_RAW), "base")
    raw_density = 1.0 / (0.76 / 1592.891 + 0.12 / 1319.532 + 0.12 / 995.740)
    raw = math.pi * 0.030**2 * 0.004 * raw_density
    assert base.mass.value == pytest.approx(6 * raw, rel=1e-4)
    assert base.per_piece.value == pytest.approx(0.9 * raw, rel=1e-4)


def test_a_component_in_a_component_is_made_for_it() -> None:
    text = DOME.replace(
        "formula: {puree: 240 g, cream-35: 200 g, gelatine-sheet-gold: 4 sheets}",
        "formula: {puree: 240 g, cream-35: 200 g, gelatine-sheet-gold: 4 sheets, "
        "syrup: {component: syrup, amount: 50 g}}",
    ).replace("what: [puree, cream-35]", "what: [puree, cream-35, syrup]")
    text = text.replace(
        "placement:\n",
        "  syrup: {name: Syrup, kind: soak, formula: {water: 50 g, caster-sugar: 50 g},\n"
        "    method: [{step: pour, left_behind: 10 %}]}\nplacement:\n",
    )
    sheet = sheet_of(text)
    drawn = next(line for line in component(sheet, "mousse").lines if line.line == "syrup")
    assert component(sheet, "syrup").ready_mass == pytest.approx(drawn.mass)
    assert component(sheet, "syrup").mass.value == pytest.approx(drawn.mass / 0.9)
    assert "goes into others" in component(sheet, "syrup").mass.because


def test_shopping_adds_up_over_components_and_counts_whole_sheets() -> None:
    bought = {purchase.id: purchase for purchase in sheet_of(DOME).shopping}
    cream = sum(
        line.mass
        for part in sheet_of(DOME).components
        for line in part.lines
        if line.id == "cream-35"
    )
    assert bought["cream-35"].mass == pytest.approx(cream)
    assert bought["cream-35"].buy == "1 × carton (500 g)"
    assert "water" not in bought
    sheets = bought["gelatine-sheet-gold"]
    assert sheets.buy == "2 × sheet"
    assert "less" in sheets.effect or "more" in sheets.effect
