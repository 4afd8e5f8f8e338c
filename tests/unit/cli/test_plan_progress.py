"""Planning tells of itself, and Ctrl-C ends it with the best so far."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from pathlib import Path

import pytest

from entremetry.cli import plan_progress
from entremetry.planning import Goal, Limits, Progress

TESTS = Path(__file__).parents[2]
INTERRUPTED = """
import os, random, signal
from entremetry.cli import plan_progress
from entremetry.planning import Delay, Need, Person, Problem, Resource, plan
from unit.planning.small_kitchen import DAY, session, task

rung = []

def ring(progress):
    if not rung:
        rung.append(progress)
        os.kill(os.getpid(), signal.SIGINT)

plan_progress.tell = ring
draw = random.Random(1)
days = tuple(session(f"s{d}{h}", 24 * d + h, 24 * d + h + 5) for d in range(4) for h in (8, 14))
problem = Problem(
    end=3 * DAY + 19 * 60,
    people=(Person(id="cook", sessions=days),),
    resources=(Resource(id="mould", capacity=6), Resource(id="oven", capacity=4)),
    tasks=tuple(
        task(f"t{k}", draw.randint(5, 25), draw.randint(30, 300), waiting_most=3000, closing=3,
             needs=(Need(resource=draw.choice(["mould", "oven"])),), freshness=1)
        for k in range(40)
    ),
    delays=tuple(Delay(before=f"t{k}", after=f"t{k + 1}") for k in range(0, 38, 2)),
)
result = plan_progress.planned(lambda limits: plan(problem, limits=limits), seconds=30)
print(result.status.value, result.cancelled)
"""


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_ctrl_c_while_the_solver_runs_keeps_the_best_plan() -> None:
    done = subprocess.run(
        [sys.executable, "-c", INTERRUPTED],
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(TESTS), *sys.path])},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.stdout.split() == ["planned", "True"], done.stderr
    assert plan_progress.STOPPING in done.stderr and "Traceback" not in done.stderr


def test_the_answer_and_the_limits_go_through() -> None:
    def work(limits: Limits) -> tuple[float, bool]:
        return limits.seconds, limits.cancelled()

    assert plan_progress.planned(work, seconds=4.0) == (4.0, False)
    assert plan_progress.planned(work, seconds=None) == (Limits().seconds, False)


def test_a_refusal_comes_out_as_it_is() -> None:
    def refuse(limits: Limits) -> None:
        raise LookupError("no such thing")

    with pytest.raises(LookupError, match="no such thing"):
        plan_progress.planned(refuse, seconds=1.0)


def test_every_goal_is_said_in_words() -> None:
    reached = {goal: Progress(goal=goal, value=7, bound=5, seconds=1.0) for goal in Goal}
    said = {goal: plan_progress.said(progress) for goal, progress in reached.items()}
    assert said.pop(Goal.SESSIONS) == "Working sessions: 7 so far, 5 at least"
    assert said.pop(Goal.FRESHNESS) == "Freshness: being improved"
    assert said and all(words.endswith(": 7 min so far, 5 min at least") for words in said.values())


def test_a_goal_that_cannot_be_beaten_is_told_so() -> None:
    proved = Progress(goal=Goal.BENCH, value=65, bound=65, seconds=1.0)
    words = plan_progress.said(proved)
    assert words == "Time at the bench: 1 h 05 min, and no plan needs less"


@pytest.mark.parametrize(("stream", "whole"), [(io.StringIO, True), (Terminal, False)])
def test_a_terminal_has_one_changing_line_and_a_file_one_each(
    monkeypatch: pytest.MonkeyPatch, stream: type[io.StringIO], whole: bool
) -> None:
    err = stream()
    monkeypatch.setattr(sys, "stderr", err)
    for seconds in (1.0, 2.0):
        plan_progress.tell(Progress(goal=None, value=0, bound=0, seconds=seconds))
    assert err.getvalue().count("\n") == (2 if whole else 0)
    assert err.getvalue().count("\r") == (0 if whole else 2)
