"""Filling a cavity: grams and millimetres below the rim, in the order of the work."""

from __future__ import annotations

import math

import pytest

from dessert_texts import DOME, sheet_of

GLASS = """
entremetry: 1
id: glass
name: Glass
pieces: 4
mould: glass-straight
components:
  jelly: {name: Lime jelly, kind: insert, density: 1 g/ml, formula: {puree: 100 g}}
  cream: {name: Coconut cream, kind: mousse, density: 0.8 g/ml, formula: {cream-35: 100 g}}
  crumble: {name: Crumble, kind: crumble, density: 0.5 g/ml, formula: {plain-flour: 100 g}}
placement:
  - {component: jelly, as: layer, height: 20 mm}
  - {component: cream, as: layer, volume: 100 ml}
  - {component: crumble, as: layer, mass: 10 g}
"""


def test_a_dome_is_piped_pressed_covered_and_closed() -> None:
    first, press, cover, close = sheet_of(DOME).fill_steps
    assert [first.component, press.component] == ["mousse", "insert"]
    assert [cover.component, close.component] == ["mousse", "base"]
    assert press.below_rim == pytest.approx(0.006)
    assert close.below_rim == pytest.approx(0.0)
    assert "level with the rim" in close.text


def test_the_first_pour_is_what_the_insert_lifts_flush_with_its_top() -> None:
    first, _, cover, _ = sheet_of(DOME).fill_steps
    level = 0.035 - 0.006
    below_insert_top = math.pi * level**2 * (3 * 0.035 - level) / 3.0
    poured = below_insert_top - 2 / 3 * math.pi * 0.020**3
    assert first.mass == pytest.approx(600.0 * poured)
    depth = 0.035 - first.below_rim
    assert math.pi * depth**2 * (3 * 0.035 - depth) / 3.0 == pytest.approx(poured, rel=1e-6)
    assert cover.text.startswith("Cover with")


def test_the_pours_of_a_component_add_up_to_what_a_piece_holds() -> None:
    sheet = sheet_of(DOME)
    poured = sum(step.mass for step in sheet.fill_steps if step.component == "mousse")
    mousse = next(part for part in sheet.components if part.id == "mousse")
    assert poured == pytest.approx(mousse.per_piece.value)


def test_a_glass_is_filled_upright_layer_by_layer() -> None:
    sheet = sheet_of(GLASS)
    area = math.pi * 0.0325**2
    jelly, cream, crumble = sheet.fill_steps
    assert jelly.mass == pytest.approx(area * 0.020 * 1000.0)
    assert cream.below_rim == pytest.approx(0.075 - 0.020 - 100e-6 / area)
    assert crumble.text.startswith("Scatter 10 g of the crumble onto each glass")
    assert not sheet.mould.fills_upside_down
    assert any("stay free below the rim" in text for text in sheet.assumptions)


def test_an_upright_frame_gets_its_base_first() -> None:
    text = DOME.replace("mould: hemisphere-70", "mould: frame-400").split("placement:")[0]
    text += """placement:
  - {component: base, as: base, thickness: 8 mm,
     cut_out: {kind: rectangle, length: 400 mm, width: 300 mm}}
  - {component: mousse, as: layer, height: 12 mm}
"""
    lay, spread = sheet_of(text, 1).fill_steps
    assert lay.text == "Lay the shortcrust on the bottom of the mould."
    assert spread.below_rim == pytest.approx(0.020)
