"""Limits of times alone give windows, and circles; counting finds what is too much."""

from __future__ import annotations

from dataclasses import replace

from entremetry.planning import Delay, FactKind, Person, Side
from entremetry.planning.closure import closure
from entremetry.planning.counting import count_conflict, thinned
from entremetry.planning.free_time import absences, outside, starts_in, with_overtime
from entremetry.planning.resource import Window
from unit.planning.small_kitchen import COOK, DAY, HOUR, SERVED, alone, dome, session, task


def test_windows_follow_the_longest_path() -> None:
    windows = closure(dome())
    assert windows.conflict is None
    assert windows.latest["serve", Side.END] == windows.earliest["serve", Side.END] == SERVED
    assert windows.latest["glaze", Side.END] == SERVED - 240
    assert windows.earliest["glaze", Side.END] == SERVED - 600 - 1
    assert windows.earliest["fill", Side.START] == 20 + 180 + 5


def test_a_longest_delay_that_is_too_short_makes_a_circle() -> None:
    delays = (Delay(before="a", after="b"), Delay(before="b", after="c"))
    short = Delay(before="a", after="c", least=None, most=9)
    problem = alone(task("a", 5), task("b", 10), task("c", 5), delays=(*delays, short))
    found = closure(problem).conflict
    assert found is not None and found.smallest
    assert {(fact.kind, fact.subjects) for fact in found.facts} == {
        (FactKind.AT_LEAST, ("a", "b")),
        (FactKind.LASTS, ("b",)),
        (FactKind.AT_LEAST, ("b", "c")),
        (FactKind.AT_MOST, ("a", "c")),
    }
    kept = replace(problem, delays=(*delays, replace(short, most=10)))
    assert closure(kept).conflict is None


def test_a_service_before_all_can_be_done_makes_a_circle() -> None:
    found = closure(alone(task("a", 0, 50, latest=40), end=DAY)).conflict
    assert found is not None
    assert {fact.kind for fact in found.facts} >= {FactKind.LATEST, FactKind.LASTS}


def test_as_much_work_as_there_are_hours_is_not_too_much() -> None:
    one_hour = (Person(id="cook", sessions=(session("one", 8, 9),)),)
    just = alone(task("a", 20), task("b", 40), people=one_hour)
    over = alone(task("a", 20), task("b", 41), people=one_hour)
    assert count_conflict(just, closure(just)) is None
    found = count_conflict(over, closure(over))
    assert found is not None and found.facts[0].subjects == ("b", "a")


def test_work_of_one_person_is_not_done_in_the_hours_of_another() -> None:
    people = (
        Person(id="ann", sessions=(session("one", 8, 9),)),
        Person(id="ben", sessions=(session("one", 8, 12),)),
    )
    problem = alone(task("a", 40, by=("ann",)), task("b", 40, by=("ann",)), people=people)
    found = count_conflict(problem, closure(problem))
    assert found is not None and found.facts[1].subjects == ("ann",)


def test_too_many_stretches_are_thinned_and_keep_their_ends() -> None:
    values = thinned(range(1000))
    assert len(values) <= 41 and values[0] == 0 and values[-1] == 999


def test_work_starts_so_that_it_ends_in_its_window() -> None:
    windows = [Window(start=0, end=30), Window(start=40, end=50)]
    assert starts_in(windows, 10) == [[0, 20], [40, 40]]
    assert starts_in(windows, 11) == [[0, 19]]
    assert outside([[0, 20], [40, 40]], -5, 60) == [[-5, -1], [21, 39], [41, 60]]


def test_absences_are_what_lies_between_windows() -> None:
    gaps = [(gap.start // HOUR, gap.end // HOUR) for gap in absences(COOK, 0, 48 * HOUR)]
    assert gaps == [(0, 17), (22, 33), (37, 41), (45, 48)]


def test_overtime_ends_where_the_next_session_begins() -> None:
    close = (session("one", 8, 10), session("two", 10, 12))
    assert with_overtime(close) == {"one": 0, "two": 60}
