"""Work that is done in rounds: one tray of six, eighteen pieces, three rounds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from entremetry.errors import ProblemError
from entremetry.planning.problem import Problem
from entremetry.planning.task import Delay, Side, Span, Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Batches:
    """Tasks that are done once for each `at_once` of the pieces.

    `seconds_per_piece` gives the hands-on time that each piece adds to the first hands of a task.
    """

    tasks: tuple[str, ...]
    pieces: int
    at_once: int
    seconds_per_piece: Mapping[str, int] = field(default_factory=dict)

    @property
    def sizes(self) -> tuple[int, ...]:
        """Pieces of each round; the last may be smaller."""
        full, rest = divmod(self.pieces, self.at_once)
        return (self.at_once,) * full + ((rest,) if rest else ())


def round_id(task: str, number: int) -> str:
    """Return the id of a task in one of its rounds, counted from 1."""
    return f"{task}#{number}"


def repeated(problem: Problem, batches: Batches) -> Problem:
    """Return a problem in which some tasks are done in rounds.

    Delays and spans between these tasks hold within each round; those to and from other tasks
    hold for every round. Rounds of one size start in order.

    Raises
    ------
    ProblemError
        If there is nothing to do in rounds, or a task is unknown, merged or served.
    """
    require_rounds(problem, batches)
    inside = set(batches.tasks)
    numbers = range(1, len(batches.sizes) + 1)
    kept = [task for task in problem.tasks if task.id not in inside]
    copies = [
        sized(problem.task(name), number, batches) for number in numbers for name in batches.tasks
    ]
    return replace(
        problem,
        tasks=(*kept, *copies),
        delays=(
            *(one for delay in problem.delays for one in copied(delay, inside, numbers)),
            *in_order(batches),
        ),
        spans=tuple(one for span in problem.spans for one in spanned(span, inside, numbers)),
    )


def require_rounds(problem: Problem, batches: Batches) -> None:
    """Refuse rounds of nothing and of what cannot be repeated."""
    faults = []
    if batches.pieces < 1 or batches.at_once < 1 or not batches.tasks:
        faults.append(f"{batches.pieces} pieces, {batches.at_once} at once; accepted: 1 or more")
    single = {name for merge in problem.merges for name in merge.tasks}
    single |= {service.task for service in problem.services}
    known = {task.id for task in problem.tasks}
    for name in batches.tasks:
        if name not in known:
            faults.append(f"no task is called '{name}'")
        if name in single:
            faults.append(f"task '{name}' is merged or served, and cannot be done in rounds")
    if any(seconds < 0 for seconds in batches.seconds_per_piece.values()):
        faults.append("the seconds for a piece are negative")
    if faults:
        raise ProblemError(faults)


def sized(task: Task, number: int, batches: Batches) -> Task:
    """Return a task of one round, with the hands-on time of its pieces."""
    seconds = batches.sizes[number - 1] * batches.seconds_per_piece.get(task.id, 0)
    return replace(task, id=round_id(task.id, number), hands_on=task.hands_on + -(-seconds // 60))


def copied(delay: Delay, inside: set[str], numbers: range) -> Iterator[Delay]:
    """Yield a delay for each round that it touches."""
    if not {delay.before, delay.after} & inside:
        yield delay
        return
    for number in numbers:
        before = in_round(delay.before, inside, number)
        yield replace(delay, before=before, after=in_round(delay.after, inside, number))


def spanned(span: Span, inside: set[str], numbers: range) -> Iterator[Span]:
    """Yield a span for each round that it touches."""
    if not {span.first, span.last} & inside:
        yield span
        return
    for number in numbers:
        first, last = (in_round(name, inside, number) for name in (span.first, span.last))
        yield replace(span, id=round_id(span.id, number), first=first, last=last)


def in_round(task: str, inside: set[str], number: int) -> str:
    """Return the id of a task in a round, its own id if it is not repeated."""
    return round_id(task, number) if task in inside else task


def in_order(batches: Batches) -> Iterator[Delay]:
    """Yield the order of rounds of one size, which are alike; it costs no plan."""
    first = batches.tasks[0]
    for number, (size, following) in enumerate(
        zip(batches.sizes, batches.sizes[1:], strict=False), start=1
    ):
        if size == following:
            yield Delay(
                before=round_id(first, number),
                after=round_id(first, number + 1),
                leaving=Side.START,
                reaching=Side.START,
            )
