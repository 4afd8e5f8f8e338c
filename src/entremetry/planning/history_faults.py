"""What is wrong with a history before anybody plans on from it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from entremetry.errors import ProblemError, did_you_mean, nearest_names
from entremetry.planning.history import History
from entremetry.planning.problem import Problem


def require_possible(problem: Problem, history: History) -> None:
    """Refuse a history that cannot have happened.

    Raises
    ------
    ProblemError
        With all faults at once.
    """
    faults = tuple(every_fault(problem, history))
    if faults:
        raise ProblemError(faults)


def every_fault(problem: Problem, history: History) -> Iterator[str]:
    """Yield tasks that are unknown or told of twice, and times that are not past."""
    known = [task.id for task in problem.all_tasks]
    for name, count in Counter(history.told).items():
        if name not in known:
            yield f"no task is called '{name}'{did_you_mean(nearest_names(name, known))}"
        if count > 1:
            yield f"history tells of task '{name}' {count} times"
    for done in history.done:
        if not done.start <= done.end <= history.now:
            yield (
                f"task '{done.task}' is done from minute {done.start} to {done.end}, "
                f"and it is minute {history.now}"
            )
    for running in history.running:
        if running.start > history.now:
            yield f"task '{running.task}' runs since minute {running.start}, which is to come"
    people = [person.id for person in problem.people]
    for running in history.running:
        if running.person and running.person not in people:
            nearest = did_you_mean(nearest_names(running.person, people))
            yield f"no person is called '{running.person}'{nearest}"
