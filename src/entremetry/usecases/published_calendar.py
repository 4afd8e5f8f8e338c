"""A calendar beside a publication: the days before the hour of service."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.documents import edited
from entremetry.errors import ProblemError
from entremetry.planning import Limits
from entremetry.store.files import read_text
from entremetry.usecases.plans import Course, plan_menu
from entremetry.usecases.publication_files import file_name
from entremetry.words import current, say, say_later

SECONDS = 10.0  # that a plan for a publication is looked for


def calendar_files(
    text: str, sheet: BatchSheet, serve: str, *, kitchen: Path | None, mould: str | None
) -> dict[str, bytes]:
    """The plan of one dessert for a calendar program, in the spoken language.

    Raises
    ------
    EntremetryError
        If the hour or the kitchen is refused, or there is no plan for that hour.
    """
    from entremetry.publish.agenda_calendar import calendar

    kitchen_text = (
        None if kitchen is None else read_text(kitchen, what=say_later("kitchen document"))
    )
    chosen = text if mould is None else edited(text, ("mould",), mould)
    agenda = plan_menu(
        [Course(text=chosen, file=sheet.id, pieces=sheet.pieces)],
        serve=serve,
        kitchen_text=kitchen_text,
        limits=Limits(seconds=SECONDS),
        language=current().code,
    ).agenda
    if not agenda.feasible:
        reasons = [fact for conflict in agenda.conflicts[:1] for fact in conflict]
        told = "; ".join(reasons) or say("none was found in the time there was")
        raise ProblemError(
            [
                say(
                    "no plan to serve at {hour}: {reasons}. Ask 'plan' for ways out.",
                    hour=serve,
                    reasons=told,
                )
            ]
        )
    return {file_name(sheet, ".ics"): calendar(agenda, stamp=datetime.now(UTC))}
