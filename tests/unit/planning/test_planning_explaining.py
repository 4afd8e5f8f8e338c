"""Where no plan exists, the fewest facts that conflict are named, and the nearest ways out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.planning import (
    Change,
    Delay,
    FactKind,
    Need,
    Person,
    Problem,
    Resource,
    Result,
    Service,
    Status,
    plan,
    told_change,
    told_conflict,
    validate,
)
from entremetry.planning.conflicts import conflict_core
from entremetry.planning.result import Goal
from unit.planning.small_kitchen import DAY, HOUR, QUICK, SERVED, alone, dome, session, task


def kinds(result: Result) -> set[FactKind]:
    """Kinds of the facts of the first conflict."""
    return {fact.kind for fact in result.conflicts[0].facts}


def advice(result: Result) -> list[str]:
    """What each way out asks for."""
    return ["; ".join(told_change(one) for one in way.changes) for way in result.alternatives]


def too_early() -> Problem:
    """The dome, served eight hours too early."""
    at = SERVED - 8 * HOUR
    return replace(dome(), end=at, services=(Service(task="serve", at=at),))


def test_steps_in_a_circle_are_named_and_nothing_else_is() -> None:
    problem = dome()
    back = Delay(before="glaze", after="mousse")
    result = plan(replace(problem, delays=(*problem.delays, back)), limits=QUICK)
    assert result.status is Status.IMPOSSIBLE and result.conflicts[0].smallest
    named = {name for fact in result.conflicts[0].facts for name in fact.subjects}
    assert named == {"mousse", "fill", "glaze"}


def test_too_much_work_is_counted_before_anything_is_solved() -> None:
    short = Person(id="cook", sessions=(session("one", 8, 9),))
    tasks = [task(f"t{number}", 25) for number in range(40)]
    problem = replace(alone(*tasks), people=(short,))
    result = plan(problem, limits=QUICK)
    assert kinds(result) == {FactKind.HANDS_WANTED, FactKind.HANDS_FREE, FactKind.HORIZON}
    wanted = result.conflicts[0].facts[0]
    assert (wanted.minutes, len(wanted.subjects)) == (75, 3)


def test_too_much_for_one_mould_is_counted() -> None:
    needs = (Need(resource="mould"),)
    tasks = [task(f"t{number}", 0, 10 * HOUR, needs=needs) for number in range(3)]
    problem = alone(*tasks, resources=(Resource(id="mould"),))
    result = plan(problem, limits=QUICK)
    assert kinds(result) & {FactKind.USE_WANTED, FactKind.CAPACITY}
    assert any("have 1 more of 'mould': 2" in text for text in advice(result))


def test_a_service_too_early_is_named_with_a_later_one() -> None:
    result = plan(too_early(), limits=QUICK)
    assert result.status is Status.IMPOSSIBLE and result.plan is None
    assert FactKind.SERVICE in kinds(result) or FactKind.ABSENCE in kinds(result)
    assert any(text.startswith("serve 'serve' at minute") for text in advice(result))


def test_without_any_one_fact_of_a_conflict_the_rest_can_hold() -> None:
    problem = too_early()
    core = conflict_core(problem, 5.0)
    assert core.smallest and len(core.facts) >= 2
    service = next(fact for fact in core.facts if fact.kind is FactKind.SERVICE)
    later = replace(problem, end=SERVED + DAY, services=(Service(task="serve", at=SERVED),))
    assert service.minutes == SERVED - 8 * HOUR
    assert plan(later, goals=(), limits=QUICK).feasible


def test_every_way_out_is_a_plan_that_the_validator_passes() -> None:
    result = plan(too_early(), limits=QUICK)
    assert result.alternatives
    for way in result.alternatives:
        assert way.changes and validate(way.problem, way.plan) == ()
        assert plan(way.problem, goals=(Goal.SESSIONS,), limits=QUICK).feasible


def test_a_session_that_could_be_opened_is_offered() -> None:
    people = (Person(id="cook", sessions=(session("thursday", 2, 6, offered=True),)),)
    problem = replace(alone(task("a", 30)), people=people)
    result = plan(problem, limits=QUICK)
    assert "let cook work between minute 120 and minute 360 too" in advice(result)


def test_what_is_firm_never_gives() -> None:
    firm = Delay(before="a", after="b", most=10, firm=True)
    least = Delay(before="a", after="b", least=30)
    result = plan(alone(task("a", 5), task("b", 5), delays=(firm, least)), limits=QUICK)
    assert result.status is Status.IMPOSSIBLE and result.alternatives == ()


def test_what_is_not_firm_gives_by_as_little_as_needed() -> None:
    loose = Delay(before="a", after="b", most=10)
    least = Delay(before="a", after="b", least=30)
    result = plan(alone(task("a", 5), task("b", 5), delays=(loose, least)), limits=QUICK)
    assert [change.by for change in result.alternatives[0].changes] == [20]


def test_ten_minutes_of_overtime_are_preferred_to_a_long_wait() -> None:
    """Unweighted, a long wait for whipped cream and ten minutes more would cost about the same."""
    sessions = (session("one", 8, 9), session("two", 20, 22))
    cream = Delay(before="whip", after="fold", most=5)
    problem = replace(
        alone(task("whip", 40), task("fold", 30, latest=10 * HOUR), delays=(cream,)),
        people=(Person(id="cook", sessions=sessions),),
    )
    result = plan(problem, limits=QUICK)
    assert advice(result)[0] == "let cook work 10 min longer, until minute 550"


def test_the_words_take_names_and_a_clock() -> None:
    result = plan(too_early(), limits=QUICK)
    texts = told_conflict(
        result.conflicts[0], name=str.upper, clock=lambda minute: f"{minute // 60}:{minute % 60:02}"
    )
    assert texts and all(text == text.strip() for text in texts)
    assert any("COOK has no free hands between" in text for text in texts)


@pytest.mark.parametrize("kind", FactKind)
def test_every_fact_and_every_change_has_words(kind: FactKind) -> None:
    from entremetry.planning import Conflict, Fact

    fact = Fact(
        kind=kind,
        subjects=("one", "two", "three"),
        minutes=1501,
        until=1600,
        sides=("end", "start"),
    )
    (text,) = told_conflict(Conflict(facts=(fact,)))
    assert text and told_change(Change(fact=fact, by=75))
