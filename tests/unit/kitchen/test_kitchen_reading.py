"""A kitchen document is read, and its moulds are made."""

from __future__ import annotations

import pytest

from entremetry.errors import DocumentError
from entremetry.kitchen import moulds_of, read_kitchen
from entremetry.kitchen.reading import read_kitchen_with_lines
from entremetry.store.shelf import no_mesh

KITCHEN = """entremetry_kitchen: 1
name: My kitchen
measures: metric
room_temperature: 22 °C
ovens: [{name: Oven, fan: true, trays: 2}]
freezers: [{name: Chest, temperature: -18 °C, volume: 200 l}]
fridges: [{name: Fridge, temperature: 4 °C}]
trays: [{name: Sheet, length: 400 mm, width: 300 mm, owned: 3}]
moulds:
  - {id: pebble, name: Pebble, cavities: 8, shape: {kind: cap, diameter: 70 mm, height: 30 mm}}
  - {id: bowl, name: Bowl, vessel: true, shape: {kind: hemisphere, diameter: 120 mm}}
people:
  - {name: Me, free: [{day: friday, start: "18:00", end: "22:30"}]}
"""


def faults(old: str, new: str) -> dict[str, str]:
    """What is accepted at each field that a change spoils."""
    assert old in KITCHEN
    with pytest.raises(DocumentError) as caught:
        document, tree = read_kitchen_with_lines(KITCHEN.replace(old, new), file="kitchen.yaml")
        moulds_of(document, file="kitchen.yaml", read_mesh=no_mesh, tree=tree)
    assert all(fault.file == "kitchen.yaml" and fault.line for fault in caught.value.faults)
    return {fault.field: fault.accepted for fault in caught.value.faults}


def test_quantities_are_in_si() -> None:
    kitchen = read_kitchen(KITCHEN, file="kitchen.yaml")
    assert kitchen.room_temperature == pytest.approx(295.15)
    assert kitchen.freezers[0].temperature == pytest.approx(255.15)
    assert kitchen.freezers[0].volume == pytest.approx(0.2)
    assert kitchen.trays[0].length == pytest.approx(0.4)


def test_moulds_are_made_by_id_and_know_how_they_are_filled() -> None:
    made = moulds_of(
        read_kitchen(KITCHEN, file="kitchen.yaml"), file="kitchen.yaml", read_mesh=no_mesh
    )
    assert list(made) == ["pebble", "bowl"]
    assert made["pebble"].fills_upside_down and not made["bowl"].fills_upside_down
    assert made["pebble"].size == "70 mm across, 30 mm high"
    assert made["pebble"].cavities == 8


@pytest.mark.parametrize(
    ("old", "new", "field", "accepted"),
    [
        ("fan: true", "fan: sometimes", "ovens[1].fan", "true or false"),
        ("-18 °C", "-18", "freezers[1].temperature", "say the unit"),
        ("400 mm", "400 g", "trays[1].length", "a length"),
        ("friday", "fryday", "people[1].free[1].day", "friday"),
        ('"18:00"', '"8:00"', "people[1].free[1].start", "a time of day"),
        ('"22:30"', '"17:30"', "people[1].free[1]", "later than the start"),
        ("measures: metric", "measures: french", "measures", "us, metric"),
        ("height: 30 mm", "height: 80 mm", "moulds[1].shape", "at most 35 mm"),
        ("id: bowl", "id: pebble", "moulds[2].id", "an id of its own"),
        ("id: bowl", "id: My Bowl", "moulds[2].id", "words joined by hyphens"),
        ("cavities: 8", "cavities: 0", "moulds[1].cavities", "1 or more"),
        ("ovens:", "oven:", "oven", "ovens"),
        ("entremetry_kitchen: 1", "entremetry_kitchen: 2", "entremetry_kitchen", "1"),
    ],
)
def test_a_fault_says_what_is_accepted(old: str, new: str, field: str, accepted: str) -> None:
    assert accepted in faults(old, new)[field]


def test_a_dessert_is_no_kitchen() -> None:
    with pytest.raises(DocumentError, match="a first line 'entremetry_kitchen: 1'"):
        read_kitchen("entremetry: 1\nname: Dome\n", file="dome.yaml")
