"""The words on a drawing of a plan: a row for each moment worth naming, folded to a width."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Served, State
from entremetry.publish.agenda_days import Wait, Work, next_to, order
from entremetry.publish.agenda_wording import goes_on, lasting, pieces, verb
from entremetry.publish.agenda_wording import what as what_of
from entremetry.publish.temperature_marks import fold
from entremetry.publish.typography import NO_BREAK
from entremetry.words import say, say_count

LINE = 14.0
ROW_FOOT = 6.0
LETTER = 6.4
DONE = "✓ "

Lane = tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Words at a moment: what is done, to what, and what follows; `down` where rows share one."""

    at: datetime
    strong: str
    names: tuple[str, ...]
    details: tuple[str, ...]
    lanes: tuple[Lane, ...]
    down: float = 0.0

    @property
    def height(self) -> float:
        """Room that its lines take."""
        return LINE * (len(self.names) + len(self.details)) + ROW_FOOT


def lane_of(task: AgendaTask) -> Lane:
    """The lane of a task: what lies in one bowl, one oven or one freezer shares it."""
    return task.dessert, task.component


def all_rows(
    agenda: Agenda,
    todays: Sequence[Work],
    waiting: Sequence[Wait],
    served: Sequence[Served],
    bounds_: tuple[datetime, datetime],
    column: float,
) -> Iterator[Row]:
    """Words of each go, of each wait that begins or ends away from the bench, of each service."""
    for work in todays:
        yield row_of(work, waiting, column)
    for wait in waiting:
        if bounds_[0] <= wait.start and not wait.task.hands:
            yield made(
                wait.start, verb(wait.task), [wait.task], goes_on(wait.start, wait.end), column
            )
        if wait.end < bounds_[1] and not held(wait.end, agenda.sessions) and wait.then is None:
            yield made(wait.end, say("Ready"), [wait.task], "", column)
    for each in served:
        text, strong = f"{each.name}, {pieces(each.pieces)}", say("Served")
        yield Row(
            at=each.at,
            strong=strong,
            names=tuple(folded(strong, text, column)),
            details=(),
            lanes=(),
        )


def done_row(over: Sequence[AgendaTask]) -> Iterator[Row]:
    """How many steps of a day are over, where the first began."""
    if over:
        at = min((task.start for task in over), key=datetime.timestamp)
        count = say_count("{number} step", "{number} steps", len(over)).replace(" ", NO_BREAK)
        strong = DONE + say("Done")
        yield Row(at=at, strong=strong, names=(count,), details=(), lanes=())


def row_of(work: Work, waiting: Sequence[Wait], column: float) -> Row:
    """Words of one go: the step, what it is done to, how long, and the wait that follows."""
    strong = verb(work.task)
    if work.again:
        strong = say("Back to {step}", step=strong.lower())
    mark = DONE if all(task.state is State.DONE for task in work.tasks) else ""
    following = next_to(work, waiting)
    going = (say("then {lasting}", lasting=goes_on(w.start, w.end)) for w in following)
    told = [lasting(work.minutes), *going]
    if work.task.state is State.UNDER_WAY:
        told.insert(0, say("under way"))
    if work.task.moved and not work.again:
        told.append(moved(work.task.moved))
    return made(work.start, mark + strong, work.tasks, ", ".join(told), column)


def moved(minutes: int) -> str:
    """By how much a step stands elsewhere than it did."""
    if minutes > 0:
        return say("{time} later than before", time=lasting(minutes))
    return say("{time} earlier than before", time=lasting(-minutes))


def made(
    at: datetime, strong: str, tasks: Sequence[AgendaTask], details: str, column: float
) -> Row:
    """A row folded to a width."""
    name = " + ".join(dict.fromkeys(what_of(task) for task in tasks))
    return Row(
        at=at,
        strong=strong,
        names=tuple(folded(strong, name, column)),
        details=tuple(fold(details, column, 0.9 * LETTER)) if details else (),
        lanes=tuple(dict.fromkeys(map(lane_of, tasks))),
    )


def folded(strong: str, name: str, column: float) -> list[str]:
    """Lines of a name of which the first stands behind a strong word."""
    lines = fold(f"{'x' * len(strong)} {name}", column, LETTER)
    rest = lines[0][len(strong) :].strip()
    return [rest, *lines[1:]]


def held(moment: datetime, sessions: Sequence[AgendaSession]) -> bool:
    """Whether somebody is at the bench at a moment."""
    return any(order(each)[0] <= moment.timestamp() <= order(each)[1] for each in sessions)


def stacked(rows: Sequence[Row]) -> tuple[Row, ...]:
    """Rows in order of time, those of one moment one under the other."""
    placed: list[Row] = []
    for row in sorted(rows, key=lambda each: each.at.timestamp()):
        shared = [each for each in placed if each.at.timestamp() == row.at.timestamp()]
        placed.append(replace(row, down=sum(each.height for each in shared)))
    return tuple(placed)
