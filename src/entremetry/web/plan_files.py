"""A plan as drawings and files: what other rooms write, asked for here alone."""

from __future__ import annotations

from datetime import datetime

from markupsafe import Markup

from entremetry.agenda.agenda import Agenda
from entremetry.publish.agenda_json import as_json
from entremetry.words import say

WIDE, NARROW = 1120, 290


def drawings(agenda: Agenda, name: str) -> tuple[Markup, Markup]:
    """The days as a drawing, for wide and for narrow pages."""
    from entremetry.publish.agenda_drawing import agenda_svg

    title = say("Timeline: {name}", name=name)
    wide, narrow = (
        agenda_svg(agenda, title=title, width_px=width, brief=True) for width in (WIDE, NARROW)
    )
    return Markup(wide), Markup(narrow)


def calendar_file(agenda: Agenda, stamp: datetime) -> bytes:
    """The plan as an iCalendar file."""
    from entremetry.publish.agenda_calendar import calendar

    return calendar(agenda, stamp=stamp)


def sheet_file(agenda: Agenda) -> str:
    """The plan on paper, a page for each session."""
    from entremetry.publish.agenda_sheet import day_sheet

    return day_sheet(agenda)


def json_file(agenda: Agenda) -> str:
    """The plan as one JSON object."""
    return as_json(agenda) + "\n"
