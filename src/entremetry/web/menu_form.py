"""What a plan is asked for: which desserts, how many pieces, at which hour."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from entremetry.store import StoredDocument
from entremetry.web.forms import Form
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.usecases.plans import Course

SATURDAY = 5
HOUR = 19
MOST_PIECES = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Menu:
    """What was asked, and what is wrong with it by the name of the field."""

    courses: tuple[Course, ...]
    serve: str
    begin: str | None
    faults: Mapping[str, str]


def usual_hour(now: datetime) -> str:
    """Seven in the evening of the next Saturday, in a form's words."""
    days = (SATURDAY - now.weekday() - 1) % 7 + 1
    served = (now + timedelta(days=days)).replace(hour=HOUR, minute=0)
    return f"{served:%Y-%m-%dT%H:%M}"


def menu(form: Form, desserts: tuple[StoredDocument, ...]) -> Menu:
    """Read the form; every fault is told at once."""
    from entremetry.usecases.plans import Course

    chosen = tuple(each for each in desserts if form.text(f"chosen:{each.id}"))
    faults = _faults(form, chosen)
    courses = tuple(
        Course(
            text=each.text,
            file=each.id,
            pieces=form.whole_number(f"pieces:{each.id}"),
            serve=form.line(f"serve:{each.id}") or None,
        )
        for each in chosen
    )
    begin = form.line("begin") or None
    return Menu(courses=courses, serve=form.line("serve"), begin=begin, faults=faults)


def _faults(form: Form, chosen: tuple[StoredDocument, ...]) -> dict[str, str]:
    faults = {} if chosen else {"desserts": say("Choose at least one dessert.")}
    for each in chosen:
        name = f"pieces:{each.id}"
        pieces = form.whole_number(name)
        if form.line(name) and not (pieces and pieces <= MOST_PIECES):
            faults[name] = say(
                "Found '{found}'; a whole number from 1.", found=form.line(name)[:40]
            )
    hours = ["serve", "begin", *(f"serve:{each.id}" for each in chosen)]
    for name in hours:
        said = form.line(name)
        if (said or name == "serve") and moment(said) is None:
            faults[name] = _no_moment(said)
    faults |= _too_late(form, [name for name in hours if name != "begin" and name not in faults])
    return faults


def _too_late(form: Form, hours: list[str]) -> dict[str, str]:
    begin = moment(form.line("begin"))
    if begin is None:
        return {}
    served = [found for name in hours if (found := moment(form.line(name))) is not None]
    late = any(hour <= begin for hour in served)
    return {"begin": say("Work would begin after the hour of service.")} if late else {}


def _no_moment(found: str) -> str:
    if not found:
        return say("Say when: a day and an hour, such as 2026-11-28 19:00.")
    return say("Found '{found}'; a day and an hour, such as 2026-11-28 19:00.", found=found[:40])


def moment(text: str) -> datetime | None:
    """A local day and hour, or None."""
    try:
        found = datetime.fromisoformat(text.replace(" ", "T"))
    except ValueError:
        return None
    return found if found.tzinfo is None and len(text) >= len("2026-11-28T19:00") else None
