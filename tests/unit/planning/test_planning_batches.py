"""Eighteen pieces and one tray of six make three rounds."""

from __future__ import annotations

import pytest

from entremetry.errors import ProblemError
from entremetry.planning import Batches, Delay, Goal, Need, Problem, Resource, Span, plan, repeated
from unit.planning.small_kitchen import DAY, QUICK, alone, task

ROUNDS = Batches(
    tasks=("fill", "out"), pieces=16, at_once=6, seconds_per_piece={"fill": 45, "out": 20}
)


def trays() -> Problem:
    """Mousse, filling, unmoulding and a final step, with one tray."""
    return alone(
        task("mousse", 20),
        task("fill", 2, 60, waiting_most=600),
        task("out", 1),
        task("serve"),
        delays=(
            Delay(before="mousse", after="fill"),
            Delay(before="fill", after="out", most=0),
            Delay(before="out", after="serve"),
        ),
        spans=(Span(id="tray", resource="tray", first="fill", last="out"),),
        resources=(Resource(id="tray", turnover=10),),
        end=2 * DAY,
    )


def test_the_last_round_takes_what_is_left() -> None:
    assert ROUNDS.sizes == (6, 6, 4)
    assert Batches(tasks=("a",), pieces=12, at_once=6).sizes == (6, 6)


def test_hands_on_time_follows_the_size_of_a_round() -> None:
    problem = repeated(trays(), ROUNDS)
    assert [problem.task(f"fill#{n}").hands_on for n in (1, 2, 3)] == [2 + 5, 2 + 5, 2 + 3]
    assert [problem.task(f"out#{n}").hands_on for n in (1, 2, 3)] == [1 + 2, 1 + 2, 1 + 2]


def test_the_tray_is_filled_frozen_emptied_washed_and_filled_again() -> None:
    problem = repeated(trays(), ROUNDS)
    result = plan(problem, goals=(Goal.FINISH,), limits=QUICK)
    assert result.plan is not None and result.proved_optimal
    rounds = sorted((result.plan.at(f"fill#{n}").start, n) for n in (1, 2, 3))
    for (_, one), (start, _) in zip(rounds, rounds[1:], strict=False):
        assert start >= result.plan.at(f"out#{one}").end + 10
    assert result.plan.at("serve").start >= max(result.plan.at(f"out#{n}").end for n in (1, 2, 3))
    assert result.goals[0].value == 20 + (7 + 60 + 3) * 2 + (5 + 60 + 3) + 2 * 10


@pytest.mark.parametrize(
    "batches",
    [
        Batches(tasks=("fill",), pieces=0, at_once=6),
        Batches(tasks=("fill",), pieces=6, at_once=0),
        Batches(tasks=(), pieces=6, at_once=6),
        Batches(tasks=("nothing",), pieces=6, at_once=6),
        Batches(tasks=("fill",), pieces=6, at_once=6, seconds_per_piece={"fill": -1}),
    ],
)
def test_rounds_of_nothing_are_refused(batches: Batches) -> None:
    with pytest.raises(ProblemError):
        repeated(trays(), batches)


def test_needs_are_repeated_too() -> None:
    needs = (Need(resource="oven"),)
    problem = alone(task("bake", 0, 20, needs=needs), resources=(Resource(id="oven"),))
    rounds = repeated(problem, Batches(tasks=("bake",), pieces=3, at_once=1))
    assert plan(rounds, goals=(Goal.FINISH,), limits=QUICK).goals[0].value == 60
