"""Each step follows what its bowl, its lines and its components come from."""

from __future__ import annotations

import pytest

from entremetry.agenda.menu import Menu
from entremetry.errors import DocumentError
from unit.agenda.menus import LAYERS, SHORTBREAD, before, delays, menu, swapped, task

CUSTARD = """    method:
      - {step: cook-to, temperature: 82 °C, time: 8 min, hands_on: 8 min}
      - {step: strain, hands_on: 1 min}
"""


@pytest.fixture(scope="module")
def layers() -> Menu:
    """The layered dessert as it stands."""
    return menu(LAYERS)


def test_every_step_is_a_task_and_serving_ends_them(layers: Menu) -> None:
    steps = LAYERS.count("step:")
    assert len(layers.problem.tasks) == steps == len(layers.words)
    assert [s.task for s in layers.problem.services] == ["layers/assembly-7"]


def test_serving_is_added_where_a_document_leaves_it_out() -> None:
    unsaid = menu(swapped(("  - {step: serve}\n", "")))
    assert unsaid.problem.services[0].task == "layers/assembly-7"


def test_soaked_gelatine_joins_where_it_is_used(layers: Menu) -> None:
    assert before(layers, "mousse-3") == {"mousse-1", "mousse-2"}
    assert before(layers, "mousse-2") == {"custard-2"}


def test_a_bowl_of_its_own_joins_where_it_is_folded_in(layers: Menu) -> None:
    assert before(layers, "mousse-4") == set()
    assert before(layers, "mousse-5") == {"mousse-3", "mousse-4"}


def test_a_component_in_another_comes_in_where_its_line_does(layers: Menu) -> None:
    assert before(layers, "heart-1") == {"custard-2"}
    assert before(layers, "assembly-1") == {"heart-3", "mousse-5"}


def test_a_component_that_is_only_in_others_does_not_enter_the_assembly(layers: Menu) -> None:
    assert not [d for d in layers.problem.delays if "custard" in d.before and "assembly" in d.after]


def test_the_glaze_enters_at_the_glazing_and_a_base_under_the_piece_at_the_placing(
    layers: Menu,
) -> None:
    assert before(layers, "assembly-4") == {"assembly-3", "glaze-2"}
    assert before(layers, "assembly-5") == {"assembly-4", "crust-2"}


def test_a_base_inside_the_piece_enters_at_the_filling() -> None:
    inside = menu(swapped(("    sits: under\n", "")))
    assert "crust-2" in before(inside, "assembly-1")


def test_what_a_step_names_enters_there_first_of_all() -> None:
    named = menu(swapped(("{step: unmould,", "{step: unmould, what: [crust],")))
    assert "crust-2" in before(named, "assembly-3")


def test_a_garnish_enters_at_the_last_placing_that_names_nothing_else() -> None:
    garnish = (
        "placement:\n",
        "  nuts:\n    name: Nuts\n    kind: garnish\n    formula: {hazelnut-roasted: 12 g}\n"
        "    method: [{step: cut}]\nplacement:\n  - {component: nuts, as: garnish, mass: 2 g}\n",
    )
    placing = (
        "  - {step: place, hands_on: 5 min}\n",
        "  - {step: place, what: [crust]}\n  - {step: place}\n",
    )
    assert "nuts-1" in before(menu(swapped(garnish, placing)), "assembly-6")


def test_a_component_without_steps_is_simply_there() -> None:
    bought = menu(swapped((CUSTARD, "")))
    assert before(bought, "mousse-2") == before(bought, "heart-1") == set()


def test_a_dessert_without_assembly_is_served_when_its_parts_are_there() -> None:
    found = menu(SHORTBREAD.replace("assembly: [{step: serve}]\n", ""))
    assert before(found, "assembly-1") == {"dough-2"}


def test_a_dessert_without_any_step_is_only_served() -> None:
    text = SHORTBREAD.replace("{step: mix, hands_on: 5 min}", "X").replace(
        "    method:\n      - X\n      - {step: bake, at: 180 °C, time: 20 min, hands_on: 2 min}\n",
        "",
    )
    assert "method" not in text
    assert [each.id for each in menu(text).problem.tasks] == ["shortbread/assembly-1"]


def test_a_circle_of_components_is_refused() -> None:
    custard = ("whole-milk: 150 g,", "whole-milk: 150 g, heart: {component: heart, amount: 5 g},")
    with pytest.raises(DocumentError, match="a circle"):
        menu(swapped(custard))


def test_a_task_bears_the_id_of_its_step() -> None:
    named = menu(swapped(("{step: unmould,", "{step: unmould, id: turn-out,")))
    assert task(named, "turn-out").hands_on == 5
    assert delays(named, "turn-out", "assembly-4")


@pytest.mark.parametrize(
    "swaps",
    [
        (
            ("{step: unmould,", "{step: unmould, id: twice,"),
            ("{step: fill,", "{step: fill, id: twice,"),
        ),
        (("{step: unmould,", "{step: unmould, id: heart-1,"),),
        (("{step: unmould,", "{step: unmould, id: 'a#1',"),),
        (("{step: unmould,", "{step: unmould, id: '',"),),
        (("  heart:\n", "  assembly:\n"), ("component: heart", "component: assembly")),
    ],
)
def test_no_step_is_lost_to_another_of_the_same_id(swaps: tuple[tuple[str, str], ...]) -> None:
    found = menu(swapped(*swaps))
    assert len({each.id for each in found.problem.tasks}) == LAYERS.count("step:")


def test_words_tell_the_amounts_that_enter_at_each_step(layers: Menu) -> None:
    words = dict(layers.words)
    assert [text.split(" ", 2)[2] for text in words["layers/crust-1"].amounts] == [
        "Plain flour",
        "Unsalted butter 82 %",
        "Caster sugar",
    ]
    assert words["layers/crust-2"].amounts == ()
    assert words["layers/mousse-4"].component_name == "Mousse"
