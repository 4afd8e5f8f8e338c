"""When to do what: a plan for a menu, kept, read again, and made anew when life intervenes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from functools import lru_cache
from itertools import chain, count
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from tzlocal import get_localzone_name

from entremetry.agenda.agenda import Agenda
from entremetry.agenda.composing import compose
from entremetry.agenda.course import Course as MenuCourse
from entremetry.agenda.equipment import Equipment, ovens_by_temperature
from entremetry.agenda.flows import Flows
from entremetry.agenda.life import (
    held_back,
    history,
    require_known,
    to_make_again,
    with_lengths,
    yielding,
)
from entremetry.agenda.local_time import Clock, elapsed, local_time, said
from entremetry.agenda.menu import Menu
from entremetry.agenda.menu_faults import require_whole
from entremetry.agenda.record import Record
from entremetry.agenda.telling import Teller, state_of
from entremetry.agenda.waits import Answers
from entremetry.errors import ProblemError, QuantityError, StoreError, UnknownName
from entremetry.kitchen.mould import Mould
from entremetry.planning import Limits, Plan, plan, replan
from entremetry.store.kernel_cache import require_fresh_kernels
from entremetry.timings.answer import answer
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.usecases.batch import Surroundings, reckoned_sheet, surroundings
from entremetry.usecases.language import in_language
from entremetry.words import ENGLISH, say

if TYPE_CHECKING:
    from pydantic import TypeAdapter

DAYS = 4
"""Days before the last service at which a plan may begin if nothing else is said."""
LONGEST = 60
"""Days that a plan may last."""
COURSES = 20
"""Desserts that one menu may have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One dessert of a menu: its document, and what differs from it or from the others.

    `pieces` replaces the number that the document states, `serve` the hour of all.
    """

    text: str
    file: str = "document"
    pieces: int | None = None
    serve: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """An agenda, with what it was made from and is made anew from."""

    agenda: Agenda
    menu: Menu
    plan: Plan | None
    language: str = ENGLISH.code


def plan_menu(
    courses: Sequence[Course],
    *,
    serve: str,
    kitchen_text: str | None,
    begin: str | None = None,
    now: datetime | None = None,
    limits: Limits | None = None,
    language: str = ENGLISH.code,
) -> Planned:
    """A plan for desserts that are served at an hour, in a kitchen, told in a language.

    `serve` and `begin` are local times such as '2026-11-28 19:00'. Without `begin` the plan may
    begin now, or some days before the service.

    Raises
    ------
    EntremetryError
        If a document, a time, the kitchen or the language is refused.
    """
    with in_language(language):
        menu = composed(
            courses,
            serve=serve,
            around=surroundings(kitchen_text, "kitchen"),
            begin=begin,
            now=now or datetime.now(UTC),
        )
        result = plan(menu.problem, limits=limits)
        agenda = Teller(menu=menu).agenda(result)
    return Planned(agenda=agenda, menu=menu, plan=result.plan, language=language)


def composed(
    courses: Sequence[Course],
    *,
    serve: str,
    around: Surroundings,
    begin: str | None,
    now: datetime,
) -> Menu:
    """The menu as a problem, before anything is solved."""
    if not 1 <= len(courses) <= COURSES:
        found = say("{number} desserts", number=len(courses))
        raise QuantityError(found, say("1 to {most} desserts for one plan", most=COURSES))
    zone = ZoneInfo((around.kitchen and around.kitchen.time_zone) or get_localzone_name())
    hours = [local_time(course.serve or serve, zone) for course in courses]
    clock = Clock(origin=_beginning(begin, hours, zone, now), zone=zone)
    require_fresh_kernels()
    sheets = [reckoned_sheet(c.text, c.file, around, pieces=c.pieces) for c in courses]
    keys = _keys([sheet.id for _, sheet in sheets])
    made = [
        MenuCourse(key=key, reckoning=reckoning, sheet=sheet, at=hour)
        for key, (reckoning, sheet), hour in zip(keys, sheets, hours, strict=True)
    ]
    steps = [step for course in made for c in course.components for step in c.steps]
    equipment = Equipment(kitchen=around.kitchen)
    equipment = replace(equipment, oven_of=ovens_by_temperature(steps, len(equipment.ovens)))
    flows = Flows(
        courses=tuple(made),
        equipment=equipment,
        moulds=_owned(around),
        answers=lambda course: _answers(course, around),
    )
    return compose(flows, clock)


def planned_anew(planned: Planned, record: Record, *, limits: Limits | None = None) -> Planned:
    """The plan for what is left after what has happened, near the plan before.

    Raises
    ------
    EntremetryError
        If there was no plan, or the record tells of what cannot be.
    """
    if planned.plan is None:
        raise QuantityError(say("a menu without a plan"), say("a plan that can be made anew"))
    require_known(planned.menu.problem, record)
    teller = Teller(menu=planned.menu)
    problem = with_lengths(yielding(planned.menu.problem), record.lasts)
    if record.not_before is not None:
        problem = held_back(problem, teller.clock.minute(record.not_before))
    past = history(record, teller.clock, failed=to_make_again(problem, record))
    result = replan(problem, planned.plan, past, limits=limits)
    with in_language(planned.language):
        agenda = teller.agenda(result, before=planned.plan, history=past)
    menu = replace(planned.menu, problem=problem)
    return replace(planned, agenda=agenda, menu=menu, plan=result.plan or planned.plan)


def agenda_with(planned: Planned, record: Record) -> Agenda:
    """The same plan, with what has become of each task."""
    past = history(record, Teller(menu=planned.menu).clock)
    return replace(
        planned.agenda,
        tasks=tuple(replace(t, state=state_of(t.id, past)) for t in planned.agenda.tasks),
    )


def planned_text(planned: Planned) -> str:
    """A plan as text that can be kept, and read again exactly."""
    return _adapter().dump_json(planned).decode()


def planned_from(text: str) -> Planned:
    """A plan that was kept.

    Raises
    ------
    StoreError
        If the text holds no such plan.
    """
    from pydantic import ValidationError

    try:
        planned = _adapter().validate_json(text)
        require_whole(planned.menu, planned.plan)
        with in_language(planned.language):
            return planned
    except ValidationError as error:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"])
        raise no_plan(f"{place or 'it'}: {first['msg']}") from None
    except (ProblemError, QuantityError, UnknownName) as error:
        raise no_plan(error) from None


def no_plan(problem: object) -> StoreError:
    """The refusal of a text that holds no plan."""
    return StoreError(say("this is no plan that was kept: {problem}", problem=problem))


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[Planned]:
    from pydantic import TypeAdapter

    return TypeAdapter(Planned)


def _beginning(
    begin: str | None, hours: Sequence[datetime], zone: ZoneInfo, now: datetime
) -> datetime:
    """The first minute of the plan.

    Raises
    ------
    QuantityError
        If something is served before it, or too long after.
    """
    this_minute = now.astimezone(UTC).replace(second=0, microsecond=0)
    last = max(hour.astimezone(UTC) for hour in hours)
    usual = max(this_minute, last - timedelta(days=DAYS)).astimezone(zone)
    first = usual if begin is None else local_time(begin, zone)
    for hour in hours:
        if elapsed(first, hour) <= timedelta(0):
            raise QuantityError(
                say(
                    "a service on {hour}, and the plan begins on {first}",
                    hour=said(hour),
                    first=said(first),
                ),
                say("an hour of service that is still to come"),
            )
    if elapsed(first, last) > timedelta(days=LONGEST):
        raise QuantityError(
            say(
                "a plan from {first} to {last}", first=f"{first:%Y-%m-%d}", last=f"{last:%Y-%m-%d}"
            ),
            say("{number} days at most; begin later", number=LONGEST),
        )
    return first


def _keys(desserts: Sequence[str]) -> list[str]:
    """A name for each course: the id of its dessert, numbered where it comes twice."""
    keys: list[str] = []
    for name in desserts:
        again = (f"{name}-again-{number}" for number in count(1))
        keys.append(next(key for key in chain([name], again) if key not in keys))
    return keys


def _owned(around: Surroundings) -> dict[str, Mould]:
    """The moulds that the kitchen lists as its own."""
    listed = {mould.id for mould in around.kitchen.moulds} if around.kitchen else set()
    return {name: mould for name, mould in around.moulds.items() if name in listed}


def _answers(course: MenuCourse, around: Surroundings) -> Answers:
    def temperatures_of(step: str) -> StepTemperatures:
        return answer(course.reckoning, step, around.kitchen, load=False)

    return temperatures_of
