"""A plan as drawings and files: what other rooms write, asked for here alone."""

from __future__ import annotations

import json
from datetime import datetime
from typing import Any

from markupsafe import Markup

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask

WIDE, NARROW = 1120, 290


def drawings(agenda: Agenda, name: str) -> tuple[Markup, Markup]:
    """The days as a drawing, for wide and for narrow pages."""
    from entremetry.publish.agenda_drawing import timeline_svg

    title = f"Timeline: {name}"
    wide, narrow = (timeline_svg(agenda, width_px=width, title=title) for width in (WIDE, NARROW))
    return Markup(wide), Markup(narrow)


def calendar_file(agenda: Agenda, name: str, stamp: datetime) -> bytes:
    """The plan as an iCalendar file."""
    from entremetry.publish.agenda_calendar import calendar

    content: bytes = calendar(agenda, stamp=stamp, name=name)
    return content


def sheet_file(agenda: Agenda, name: str) -> str:
    """The plan on paper, a page for each session."""
    from entremetry.publish.agenda_sheet import day_sheet

    sheet: str = day_sheet(agenda, name=name)
    return sheet


def json_file(agenda: Agenda) -> str:
    """The plan as one JSON object."""
    return json.dumps(agenda_object(agenda), ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def agenda_object(agenda: Agenda) -> dict[str, Any]:
    """The plan as plain values; times carry their zone, durations are minutes."""
    return {
        "zone": agenda.zone,
        "begins": agenda.begins.isoformat(),
        "feasible": agenda.feasible,
        "proved_optimal": agenda.proved_optimal,
        "served": [
            {"dessert": each.dessert, "pieces": each.pieces, "at": each.at.isoformat()}
            for each in agenda.served
        ],
        "tasks": [task_object(task) for task in agenda.tasks],
        "sessions": [_session(session) for session in agenda.sessions],
        "goals": [
            {"name": goal.name, "text": goal.text, "proved": goal.proved} for goal in agenda.goals
        ],
        "conflicts": agenda.conflicts,
        "ways_out": [way.changes for way in agenda.ways_out],
        "changes": agenda.changes,
        "assumptions": agenda.assumptions,
        "cautions": agenda.cautions,
    }


def task_object(task: AgendaTask) -> dict[str, Any]:
    """One task as plain values."""
    return {
        "id": task.id,
        "dessert": task.dessert,
        "dessert_name": task.dessert_name,
        "component": task.component,
        "component_name": task.component_name,
        "kind": task.kind,
        "text": task.text,
        "start": task.start.isoformat(),
        "end": task.end.isoformat(),
        "hands": [
            {
                "person": hands.person,
                "start": hands.start.isoformat(),
                "end": hands.end.isoformat(),
            }
            for hands in task.hands
        ],
        "hands_on": task.hands_on,
        "waiting": task.waiting,
        "uses": task.uses,
        "amounts": task.amounts,
        "because": task.because,
        "round": task.round,
        "rounds": task.rounds,
        "together": task.together,
        "state": task.state,
        "moved": task.moved,
    }


def _session(session: AgendaSession) -> dict[str, Any]:
    return {
        "id": session.id,
        "person": session.person,
        "start": session.start.isoformat(),
        "end": session.end.isoformat(),
        "tasks": session.tasks,
        "hands_on": session.hands_on,
        "idle": session.idle,
    }
