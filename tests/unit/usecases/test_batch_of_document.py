"""The batch of a document, with and without a kitchen."""

from __future__ import annotations

from pathlib import Path

import pytest

from entremetry.errors import EntremetryError
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch, batch_of_text, moulds, surroundings

DOME = demo_texts()["blackcurrant-vanilla-dome"]
KITCHEN = """entremetry_kitchen: 1
name: Mine
measures: metric
ovens: [{name: Oven, fan: false}]
moulds: [{id: pebble, name: Pebble, shape: {kind: cylinder, diameter: 9 cm, height: 5 cm}}]
ingredients: {cream-35: {fat: 33 %}}
"""


def test_a_file_and_its_text_give_the_same(tmp_path: Path) -> None:
    path = tmp_path / "dome.yaml"
    path.write_text(DOME, encoding="utf-8")
    of_file, of_text = batch(path), batch_of_text(DOME)
    assert of_file.components == of_text.components
    assert of_file.shopping == of_text.shopping


def test_pieces_and_mould_can_be_chosen() -> None:
    sheet = batch_of_text(DOME, pieces=12, mould="hemisphere-80")
    assert (sheet.pieces, sheet.mould.id) == (12, "hemisphere-80")


def test_the_kitchen_lends_its_moulds_ingredients_and_cups() -> None:
    around = surroundings(KITCHEN, "kitchen.yaml")
    assert around.fan is False
    assert around.larder.find("cream-35").overridden == {"fat"}
    sheet = batch_of_text(DOME, mould="pebble", kitchen_text=KITCHEN)
    assert sheet.mould.id == "pebble"
    assert [own.id for own in sheet.own_ingredients] == ["cream-35"]


def test_without_a_kitchen_the_oven_is_unknown() -> None:
    around = surroundings(None, "kitchen")
    assert around.fan is None
    assert "hemisphere-70" in around.moulds


def test_moulds_of_the_kitchen_stand_beside_the_shelf() -> None:
    assert {mould.id for mould in moulds(KITCHEN)} - {mould.id for mould in moulds()} == {"pebble"}


@pytest.mark.parametrize("pieces", [0, -1, 10_001])
def test_an_absurd_number_of_pieces_is_refused(pieces: int) -> None:
    with pytest.raises(EntremetryError, match="1 to 10000 pieces"):
        batch_of_text(DOME, pieces=pieces)


def test_pieces_and_what_there_is_exclude_each_other() -> None:
    with pytest.raises(EntremetryError, match="one of the two"):
        batch_of_text(DOME, pieces=3, have=("cream-35", "1 kg"))


@pytest.mark.parametrize("name", sorted(demo_texts()))
def test_every_demo_gives_a_sheet_without_slips(name: str) -> None:
    assert batch_of_text(demo_texts()[name]).slips == ()
