"""How long a base lies against what is moist before it is eaten."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.checks.bench import Bench
from entremetry.method.shaping import Fill, Place
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil

SERVING = 600.0  # s on the table


def contact_time(bench: Bench, component: str) -> tuple[float, str] | None:
    """Seconds from where it is put in until it is eaten, frozen time left out, and what they are.

    None if no step tells when it meets the rest.
    """
    steps = bench.assembly
    start = _put_in(steps, component)
    if start is None:
        return None
    waits = [step.time or 0.0 for step in steps[start + 1 :] if not isinstance(step, FreezeUntil)]
    return sum(waits) + SERVING, "thawing, holding and the table"


def _put_in(steps: Sequence[AnyStep], component: str) -> int | None:
    """Number of the step that puts it in: the one that names it, else where the mould is filled."""
    for number, step in enumerate(steps):
        if isinstance(step, Place) and component in step.what:
            return number
    return next((n for n, step in enumerate(steps) if isinstance(step, Fill)), None)
