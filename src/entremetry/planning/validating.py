"""Checks a plan against its problem, minute by minute where it matters, without any solver.

Written apart from the model and sharing no code with it: what the model forgets, this finds.
"""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.planning.history import History
from entremetry.planning.plan import Placed, Plan
from entremetry.planning.problem import Problem
from entremetry.planning.task import Delay, Side, Task
from entremetry.planning.validating_uses import capacity_violations
from entremetry.planning.violation import Violation


def validate(problem: Problem, plan: Plan, history: History | None = None) -> tuple[Violation, ...]:
    """Return everything in a plan that breaks a fact of its problem; nothing, if it is sound.

    What history tells of is held against history only.
    """
    missing = tuple(completeness(problem, plan))
    if missing:
        return missing
    found = [
        *task_violations(problem, plan, history),
        *delay_violations(problem, plan, history),
        *service_violations(problem, plan, history),
        *merge_violations(problem, plan, history),
        *hours_violations(problem, plan, history),
        *one_thing_violations(plan, history),
        *capacity_violations(problem, plan, history),
        *past_violations(plan, history),
    ]
    return tuple(found)


def completeness(problem: Problem, plan: Plan) -> Iterator[Violation]:
    """Yield tasks that are not placed exactly once."""
    names = [placed.task for placed in plan.placed]
    for task in problem.tasks:
        if names.count(task.id) != 1:
            yield Violation(law="every task is placed once", subjects=(task.id,))
    together = {merge.together.id for merge in problem.merges}
    for name in {*names} - {task.id for task in problem.tasks} - together:
        yield Violation(law="every placed task is in the problem", subjects=(name,))


def is_past(history: History | None, task: str, side: Side) -> bool:
    """Tell whether one end of a task has happened."""
    if history is None:
        return False
    if any(one.task == task for one in history.done):
        return True
    return side is Side.START and any(one.task == task for one in history.running)


def told(history: History | None, placed: Placed, side: Side) -> bool:
    """Tell whether one end of a task, or of the merged task that does it, has happened."""
    return is_past(history, placed.within or placed.task, side)


def definition(problem: Problem, name: str) -> Task:
    """Return the task with an id, merged ones included."""
    everything = {task.id: task for task in problem.tasks}
    everything |= {merge.together.id: merge.together for merge in problem.merges}
    return everything[name]


def task_violations(problem: Problem, plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield lengths, earliest starts, latest ends and horizons that are not kept."""
    for placed in plan.placed:
        task = definition(problem, placed.task)
        begun, ended = told(history, placed, Side.START), told(history, placed, Side.END)
        if not begun and not placed.within:
            wait = placed.end - placed.start - task.hands_on - task.closing
            longest = task.waiting if task.waiting_most is None else task.waiting_most
            if not task.waiting <= wait <= longest:
                yield Violation(law="a task lasts as long as it takes", subjects=(task.id,))
        if not begun and placed.start < max(problem.start, task.earliest or problem.start):
            yield Violation(law="nothing starts too early", subjects=(task.id,))
        last = problem.end if task.latest is None else min(problem.end, task.latest)
        if history is not None and task.latest is None:
            last = max(last, history.now)
        if not ended and placed.end > last:
            yield Violation(law="nothing ends too late", subjects=(task.id,))


def delay_violations(problem: Problem, plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield delays that are too short or too long."""
    by_name = {placed.task: placed for placed in plan.placed}
    for delay in problem.delays:
        sooner, later = by_name[delay.before], by_name[delay.after]
        if told(history, sooner, delay.leaving) and told(history, later, delay.reaching):
            continue
        if not kept(delay, sooner, later):
            yield Violation(law="every delay is kept", subjects=(delay.before, delay.after))


def kept(delay: Delay, sooner: Placed, later: Placed) -> bool:
    """Tell whether the time between two ends lies within its limits."""
    left = sooner.start if delay.leaving is Side.START else sooner.end
    reached = later.start if delay.reaching is Side.START else later.end
    between = reached - left
    if delay.least is not None and between < delay.least:
        return False
    return delay.most is None or between <= delay.most


def service_violations(
    problem: Problem, plan: Plan, history: History | None
) -> Iterator[Violation]:
    """Yield services that are not met to the minute."""
    by_name = {placed.task: placed for placed in plan.placed}
    for service in problem.services:
        placed = by_name[service.task]
        if not told(history, placed, Side.END) and placed.end != service.at:
            yield Violation(law="the service is met", subjects=(service.task,))


def merge_violations(problem: Problem, plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield merged tasks that do not stand where the one task for them stands."""
    by_name = {placed.task: placed for placed in plan.placed}
    for merge in problem.merges:
        together = by_name.get(merge.together.id)
        for name in merge.tasks:
            one = by_name[name]
            within = together.task if together else ""
            apart = together and (one.start, one.end) != (together.start, together.end)
            if one.within != within or apart or (within and one.hands):
                yield Violation(law="merged tasks are one", subjects=(name,))


def hours_violations(problem: Problem, plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield hands that are missing, of the wrong length, or outside somebody's free time."""
    people = {person.id: person for person in problem.people}
    for placed in plan.placed:
        task = definition(problem, placed.task)
        if sorted((h.start, h.end) for h in placed.hands) != wanted(placed, task, history):
            yield Violation(law="hands do every hands-on minute", subjects=(task.id,))
        for hands in placed.hands:
            windows = [
                w
                for session in people[hands.person].sessions
                if not session.offered
                for w in session.windows
            ]
            if task.by and hands.person not in task.by:
                yield Violation(law="only those who may do a task do it", subjects=(task.id,))
            if not any(w.start <= hands.start and hands.end <= w.end for w in windows):
                yield Violation(law="hands work in free time only", subjects=(task.id,))


def wanted(placed: Placed, task: Task, history: History | None) -> list[tuple[int, int]]:
    """Stretches of hands that a placed task has to have."""
    stretches: list[tuple[int, int]] = []
    if placed.within:
        return stretches
    if task.hands_on and not told(history, placed, Side.START):
        stretches.append((placed.start, placed.start + task.hands_on))
    if task.closing and not told(history, placed, Side.END):
        stretches.append((placed.end - task.closing, placed.end))
    return sorted(stretches)


def one_thing_violations(plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield people who would need more than two hands."""
    stretches = sorted(
        (hands.person, hands.start, hands.end, placed.task)
        for placed in plan.placed
        for hands in placed.hands
    )
    for before, after in zip(stretches, stretches[1:], strict=False):
        if before[0] == after[0] and after[1] < before[2]:
            subjects = (before[0], before[3], after[3])
            yield Violation(law="one thing at a time", subjects=subjects)


def past_violations(plan: Plan, history: History | None) -> Iterator[Violation]:
    """Yield a past that is not as it was, and new work that would be in it."""
    if history is None:
        return
    by_name = {placed.task: placed for placed in plan.placed}
    for done in history.done:
        at = by_name[done.task]
        if (at.start, at.end) != (done.start, done.end):
            yield Violation(law="the past stays as it was", subjects=(done.task,))
    for running in history.running:
        at = by_name[running.task]
        if at.start != running.start or at.end < history.now:
            yield Violation(law="the past stays as it was", subjects=(running.task,))
    for placed in plan.placed:
        if not told(history, placed, Side.START) and placed.start < history.now:
            yield Violation(law="nothing new starts in the past", subjects=(placed.task,))
