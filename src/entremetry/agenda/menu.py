"""A menu as a problem of planning, with the words for each of its tasks."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from entremetry.agenda.words import TaskWords
from entremetry.planning import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Dish:
    """A dessert of a menu: which task serves it, and how many pieces."""

    key: str
    dessert: str
    name: str
    pieces: int
    serving: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """What a resource is called: counted, in a sentence about the plan, and as a place of work."""

    id: str
    name: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Menu:
    """Everything that a plan is made from, and made anew from: tasks by id with their words.

    `origin` is the moment of minute 0; `things` names resources and sessions in sentences.
    """

    zone: str
    origin: datetime
    dishes: tuple[Dish, ...]
    problem: Problem
    words: tuple[tuple[str, TaskWords], ...]
    things: tuple[Thing, ...]
    assumptions: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
