"""The validator finds every law that a plan can break, one by one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.planning import (
    Delay,
    Done,
    History,
    Merge,
    Need,
    Part,
    Person,
    Placed,
    Plan,
    Problem,
    Resource,
    Service,
    Stretch,
    Violation,
    Window,
    validate,
)
from entremetry.planning.resource import Session
from unit.planning.small_kitchen import task

PROBLEM = Problem(
    end=1000,
    people=(
        Person(id="ann", sessions=(Session(id="s", windows=(Window(start=0, end=300),)),)),
        Person(id="ben", sessions=(Session(id="s", windows=(Window(start=0, end=300),)),)),
    ),
    resources=(Resource(id="oven", changeover=10, capacity=2), Resource(id="bowl", turnover=5)),
    tasks=(
        task("a", 10, 50, closing=5, by=("ann",), needs=(Need(resource="bowl"),)),
        task("b", 20, needs=(Need(resource="bowl"),), earliest=50, latest=280),
        task("c", 0, 30, needs=(Need(resource="oven", state="150"),)),
        task("d", 0, 30, needs=(Need(resource="oven", state="180"),)),
        task("serve"),
    ),
    delays=(Delay(before="a", after="b", least=5, most=60),),
    services=(Service(task="serve", at=500),),
)


def hands(person: str, part: Part, start: int, end: int) -> Stretch:
    """A stretch of somebody's hands."""
    return Stretch(person=person, part=part, start=start, end=end)


A = Placed(
    task="a",
    start=0,
    end=65,
    hands=(hands("ann", Part.OPENING, 0, 10), hands("ann", Part.CLOSING, 60, 65)),
)
B = Placed(task="b", start=70, end=90, hands=(hands("ann", Part.OPENING, 70, 90),))
C = Placed(task="c", start=0, end=30)
D = Placed(task="d", start=40, end=70)
SERVE = Placed(task="serve", start=500, end=500)
SOUND = (A, B, C, D, SERVE)


def broken(*placed: Placed, problem: Problem = PROBLEM) -> set[str]:
    """Laws that the plan breaks, with some tasks placed elsewhere."""
    changed = {one.task: one for one in placed}
    plan = Plan(placed=tuple(changed.get(one.task, one) for one in SOUND))
    return {violation.law.partition(" (")[0] for violation in validate(problem, plan)}


def moved(placed: Placed, by: int) -> Placed:
    """The same task, later."""
    shifted = tuple(replace(one, start=one.start + by, end=one.end + by) for one in placed.hands)
    return replace(placed, start=placed.start + by, end=placed.end + by, hands=shifted)


def test_a_sound_plan_breaks_nothing() -> None:
    assert broken() == set()


@pytest.mark.parametrize(
    ("law", "placed"),
    [
        ("a task lasts as long as it takes", replace(C, end=31)),
        ("nothing starts too early", moved(C, -5)),
        ("nothing ends too late", moved(B, 200)),
        ("every delay is kept", moved(B, -2)),
        ("every delay is kept", moved(B, 60)),
        ("the service is met", moved(SERVE, 1)),
        ("hands do every hands-on minute", replace(B, hands=())),
        ("hands work in free time only", moved(B, 230)),
        ("only those who may do a task do it", replace(A, hands=tuple(
            replace(one, person="ben") for one in A.hands))),
        ("one thing at a time", moved(B, -8)),
        ("no more is used than there is", moved(B, -1)),
        ("one state at a time", moved(D, -1)),
    ],
)  # fmt: skip
def test_each_law_is_looked_after(law: str, placed: Placed) -> None:
    assert law in broken(placed)


def test_a_task_that_is_missing_or_unknown_is_found() -> None:
    laws = {v.law for v in validate(PROBLEM, Plan(placed=(*SOUND[1:], replace(C, task="x"))))}
    assert laws == {"every task is placed once", "every placed task is in the problem"}


def test_merged_tasks_have_to_stand_together() -> None:
    merged = replace(PROBLEM, merges=(Merge(tasks=("c", "d"), together=task("cd", 0, 40)),))
    together = Placed(task="cd", start=100, end=140)
    inside = [replace(together, task=name, within="cd") for name in ("c", "d")]
    good = Plan(placed=(A, B, *inside, together, SERVE))
    bad = Plan(placed=(A, B, inside[0], replace(inside[1], start=101), together, SERVE))
    assert validate(merged, good) == ()
    assert {violation.law for violation in validate(merged, bad)} == {"merged tasks are one"}


def test_the_past_has_to_stay_as_it_was() -> None:
    later = Plan(placed=(replace(A, hands=()), *SOUND[1:]))
    past = History(now=69, done=(Done(task="a", start=0, end=65),))
    found = validate(PROBLEM, later, past)
    assert {v.law for v in found} == {"nothing new starts in the past"}
    assert {v.subjects for v in found} == {("c",), ("d",)}
    other = History(now=69, done=(Done(task="a", start=0, end=66),))
    wrong = Violation(law="the past stays as it was", subjects=("a",))
    assert wrong in validate(PROBLEM, later, other)


def test_the_validator_shares_no_code_with_the_model() -> None:
    import ast
    from pathlib import Path

    from entremetry.planning import validating

    folder = Path(validating.__file__).parent
    imported = {
        node.module.rpartition(".")[2]
        for name in ("validating.py", "validating_uses.py", "violation.py")
        for node in ast.walk(ast.parse((folder / name).read_text(encoding="utf-8")))
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("entremetry")
    }
    assert imported == {"history", "plan", "problem", "task", "validating_uses", "violation"}
