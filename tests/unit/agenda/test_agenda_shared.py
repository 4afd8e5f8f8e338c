"""What several desserts share may be made in one go; what only looks alike may not."""

from __future__ import annotations

from entremetry.planning import Limits, Merge, plan, validate
from entremetry.usecases.plans import Course
from unit.agenda.menus import HOME, LAYERS, ONE_TRAY, SHORTBREAD, menu, swapped

TWIN = swapped(("id: shortbread", "id: twin"), text=SHORTBREAD)
TRAYS = HOME + "ovens: [{name: Oven, trays: 2}]\n"


def merges(*desserts: str | Course, kitchen: str = HOME) -> dict[str, Merge]:
    """What may be made in one go, by the first of its tasks."""
    return {merge.tasks[0]: merge for merge in menu(*desserts, kitchen=kitchen).problem.merges}


def test_an_oven_of_one_tray_bakes_two_doughs_one_after_the_other() -> None:
    assert set(merges(SHORTBREAD, TWIN)) == {"shortbread/dough-1"}


def test_the_same_dough_of_two_desserts_may_be_made_in_one_go() -> None:
    found = merges(SHORTBREAD, TWIN, kitchen=TRAYS)
    assert set(found) == {"shortbread/dough-1", "shortbread/dough-2"}
    assert found["shortbread/dough-1"].tasks == ("shortbread/dough-1", "twin/dough-1")


def test_the_same_dessert_twice_is_two_desserts() -> None:
    found = menu(SHORTBREAD, SHORTBREAD, SHORTBREAD)
    assert [d.key for d in found.dishes] == [
        "shortbread",
        "shortbread-again-1",
        "shortbread-again-2",
    ]
    assert len(found.problem.merges[0].tasks) == 3


def test_a_dessert_called_like_a_second_one_is_not_mistaken_for_it() -> None:
    named = swapped(("id: shortbread", "id: shortbread-again-1"), text=SHORTBREAD)
    keys = [dish.key for dish in menu(SHORTBREAD, named, SHORTBREAD).dishes]
    assert keys == ["shortbread", "shortbread-again-1", "shortbread-again-2"]


def test_a_dough_of_twice_the_batch_is_the_same_dough() -> None:
    larger = swapped(("100 g, butter-unsalted: 60 g", "200 g, butter-unsalted: 120 g"), text=TWIN)
    assert merges(SHORTBREAD, larger)


def test_another_formula_method_or_temperature_is_another_dough() -> None:
    for old, new in [("60 g}", "70 g}"), ("180 °C", "175 °C"), ("time: 20", "time: 25")]:
        assert merges(SHORTBREAD, swapped((old, new), text=TWIN)) == {}


def test_one_name_for_two_ingredients_of_the_authors_own_is_no_sameness() -> None:
    own = "ingredients:\n  nut: {like: %s, name: Nut, source: taken as it}\ncomponents:\n"
    line = ("plain-flour: 100 g", "nut: 100 g")

    def nutty(text: str, like: str) -> str:
        return swapped(line, ("components:\n", own % like), text=text)

    assert merges(nutty(SHORTBREAD, "plain-flour"), nutty(TWIN, "plain-flour"))
    assert merges(nutty(SHORTBREAD, "plain-flour"), nutty(TWIN, "hazelnut-ground")) == {}


def test_components_made_from_unlike_ones_are_unlike() -> None:
    other = swapped(("id: layers", "id: others"), ("whole-milk: 150 g", "whole-milk: 160 g"))
    shared = {merge.split("/")[1].split("-")[0] for merge in merges(LAYERS, other)}
    assert shared == {"crust", "glaze"}


def test_fixed_hands_count_once_and_those_by_the_piece_add_up() -> None:
    # 5 min for 6 pieces: 4 whatever the number, 10 s a piece; 4 + 18 · 10 s = 7
    twelve = Course(text=TWIN, pieces=12)
    together = merges(SHORTBREAD, twelve)["shortbread/dough-1"].together
    assert together.hands_on == 7


def test_a_bake_in_one_go_is_as_firm_as_each_and_takes_the_trays_of_both() -> None:
    together = merges(SHORTBREAD, TWIN, kitchen=TRAYS)["shortbread/dough-2"].together
    assert together.needs[0].amount == 2
    assert together.firm
    assert (together.waiting, together.waiting_most, together.closing) == (20, 21, 1)


def test_what_is_done_in_rounds_is_not_shared() -> None:
    twelve = Course(text=swapped(("id: layers", "id: others")), pieces=12)
    found = merges(LAYERS, twelve, kitchen=HOME + ONE_TRAY)
    assert "layers/crust-1" in found
    assert not [name for name in found if "mousse" in name]


def test_a_shared_step_stands_once_in_the_plan_with_the_amounts_of_both() -> None:
    found = menu(SHORTBREAD, TWIN)
    result = plan(found.problem, limits=Limits(seconds=10.0, workers=1))
    assert result.plan is not None
    assert validate(found.problem, result.plan) == ()
    words = dict(found.words)[found.problem.merges[0].together.id]
    assert words.together == ("shortbread/dough-1", "twin/dough-1")
    assert len(words.amounts) == 4
