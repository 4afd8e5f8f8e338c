"""How long work may stop: as stated, else by what the step leaves; and how firm that is."""

from __future__ import annotations

import pytest

from entremetry.agenda.component_flow import link_after, not_warm_for_long
from entremetry.agenda.draft import Link
from entremetry.agenda.keeping import DAY, Keeps, Limit, keeps, keeps_ready
from unit.agenda.menus import LAYERS, delays, menu, step, swapped

CHILLED = step(step="rest", temperature="4 °C", time="12 h")


def test_what_is_stated_goes_before_what_is_usual() -> None:
    assert keeps(step(step="mix", keeps="90 s"), "mousse") == Keeps(minutes=1)


def test_what_is_thawed_keeps_a_day_and_that_never_gives() -> None:
    thawed = step(step="thaw-until", time="4 h")
    assert keeps(thawed, "") == Keeps(minutes=DAY, limit=Limit.SAFETY)


@pytest.mark.parametrize("kind", ["fill", "pour"])
def test_what_would_gel_or_fall_does_not_wait(kind: str) -> None:
    assert keeps(step(step=kind), "mousse").limit is Limit.CRAFT


def test_a_baked_sheet_that_has_cooled_does_not_gel() -> None:
    cooled = step(step="cool-to", temperature="25 °C")
    assert keeps(cooled, "base") == Keeps(minutes=240)
    assert keeps(cooled, "mousse").limit is Limit.CRAFT


def test_a_rest_in_the_fridge_may_go_on_longer_than_one_outside() -> None:
    assert keeps(CHILLED, "glaze").minutes == 5 * DAY
    assert keeps(step(step="rest", time="1 h"), "glaze").minutes == 15


def test_a_hold_in_the_fridge_is_over_when_it_is_over() -> None:
    assert keeps(step(step="hold", temperature="4 °C", time="3 h"), "").minutes == 0


def test_a_component_that_ends_in_the_cold_waits_there() -> None:
    assert keeps_ready(step(step="freeze-until", time="2 h"), "insert").minutes == 14 * DAY
    assert keeps_ready(CHILLED, "glaze").minutes == 5 * DAY


def test_a_mousse_sets_in_the_fridge_as_well() -> None:
    assert keeps_ready(CHILLED, "mousse") == Keeps(minutes=15, limit=Limit.CRAFT)


def test_within_is_a_limit_of_craft_at_least_and_rounds_down() -> None:
    glaze = step(step="glaze-at", temperature="32 °C", within="150 s")
    found = link_after("a", step(step="unmould"), "", glaze)
    assert found == Link(before="a", most=2, limit=Limit.CRAFT)


def test_within_does_not_soften_a_limit_of_safety() -> None:
    place = step(step="place", within="1 h")
    assert link_after("a", step(step="thaw-until", time="4 h"), "", place).limit is Limit.SAFETY


def test_what_is_hot_never_stands_for_more_than_two_hours() -> None:
    habit = Link(before="a", most=5)
    safe = Link(before="a", most=120, limit=Limit.SAFETY)
    assert list(not_warm_for_long(habit)) == [habit, safe]
    assert list(not_warm_for_long(Link(before="a", most=240))) == [safe]


def limits(before: str, after: str, *swaps: tuple[str, str]) -> list[tuple[int | None, bool, int]]:
    """Limits between two tasks: at most, firm, weight."""
    found = delays(menu(swapped(*swaps)), before, after)
    return [(delay.most, delay.firm, delay.weight) for delay in found]


def test_habit_may_give_and_safety_may_not() -> None:
    assert limits("custard-1", "custard-2") == [(5, False, 4), (120, True, 400)]


def test_what_states_how_long_it_keeps_may_stand_hot() -> None:
    syrup = ("time: 6 min, hands_on: 2 min", "time: 6 min, hands_on: 2 min, keeps: 5 h")
    assert limits("glaze-1", "glaze-2", syrup) == [(300, False, 4)]


def test_the_limit_of_hot_things_ends_where_they_are_cooled() -> None:
    cooled = (
        "      - {step: strain, hands_on: 1 min}\n",
        "      - {step: cool-to, temperature: 20 °C, time: 9 min}\n      - {step: strain}\n"
        "      - {step: strain}\n",
    )
    assert limits("custard-1", "custard-2", cooled) == [(5, False, 4), (120, True, 400)]
    assert limits("custard-3", "custard-4", cooled) == [(15, False, 4)]


def test_glazed_pieces_go_into_the_cold_within_two_hours_whatever_gives() -> None:
    assert limits("assembly-4", "assembly-5") == [(30, False, 4), (120, True, 400)]
    assert limits("assembly-5", "assembly-6") == [(30, False, 4), (120, True, 400)]


def test_what_is_unmoulded_goes_back_into_the_freezer() -> None:
    assert "within: 3 min" in LAYERS
    assert limits("assembly-3", "assembly-4", ("within: 3 min, ", "")) == [(10, False, 4)]
    assert limits("assembly-3", "assembly-4") == [(3, True, 40)]


def test_a_custard_that_may_be_set_aside_hot_is_cautioned() -> None:
    hot = "Custard is hot when it is finished"
    assert [text for text in menu(LAYERS).cautions if text.startswith(hot)]
    chilled = (
        "{step: strain, hands_on: 1 min}\n",
        "{step: strain}\n      - {step: rest, temperature: 4 °C, time: 2 h}\n",
    )
    assert menu(swapped(chilled)).cautions == ()
