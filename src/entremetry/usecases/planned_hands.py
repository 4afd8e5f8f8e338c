"""Hands-on time of one dessert in a plan: its own tasks, and its share of those done together."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.errors import QuantityError, UnknownName
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedHands:
    """Minutes of hands that a plan has for so many pieces of a dessert."""

    minutes: float
    pieces: int


def planned_hands(text: str, dessert_id: str) -> PlannedHands:
    """Hands of a dessert in a plan, as `plan --json` prints it or as `plan --keep` writes it.

    Raises
    ------
    StoreError
        If the text is no plan.
    UnknownName
        If the plan does not serve the dessert.
    QuantityError
        If it is no plan but a reason why there is none.
    """
    agenda = _agenda(text)
    pieces = {each["dessert"]: int(each["pieces"]) for each in agenda["served"]}
    if dessert_id not in pieces:
        raise UnknownName("dessert of the plan", dessert_id, pieces)
    if not agenda["tasks"]:
        raise QuantityError(say("a plan without tasks"), say("a plan that can be done"))
    minutes = math.fsum(_share(task, dessert_id) for task in agenda["tasks"])
    return PlannedHands(minutes=minutes, pieces=pieces[dessert_id])


def served_in(text: str) -> frozenset[str]:
    """Ids of the desserts that a plan has tasks for."""
    return frozenset(task["dessert"] for task in _agenda(text)["tasks"])


def _share(task: Mapping[str, Any], dessert_id: str) -> float:
    """Minutes of a task for a dessert; steps done in one go share their hands evenly."""
    members = _members(task["id"], task["dessert"], task["together"])
    return float(task["hands_on_min"]) * members.count(dessert_id) / len(members)


def _members(task_id: str, dessert: str, together: Iterable[str]) -> list[str]:
    """The dessert of each step that a task stands for; a merged task is named after its first."""
    names = list(together)
    first = task_id.rpartition("+")[0]
    return [name.partition("/")[0] for name in names] if first in names else [dessert]


def _agenda(text: str) -> dict[str, Any]:
    from entremetry.publish.agenda_json import agenda_object
    from entremetry.usecases.plans import no_plan, planned_from

    try:
        data = json.loads(text)
    except ValueError as error:
        raise no_plan(error) from None
    if not isinstance(data, dict) or "agenda" in data:
        return agenda_object(planned_from(text).agenda)
    wanted = {
        "served": ("dessert", "pieces"),
        "tasks": ("id", "dessert", "hands_on_min", "together"),
    }
    for name, keys in wanted.items():
        rows = data.get(name)
        if not isinstance(rows, list) or not all(
            isinstance(row, dict) and all(key in row for key in keys) for row in rows
        ):
            raise no_plan(
                say(
                    "'{name}' is missing or has rows without {keys}",
                    name=name,
                    keys=", ".join(keys),
                )
            )
    return data
