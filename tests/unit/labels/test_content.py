"""What one piece holds, and how water is counted."""

from __future__ import annotations

import pytest

from entremetry.labels.content import Content, piece_contents, ready_contents, together
from entremetry.larder.constituents import Constituents
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text, reckoned, surroundings

DOCUMENT = """entremetry: 1
id: coffee-cup
name: Coffee cup
pieces: 4
mould: glass-straight
components:
  syrup:
    name: Syrup
    kind: soak
    formula: {caster-sugar: 50 g, water: 50 g}
    method:
      - {step: mix, left_behind: 0 %}
  cream:
    name: Coffee cream
    kind: mousse
    formula:
      cream-35: 200 g
      coffee-ground: 20 g
      gelatine-sheet-gold: 2 sheets
      sweet: {amount: 40 g, component: syrup}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 20 g}
      - {step: cook-to, what: [cream-35, coffee-ground], temperature: 85 °C, evaporates: 10 g}
      - {step: strain, removes: [coffee-ground]}
      - {step: mix, what: [gelatine-sheet-gold, sweet], left_behind: 10 %}
placement:
  - {component: cream, as: layer, height: 30 mm}
"""


def contents(text: str = DOCUMENT) -> tuple[Content, ...]:
    return piece_contents(reckoned(text, "test.yaml", surroundings(None, "kitchen")))


def test_what_is_held_is_the_mass_weighed_of_what_stays() -> None:
    ready = ready_contents(reckoned(DOCUMENT, "t", surroundings(None, "k")))["cream"]
    assert ready.held["cream-35"] == pytest.approx(0.180)
    assert ready.held["caster-sugar"] == pytest.approx(0.020 * 0.9)
    assert ready.held["gelatine-sheet-gold"] == pytest.approx(0.004 * 0.9)
    assert ready.water == pytest.approx((0.020 + 0.020) * 0.9)


def test_what_is_strained_out_is_not_held_but_remembered() -> None:
    (piece,) = contents()
    assert "coffee-ground" not in piece.held
    assert piece.taken_out["coffee-ground"] > 0.0


def test_water_driven_off_is_no_longer_added_water() -> None:
    (piece,) = contents()
    assert piece.added_water == pytest.approx(piece.mass - sum(piece.held.values()))
    assert 0.0 < piece.added_water < piece.water


def test_there_is_never_more_added_water_than_was_added() -> None:
    food = Content(id="x", name="X", mass=1.0, constituents=Constituents(water=1.0), water=0.3)
    assert food.added_water == pytest.approx(0.3)


def test_food_that_lost_more_than_the_added_water_has_none() -> None:
    food = Content(
        id="x",
        name="X",
        mass=0.8,
        constituents=Constituents(water=0.8),
        held={"milk": 1.0},
        water=0.1,
    )
    assert food.added_water == 0.0


@pytest.mark.parametrize("name", sorted(demo_texts()))
def test_a_piece_weighs_what_the_batch_sheet_says(name: str) -> None:
    text = demo_texts()[name]
    piece = together(name, name, contents(text))
    assert piece.mass == pytest.approx(batch_of_text(text).piece_mass.value, rel=1e-12)
    assert piece.constituents.total == pytest.approx(piece.mass, rel=1e-9)
