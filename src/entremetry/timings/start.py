"""How warm each component is when the piece is put together."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.method.cooking import CoolTo, Heated, Simmer
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, Rest
from entremetry.words import say

BOILING = 373.15  # K; what simmers and states nothing else
HELD_AT = 293.15  # K; what has no temperature in its method is taken to be at that of the room


def ready_temperature(steps: Sequence[AnyStep], room: float = HELD_AT) -> tuple[float, str]:
    """Temperature of a component when its method is done [K], and where it was read off.

    The last step that states one counts; what was baked or states none is at the room's.
    """
    for step in reversed(steps):
        if isinstance(step, FreezeUntil) and step.temperature is not None:
            return step.temperature, say("frozen before")
        if isinstance(step, CoolTo):
            return step.temperature, say("as it was cooled")
        if isinstance(step, Rest) and step.temperature is not None:
            return step.temperature, say("as it rested")
        if isinstance(step, Bake):
            return room, say("baked and cooled to the room")
        if isinstance(step, Heated) and step.temperature is not None:
            return step.temperature, say("as it was heated")
    return room, say("at the room's temperature")


def stated_temperature(steps: Sequence[AnyStep]) -> float | None:
    """Temperature that the last step with one leaves behind [K]; None if no step states one."""
    for step in reversed(steps):
        temperature = getattr(step, "temperature", None)
        if temperature is not None:
            return float(temperature)
        if isinstance(step, Simmer):
            return BOILING
    return None
