"""How long a base lies against what is moist before it is eaten."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.checks.bench import Bench
from entremetry.method.shaping import Fill, Place
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.words import say

SERVING = 600.0  # s on the table
STILL_FROZEN = 0.5  # of the thawing time, after which the foot has thawed: our_own


def contact_time(bench: Bench, component: str) -> tuple[float, str] | None:
    """Seconds in which water can move into it until it is eaten, and what they are.

    None if no step tells when it meets the rest.
    """
    steps = bench.assembly
    start = _put_in(steps, component)
    if start is None:
        return None
    waits = sum(_wet_time(step) for step in steps[start + 1 :])
    return waits + SERVING, say("half of thawing, with holding and the table")


def _wet_time(step: AnyStep) -> float:
    """Time of a step in which water can move: none in the freezer, half of it while it thaws."""
    if isinstance(step, FreezeUntil):
        return 0.0
    return (step.time or 0.0) * (STILL_FROZEN if isinstance(step, ThawUntil) else 1.0)


def _put_in(steps: Sequence[AnyStep], component: str) -> int | None:
    """Number of the step that puts it in: the one that names it, else where the mould is filled."""
    for number, step in enumerate(steps):
        if isinstance(step, Place) and component in step.what:
            return number
    return next((n for n, step in enumerate(steps) if isinstance(step, Fill)), None)
