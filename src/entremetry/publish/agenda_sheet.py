"""The day sheet: a plan on paper, a page for each session, in one file that needs nothing else."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.agenda import local_time
from entremetry.agenda.agenda import Agenda, AgendaSession
from entremetry.publish import agenda_wording
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
from entremetry.publish.agenda_drawing import agenda_svg
from entremetry.publish.recipe_page import accent, environment, stylesheet
from entremetry.words import current, say

WIDE, PAPER, NARROW = 900, 760, 290
"""Widths of the drawing on a screen, on paper and on a telephone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Go:
    """One go at the bench, and the wait that begins when hands leave it."""

    work: Work
    wait: Wait | None

    @property
    def day(self) -> str:
        """The day it begins on."""
        return local_time.day(self.work.start)


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionPage:
    """One session: what runs already when it begins, and its goes in order."""

    session: AgendaSession
    running: tuple[Wait, ...]
    goes: tuple[Go, ...]


def day_sheet(agenda: Agenda) -> str:
    """Whole sheet as HTML: the days drawn, then a page for each session with boxes to tick."""
    from markupsafe import Markup

    name = agenda_wording.menu(agenda)
    title = say("Plan for {menu}", menu=name)
    return (
        environment()
        .get_template("agenda_sheet.html")
        .render(
            agenda=agenda,
            title=title,
            pages=[session_page(agenda, session) for session in agenda.sessions],
            between=goes(agenda, outside(agenda)),
            accent=accent(name),
            style=Markup(stylesheet("recipe_page.css") + stylesheet("agenda_sheet.css")),
            wide=Markup(agenda_svg(agenda, title=title, width_px=WIDE)),
            paper=Markup(agenda_svg(agenda, title=title, width_px=PAPER, brief=True)),
            narrow=Markup(agenda_svg(agenda, title=title, width_px=NARROW)),
            say=say,
            words=agenda_wording,
            tag=current().tag,
        )
    )


def session_page(agenda: Agenda, session: AgendaSession) -> SessionPage:
    """What one page shows."""
    running = [each for each in meanwhile(session, waits(agenda)) if order(each) < order(session)]
    return SessionPage(
        session=session,
        running=tuple(running),
        goes=goes(agenda, within(session, works(agenda))),
    )


def goes(agenda: Agenda, there: tuple[Work, ...]) -> tuple[Go, ...]:
    """Goes at the bench with their waits."""
    every = waits(agenda)
    return tuple(Go(work=work, wait=next(iter(next_to(work, every)), None)) for work in there)
