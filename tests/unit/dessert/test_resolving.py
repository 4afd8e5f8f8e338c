"""Names are looked up and amounts weighed; every fault is said with its line."""

from __future__ import annotations

from textwrap import dedent

import pytest

from dessert_texts import DOME, dessert_of, sheet_of
from entremetry.errors import DocumentError, UnknownName

OWN = """
ingredients:
  puree: {density: 1.1 g/ml, source: weighed}
  jam: {like: puree, name: Jam}
components:"""


def faults(text: str) -> dict[str, str]:
    """What is found at each field."""
    with pytest.raises(DocumentError) as caught:
        dessert_of(text)
    assert all(fault.line for fault in caught.value.faults)
    return {fault.field: f"{fault.found}; {fault.accepted}" for fault in caught.value.faults}


def test_amounts_become_kilograms() -> None:
    (mousse,) = [c for c in dessert_of(DOME).components if c.id == "mousse"]
    assert {line.name: line.mass for line in mousse.lines} == pytest.approx(
        {"puree": 0.240, "cream-35": 0.200, "gelatine-sheet-gold": 0.008}
    )


def test_a_line_may_bear_a_name_of_its_own() -> None:
    text = DOME.replace("cream-35: 100 g", "softly-whipped: {ingredient: cream-35, amount: 100 g}")
    (insert,) = [c for c in dessert_of(text).components if c.id == "insert"]
    assert [(line.name, line.ingredient.id) for line in insert.lines if line.ingredient] == [
        ("softly-whipped", "cream-35")
    ]


def test_own_ingredients_override_and_add_and_show() -> None:
    text = DOME.replace("\ncomponents:", OWN, 1).replace("plain-flour: 100 g", "jam: 100 g")
    dessert = dessert_of(text)
    assert dessert.larder.find("puree").density == pytest.approx(1100.0)
    assert dessert.larder.find("Jam").id == "jam"
    own = {ingredient.id: ingredient.overridden for ingredient in sheet_of(text).own_ingredients}
    assert own["puree"] == {"density"} and "jam" in own


def test_an_own_ingredient_like_nothing_is_a_fault() -> None:
    text = DOME.replace("\ncomponents:", OWN.replace("like: puree", "like: purree"), 1)
    assert "'purree'" in faults(text)["ingredients.jam.like"]


def test_components_are_ordered_after_what_they_are_made_from() -> None:
    text = DOME.replace("plain-flour: 100 g", "x: {component: insert, amount: 5 g}")
    names = list(dessert_of(text).names)
    assert names.index("insert") < names.index("base")


def test_a_circle_is_spelled_out() -> None:
    text = DOME.replace("plain-flour: 100 g", "x: {component: insert, amount: 5 g}").replace(
        "cream-35: 100 g", "y: {component: base, amount: 5 g}"
    )
    (found,) = faults(text).values()
    assert "which is made from" in found and found.count("base") + found.count("insert") == 3


@pytest.mark.parametrize(
    ("old", "new", "field", "says"),
    [
        ("plain-flour: 100 g", "flour: 100 g", "components.base.formula.flour", "Which flour?"),
        (
            "plain-flour: 100 g",
            "x: {component: bse, amount: 5 g}",
            "components.base.formula.x",
            "a component of this dessert",
        ),
        (
            "plain-flour: 100 g",
            "x: {component: mousse, amount: 5 ml}",
            "components.base.formula.x",
            "another component goes in by weight",
        ),
        (
            "plain-flour: 100 g",
            "x: {component: mousse, ingredient: water, amount: 5 g}",
            "components.base.formula.x",
            "one of the two",
        ),
        (
            "plain-flour: 100 g",
            "flour: {amount: 100 g, ask: Which one?}",
            "components.base.formula.flour",
            "one of: plain-flour, cake-flour",
        ),
        (
            "gelatine-sheet-gold: 4 sheets",
            "gelatine-sheet-gold: 4 pods",
            "components.mousse.formula.gelatine-sheet-gold",
            "(sheet), a mass or a volume",
        ),
        ("mould: hemisphere-70", "mould: hemisphere-7", "mould", "written out"),
        (
            "{component: base, as: base",
            "{component: gone, as: base",
            "placement[3]",
            "a component of this dessert",
        ),
    ],
)
def test_a_name_that_means_nothing_is_a_fault(old: str, new: str, field: str, says: str) -> None:
    assert says in faults(DOME.replace(old, new, 1))[field]


def test_nothing_placed_is_a_fault() -> None:
    text = DOME[: DOME.index("placement:")] + "placement: []\n"
    assert "at least one component" in faults(text)["placement"]


def test_a_mould_asked_for_by_id_must_exist() -> None:
    with pytest.raises(UnknownName, match="hemisphere-70"):
        dessert_of(DOME, mould_id="hemisphere-71")
    assert dessert_of(DOME, mould_id="cap-80").mould.id == "cap-80"


def test_whose_spoons_comes_from_the_document_before_the_kitchen() -> None:
    text = dedent(DOME).replace("puree: 240 g", "puree: 10 tbsp")
    by_kitchen = dessert_of(text, measures="au").components[0].lines[0].mass
    of_document = dessert_of(text.replace("pieces: 6", "pieces: 6\nmeasures: uk"), measures="au")
    assert by_kitchen / of_document.components[0].lines[0].mass == pytest.approx(20.0 / 15.0)


def test_a_component_that_is_neither_placed_nor_used_is_said() -> None:
    spare = "  spare:\n    name: Spare\n    kind: glaze\n    formula: {water: 10 g}\nplacement:"
    sheet = sheet_of(DOME.replace("placement:", spare, 1))
    assert "spare" not in {component.id for component in sheet.components}
    assert any(text.startswith("Spare: it is neither placed") for text in sheet.assumptions)
