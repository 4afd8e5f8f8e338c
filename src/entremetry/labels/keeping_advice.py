"""How to keep what was made, and for how long at most: a suggestion, never a promise."""

from __future__ import annotations

import math
from dataclasses import dataclass

from entremetry.agenda.keeping import keeps
from entremetry.dessert.dessert import Dessert
from entremetry.labels import english
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.quantities import format_duration
from entremetry.words import say

COLD_DAYS = 7
"""Days at 5 °C or below for what is ready to eat, the day of making counted: fda_food_code."""
ASSEMBLY_KIND = "garnish"  # what an assembled piece waits like where nothing is stated


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepingAdvice:
    """Sentences for a label, and why; `hours` is what the use-by suggestion counts."""

    storage: str
    use_by: str
    hours: float
    because: str
    sources: tuple[str, ...]


def days_left(days_before_freezing: int) -> int:
    """Days that are left once it is thawed: freezing stops the count, thawing lets it go on.

    `days_before_freezing` counts the day of making as the first.
    """
    return max(0, COLD_DAYS - days_before_freezing)


def keeping_advice(dessert: Dessert) -> KeepingAdvice:
    """What the method of a dessert says about keeping it, or what is usual."""
    steps = dessert.document.assembly
    thaws = [step for step in steps if isinstance(step, ThawUntil)]
    last = thaws[-1] if thaws else _last(dessert)
    frozen = any(isinstance(step, FreezeUntil) for step in steps)
    minutes = keeps(last, ASSEMBLY_KIND).minutes if last is not None else 24 * 60
    stated = last is not None and last.keeps is not None
    hours = max(1, math.floor(minutes / 60)) if stated else min(24, max(1, minutes // 60))
    time = format_duration(hours * 3600.0)
    if frozen:
        storage, use_by = english.KEEPING_FROZEN, english.EAT_AFTER_THAWING
    else:
        storage, use_by = english.KEEPING_COLD, english.EAT_AFTER_MAKING
    return KeepingAdvice(
        storage=say(storage),
        use_by=say(use_by, time=time),
        hours=float(hours),
        because=say("as the document says") if stated else say("usual, no source; state keeps"),
        sources=("common_practice",) if not stated else (),
    )


def _last(dessert: Dessert) -> AnyStep | None:
    """The last step that says how long it keeps; serving is the end."""
    stated = [step for step in dessert.document.assembly if step.keeps is not None]
    return stated[-1] if stated else None
