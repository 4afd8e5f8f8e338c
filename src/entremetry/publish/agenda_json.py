"""A plan as scripts and the bench read it: one JSON object."""

from __future__ import annotations

import json
from typing import Any

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Hands, Served, WayOut


def as_json(agenda: Agenda) -> str:
    """One JSON object; times as ISO 8601 with their offset, durations in min."""
    return json.dumps(agenda_object(agenda), ensure_ascii=False, indent=2, allow_nan=False)


def agenda_object(agenda: Agenda) -> dict[str, Any]:
    """A plan, or why there is none, as scripts read it."""
    return {
        "feasible": agenda.feasible,
        "proved_optimal": agenda.proved_optimal,
        "undecided": agenda.undecided,
        "cancelled": agenda.cancelled,
        "zone": agenda.zone,
        "begins": agenda.begins.isoformat(),
        "served": [_served(each) for each in agenda.served],
        "tasks": [task_object(task) for task in agenda.tasks],
        "sessions": [_session(session) for session in agenda.sessions],
        "goals": [
            {"name": goal.name, "text": goal.text, "proved": goal.proved} for goal in agenda.goals
        ],
        "changes": list(agenda.changes),
        "conflicts": [list(conflict) for conflict in agenda.conflicts],
        "ways_out": [_way_out(way) for way in agenda.ways_out],
        "assumptions": list(agenda.assumptions),
        "cautions": list(agenda.cautions),
    }


def task_object(task: AgendaTask) -> dict[str, Any]:
    """One task; `hands_on` and `hands_on_min` are the same number of minutes."""
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
        "hands_on": task.hands_on,
        "hands_on_min": task.hands_on,
        "waiting_min": task.waiting,
        "hands": [_hands(each) for each in task.hands],
        "uses": list(task.uses),
        "amounts": list(task.amounts),
        "because": task.because,
        "round": task.round,
        "rounds": task.rounds,
        "together": list(task.together),
        "state": task.state.value,
        "moved_min": task.moved,
    }


def _hands(hands: Hands) -> dict[str, Any]:
    return {
        "person": hands.person,
        "start": hands.start.isoformat(),
        "end": hands.end.isoformat(),
    }


def _session(session: AgendaSession) -> dict[str, Any]:
    return {
        "id": session.id,
        "person": session.person,
        "start": session.start.isoformat(),
        "end": session.end.isoformat(),
        "tasks": list(session.tasks),
        "hands_on_min": session.hands_on,
        "idle_min": session.idle,
    }


def _served(each: Served) -> dict[str, Any]:
    return {
        "dessert": each.dessert,
        "name": each.name,
        "pieces": each.pieces,
        "at": each.at.isoformat(),
    }


def _way_out(way: WayOut) -> dict[str, Any]:
    return {
        "changes": list(way.changes),
        "served": [_served(each) for each in way.served],
        "tasks": [task_object(task) for task in way.tasks],
        "sessions": [_session(session) for session in way.sessions],
    }
