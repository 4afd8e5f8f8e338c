"""How long each step goes on by itself: computed from physics, else stated, else as is usual."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from entremetry.agenda.keeping import rests_cold
from entremetry.errors import EntremetryError
from entremetry.method.cooking import CoolTo, Heated
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, Hold, ThawUntil
from entremetry.quantities import format_duration
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.words import say

Answers = Callable[[str], StepTemperatures]
"""Temperatures of a step by its id."""

WITHIN_HANDS = (Heated, CoolTo)
"""Steps whose hands lie within their time: one stands at the pan."""
USUAL = {
    "soak": 10.0,
    "bake": 15.0,
    "rest": 30.0,
    "cool-to": 20.0,
    "freeze-until": 360.0,
    "thaw-until": 240.0,
}
"""Minutes where nothing is stated and nothing can be computed: common practice, no source."""
HELD = {True: 1440, False: 120}
"""Minutes that something is held if nothing is stated, by whether it is in the fridge."""
ROUNDED = 5
"""Long waits are planned to five minutes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """Minutes that a step takes from its start to its end without counting hands, and why.

    `most` is how long it may last, if it may last longer; `caution` tells what is not as it should.
    """

    minutes: int
    because: str = ""
    most: int | None = None
    caution: str = ""


def wait(step: AnyStep, *, hands: float, step_id: str | None, answers: Answers) -> Wait:
    """How long a step goes on by itself, after its hands.

    `step_id` names the step if physics can time it. Of a freezing or thawing time the upper end
    is planned, so that it is over for sure; of a cooling time the best estimate.
    """
    if isinstance(step, Hold):
        return _held(step)
    if (
        step_id is not None
        and getattr(step, "temperature", None) is not None
        and isinstance(step, CoolTo | FreezeUntil | ThawUntil)
    ):
        return _computed(step, hands, step_id, answers)
    return _stated(step, hands)


def _held(step: Hold) -> Wait:
    """A step that ends when it is wanted."""
    if step.time is not None:
        return Wait(
            minutes=0, most=_minutes(step.time), because=say("as long as the document lets it")
        )
    return Wait(
        minutes=0,
        most=HELD[rests_cold(step)],
        because=say("held as long as is usual, no source; state its time"),
    )


def _computed(step: AnyStep, hands: float, step_id: str, answers: Answers) -> Wait:
    try:
        found = answers(step_id)
    except EntremetryError as error:
        stated = _stated(step, hands)
        return Wait(
            minutes=stated.minutes,
            because=say("{because}, since {error}", because=stated.because, error=error),
        )
    if found.time is None:
        stated = _stated(step, hands)
        return Wait(
            minutes=stated.minutes,
            because=stated.because,
            caution=say(
                "{step}: {reason}; planned with {because}",
                step=found.name,
                reason=found.reason,
                because=stated.because,
            ),
        )
    if isinstance(step, CoolTo):
        because = say("computed: about {time}", time=format_duration(found.time))
        return Wait(minutes=_rest(found.time / 60.0, hands), because=because)
    sure = found.time if found.high is None else found.high
    minutes = math.ceil(sure / 60.0 / ROUNDED) * ROUNDED
    because = (
        say(
            "computed: about {time}, at most {longest}; the longer is planned, and it depends "
            "mostly on {cause}",
            time=format_duration(found.time),
            longest=format_duration(sure),
            cause=found.mostly,
        )
        if found.mostly
        else say("computed: {time}", time=format_duration(sure))
    )
    return Wait(minutes=minutes, because=because)


def _stated(step: AnyStep, hands: float) -> Wait:
    if step.time is not None:
        minutes, because = step.time / 60.0, say("the time that the document states")
    elif step.step in USUAL:
        minutes, because = USUAL[step.step], say("a time as is usual, no source")
    else:
        return Wait(minutes=0)
    if isinstance(step, WITHIN_HANDS):
        return Wait(minutes=_rest(minutes, hands), because=because)
    return Wait(minutes=math.ceil(minutes - 1e-9), because=because)


def _rest(minutes: float, hands: float) -> int:
    """What is left of a time of which the hands are a part."""
    return max(0, math.ceil(minutes - 1e-9) - math.ceil(hands - 1e-9))


def _minutes(time: float) -> int:
    return math.floor(time / 60.0 + 1e-9)
