"""A plan as text for a terminal: by day and session, by the clock."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from entremetry.agenda.agenda import Agenda, AgendaSession, State, WayOut
from entremetry.agenda.local_time import clock, day, minutes_between
from entremetry.cli.listing import listed
from entremetry.publish.agenda_days import (
    Wait,
    Work,
    meanwhile,
    next_to,
    order,
    outside,
    waits,
    within,
    works,
)
from entremetry.publish.agenda_wording import effort, goes_on, lasting, served, span, title
from entremetry.publish.typography import MINUS, NO_BREAK

USUAL_WIDTH = 88
HOURS, MINUTES = 7, 10
MARKS = {State.TO_COME: "", State.UNDER_WAY: " (under way)", State.DONE: " (done)"}


def as_text(agenda: Agenda, *, width: int = USUAL_WIDTH) -> str:
    """The plan for a terminal of this width, with the signs of a keyboard."""
    text = "\n".join(_lines(agenda, width))
    return text.replace(NO_BREAK, " ").replace(MINUS, "-")


def refusal_text(agenda: Agenda) -> str:
    """Why there is no plan, and what would help."""
    return "\n".join(_refusal(agenda)).replace(NO_BREAK, " ")


def _lines(agenda: Agenda, width: int) -> Iterator[str]:
    for each in agenda.served:
        yield f"Served: {served(each)}"
    yield from listed("What had to give", agenda.changes)
    every_work, every_wait = works(agenda), waits(agenda)
    blocks = [(order(s), _session_lines(s, every_work, every_wait, width)) for s in agenda.sessions]
    blocks += [(order(w), _moment_lines(w, every_wait, width)) for w in outside(agenda)]
    for _, block in sorted(blocks, key=lambda each: each[0]):
        yield ""
        yield from block
    yield from listed(
        "How good this plan is", [f"{goal.name}: {goal.text}" for goal in agenda.goals]
    )
    yield from listed("Take care", agenda.cautions)
    yield from listed("Taken for granted", agenda.assumptions)


def _session_lines(
    session: AgendaSession, every_work: Sequence[Work], every_wait: Sequence[Wait], width: int
) -> list[str]:
    lines = [f"{day(session.start)}, {span(session)} ({effort(session)})"]
    running = [w for w in meanwhile(session, every_wait) if order(w) < order(session)]
    for wait in running:
        told = f"~ {title(wait.task)}: {goes_on(wait.start, wait.end)}"
        lines += _folded(told, HOURS + MINUTES, width)
    for work in within(session, every_work):
        lines += _work_lines(work, every_wait, width)
    return lines


def _moment_lines(work: Work, every_wait: Sequence[Wait], width: int) -> list[str]:
    return [f"{day(work.start)}, between the sessions", *_work_lines(work, every_wait, width)]


def _work_lines(work: Work, every_wait: Sequence[Wait], width: int) -> list[str]:
    """Clock, minutes, step and place; its amounts and the wait that follows indented under it."""
    margin = HOURS + MINUTES
    again = "back to " if work.again else ""
    head = f"{again}{title(*work.tasks)}{MARKS[work.task.state]}"
    first, *rest = _folded(head, margin, width)
    lead = f"  {clock(work.start)}"
    lines = [f"{lead:<{HOURS + 1}}{lasting(work.minutes):>{MINUTES - 2}} {first.strip()}", *rest]
    for task in () if work.again else work.tasks:
        place = f" [{', '.join(task.uses)}]" if task.uses else ""
        lines += _folded(f"{task.text}{place}", margin + 2, width)
        lines += _folded("; ".join(task.amounts), margin + 2, width) if task.amounts else []
    for wait in next_to(work, every_wait):
        lines += _folded(f"~ then {goes_on(wait.start, wait.end)}", margin + 2, width)
    return lines


def _folded(text: str, indent: int, width: int) -> list[str]:
    space = " " * indent
    lines = textwrap.wrap(
        text, max(width, indent + 24), initial_indent=space, subsequent_indent=space
    )
    return lines or [space]


def _refusal(agenda: Agenda) -> Iterator[str]:
    if agenda.undecided:
        why = "it was stopped" if agenda.cancelled else "the time ran out"
        yield f"No plan was found, and no proof that there is none: {why}."
        yield "Allow more time with --seconds, or begin earlier."
        return
    if agenda.tasks:
        yield "No plan keeps everything: this one comes nearest, and names what had to give."
        return
    yield "There is no plan that serves this in time."
    for conflict in agenda.conflicts:
        yield "These cannot all hold:"
        yield from (f"  - {fact}" for fact in conflict)
    if agenda.ways_out:
        yield "What would help, each by itself:"
    for way in agenda.ways_out:
        yield f"  - {'; '.join(way.changes)}{_first_hands(way)}"


def _first_hands(way: WayOut) -> str:
    """When a way out would begin, and how many sessions it takes."""
    if not way.sessions:
        return ""
    first = min(way.sessions, key=order)
    work = sum(minutes_between(each.start, each.end) for each in way.sessions)
    count = f"{len(way.sessions)} session{'' if len(way.sessions) == 1 else 's'}"
    return (
        f" ({count}, {lasting(work)} at the bench, from {day(first.start)}, {clock(first.start)})"
    )
