"""What cannot be planned as written is refused, with all faults at once."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from entremetry.errors import ProblemError
from entremetry.planning import (
    Delay,
    Merge,
    Need,
    Person,
    Problem,
    Resource,
    Service,
    Session,
    Span,
    Window,
)
from unit.planning.small_kitchen import DAY, SERVED, alone, dome, task


def person(*windows: tuple[int, int]) -> Person:
    """Somebody with one session of these windows."""
    listed = tuple(Window(start=start, end=end) for start, end in windows)
    return Person(id="cook", sessions=(Session(id="one", windows=listed),))


@pytest.mark.parametrize(
    ("words", "changes"),
    [
        ("horizon", {"end": 0}),
        ("2 tasks bear the id 'a'", {"tasks": (task("a"), task("a"))}),
        ("no id", {"tasks": (task(""),)}),
        ("lasts -5", {"tasks": (task("a", -5),)}),
        ("lasts 0 \\+ 20 to 10", {"tasks": (task("a", 0, 20, waiting_most=10),)}),
        ("negative weight", {"tasks": (task("a", freshness=-1),)}),
        ("nobody may do it", {"tasks": (task("a", 5),), "people": ()}),
        ("no person is called 'cok'; did you mean cook", {"tasks": (task("a", 5, by=("cok",)),)}),
        (
            "no resource is called 'ofen'",
            {"tasks": (task("a", 5, needs=(Need(resource="ofen"),)),)},
        ),
        ("needs 0 of 'oven'", {"tasks": (task("a", 5, needs=(Need(resource="oven", amount=0),)),)}),
        ("there are 1", {"tasks": (task("a", 5, needs=(Need(resource="oven", amount=2),)),)}),
        ("capacity 0", {"resources": (Resource(id="oven", capacity=0),)}),
        ("negative turnover", {"resources": (Resource(id="oven", turnover=-1),)}),
        ("30 to 20 is empty", {"people": (person((30, 20)),)}),
        ("not after the one before", {"people": (person((30, 50), (40, 60)),)}),
        ("no free minutes", {"people": (person(),)}),
        ("delay from 'a' to 'a': -3", {"delays": (Delay(before="a", after="a", least=-3),)}),
        ("10 to 5 minutes", {"delays": (Delay(before="a", after="a", least=10, most=5),)}),
        ("no task is called 'z'", {"delays": (Delay(before="a", after="z"),)}),
        ("no task is called 'z'", {"services": (Service(task="z", at=5),)}),
        ("lies outside", {"services": (Service(task="a", at=-5),)}),
        ("no task is called 'z'", {"spans": (Span(id="s", resource="oven", first="a", last="z"),)}),
        ("fewer than two", {"merges": (Merge(tasks=("a",), together=task("m")),)}),
    ],
)
def test_a_fault_is_named(words: str, changes: dict[str, Any]) -> None:
    sound = {"tasks": (task("a", 5),), "resources": (Resource(id="oven"),)}
    given = {**sound, **changes}
    tasks = given.pop("tasks")
    with pytest.raises(ProblemError, match=words):
        alone(*tasks, **given)


def test_all_faults_come_at_once() -> None:
    with pytest.raises(ProblemError) as caught:
        Problem(
            end=DAY,
            tasks=(task("a", -1), task("a", 0, -1)),
            resources=(Resource(id="x", capacity=0),),
            delays=(Delay(before="a", after="b"),),
        )
    assert len(caught.value.faults) >= 4
    assert str(caught.value).count("\n") == len(caught.value.faults) - 1


def test_a_service_in_the_past_is_refused() -> None:
    with pytest.raises(ProblemError, match="service"):
        replace(dome(), start=SERVED + 1, end=SERVED + DAY)
