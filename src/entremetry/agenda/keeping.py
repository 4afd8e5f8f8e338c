"""How long what a step leaves may wait for the step that takes it up."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from entremetry.method.step import AnyStep

DAY = 1440
COLD = 283.15  # K: what rests below this rests in the fridge
AFTER: dict[str, int] = {
    "weigh": 240,
    "soak": 60,
    "mix": 15,
    "melt": 10,
    "simmer": 5,
    "cook-to": 5,
    "cool-to": 10,
    "strain": 15,
    "whip": 10,
    "fold": 5,
    "roll": 30,
    "cut": 60,
    "bake": 30,
    "pour": 15,
    "fill": 10,
    "place": 30,
    "freeze-until": 14 * DAY,
    "unmould": 10,
    "glaze-at": 30,
    "thaw-until": DAY,
    "rest": 15,
    "hold": 0,
    "serve": 0,
}
"""Minutes until the next step of the same work; common practice, no source."""
RESTED_COLD = {"base": 2 * DAY, "glaze": 5 * DAY}
"""Minutes that a rest in the fridge may go on, by kind of component; a day for others."""
READY: dict[str, int] = {
    "mousse": 15,
    "insert": DAY,
    "base": 2 * DAY,
    "glaze": 10,
    "soak": 2 * DAY,
    "crumble": 5 * DAY,
    "garnish": DAY,
}
"""Minutes that a finished component may wait, by its kind; common practice, no source."""


BAKED = ("base", "crumble")
"""Kinds that are baked: cooled, they do not gel."""
NOT_TO_STOP = ("whip", "fold", "cool-to", "fill", "pour")
"""Steps after which the work must go on: what is whipped falls, what is cooled gels."""


WARM = 120
"""Minutes at most between two steps of what is hot, or has left the cold. It never gives.

The two hours of the `fda_food_code` for cooling from 57 to 21 °C; for what thaws at the bench,
where that code allows more, common practice.
"""


class Limit(StrEnum):
    """Why work may not stop for longer."""

    HABIT = "habit"  # may give if a plan needs it
    CRAFT = "craft"  # gives only where what is done cannot be undone
    SAFETY = "safety"  # never gives


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeps:
    """Minutes at most, and why not longer."""

    minutes: int
    limit: Limit = Limit.HABIT


READY_LIMIT = {"mousse": Limit.CRAFT, "glaze": Limit.CRAFT}


def keeps(step: AnyStep, kind: str) -> Keeps:
    """How long the work may stop after a step of a component of a kind (or of the assembly).

    What the document states with `keeps` goes before what is usual. What is thawed keeps a day,
    and that never gives.
    """
    limit = limit_after(step)
    if step.keeps is not None:
        return Keeps(minutes=math.floor(step.keeps / 60.0 + 1e-9), limit=limit)
    if step.step == "cool-to" and kind in BAKED:
        return Keeps(minutes=AFTER["weigh"])
    if step.step == "rest" and rests_cold(step):
        return Keeps(minutes=RESTED_COLD.get(kind, DAY))
    return Keeps(minutes=AFTER[step.step], limit=limit)


def limit_after(step: AnyStep) -> Limit:
    """Why the work may not stop for longer after a step."""
    if step.step == "thaw-until":
        return Limit.SAFETY
    return Limit.CRAFT if step.step in NOT_TO_STOP else Limit.HABIT


def keeps_ready(last: AnyStep | None, kind: str) -> Keeps:
    """How long a component may wait once it is finished.

    What freezes or rests in the fridge at the end waits there; a mousse in the fridge sets.
    """
    if last is not None and (last.keeps is not None or last.step == "freeze-until"):
        return keeps(last, kind)
    if last is not None and last.step == "rest" and rests_cold(last) and kind != "mousse":
        return keeps(last, kind)
    return Keeps(minutes=READY[kind], limit=READY_LIMIT.get(kind, Limit.HABIT))


def rests_cold(step: AnyStep) -> bool:
    """Whether a step rests in the fridge."""
    temperature = getattr(step, "temperature", None)
    return step.step in ("rest", "hold") and temperature is not None and temperature < COLD
