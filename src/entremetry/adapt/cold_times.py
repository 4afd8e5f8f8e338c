"""Freezing, thawing and cooling times of an adapted document, computed, in its steps."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator

from entremetry.adapt.rebalanced import Change
from entremetry.adapt.written import rounded_up, time
from entremetry.dessert.reckoning import Reckoning
from entremetry.documents import Path, edited
from entremetry.errors import EntremetryError
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.cooking import CoolTo
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.quantities import format_duration, format_length
from entremetry.timings.answer import answer
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.timings.timed_step import TimedStep, timed_steps
from entremetry.words import decimal, say, say_later

FIVE = 300.0  # s
LONGER = 1.25  # times the written time, from which a bowl's cooling gets another one: our_own
Reckon = Callable[[str], Reckoning]
FOR_SO_LONG = {
    "freeze-until": say_later("freeze for {time}"),
    "thaw-until": say_later("thaw for {time}"),
    "cool-to": say_later("cool for {time}"),
}


def with_times(
    text: str,
    before: Reckoning,
    reckon: Reckon,
    kitchen: KitchenDocument | None,
    *,
    frozen: Collection[str],
    pieces: bool = True,
) -> tuple[str, tuple[Change, ...]]:
    """The text with the time of each step in the cold, and what was changed.

    `frozen` are components whose own freezing is another one now, `pieces` says whether that of
    the pieces is. A bowl's cooling gets another time where the amounts make it much longer.
    """
    changes: list[Change] = []
    reckoning = reckon(text)
    for timed in _concerned(reckoning, frozen, pieces):
        found = _time(reckoning, timed, before, kitchen)
        if found is None:
            continue
        seconds, because = found
        if timed.step.time == seconds:
            continue
        text = edited(text, (*_place(timed), "time"), time(seconds))
        changes.append(
            Change(
                component=timed.component.id if timed.component else "",
                line="",
                kind="time",
                text=say(FOR_SO_LONG[timed.step.step], time=decimal(time(seconds))),
                because=because,
            )
        )
    return text, tuple(changes)


def _concerned(reckoning: Reckoning, frozen: Collection[str], pieces: bool) -> Iterator[TimedStep]:
    for timed in timed_steps(reckoning.dessert):
        concerned = pieces if timed.component is None else timed.component.id in frozen
        if isinstance(timed.step, CoolTo) or (
            concerned and isinstance(timed.step, FreezeUntil | ThawUntil)
        ):
            yield timed


def _cooled(found: StepTemperatures) -> float | None:
    """Time for a bowl to cool to the nearest five minutes [s]; None if the written one will do."""
    if found.time is None or found.written_time is None:
        return None
    if found.time <= LONGER * found.written_time:
        return None
    return max(round(found.time / FIVE), 1) * FIVE


def _place(timed: TimedStep) -> Path:
    if timed.component is None:
        return ("assembly", timed.number - 1)
    return ("components", timed.component.id, "method", timed.number - 1)


def _time(
    reckoning: Reckoning, timed: TimedStep, before: Reckoning, kitchen: KitchenDocument | None
) -> tuple[float, str] | None:
    """Time of a step [s] and its reason; None if a bowl cools in the time it has."""
    cools = isinstance(timed.step, CoolTo)
    try:
        found = answer(reckoning, timed.id, kitchen, load=False)
    except EntremetryError as error:
        return None if cools else _scaled(reckoning, timed, before, str(error))
    if cools:
        seconds = _cooled(found)
        because = say("computed; {because}", because=found.because)
        return None if seconds is None else (seconds, because)
    if not found.time or found.high is None or found.low is None:
        return _scaled(reckoning, timed, before, found.reason or say("it is there already"))
    low, high = (format_duration(round(each / 60.0) * 60.0) for each in (found.low, found.high))
    best = format_duration(round(found.time / 60.0) * 60.0)
    because = say(
        "computed {best}, {low} to {high}; {because}; the upper end counts",
        best=best,
        low=low,
        high=high,
        because=found.because,
    )
    return rounded_up(found.high), because


def _scaled(
    reckoning: Reckoning, timed: TimedStep, before: Reckoning, why: str
) -> tuple[float, str]:
    """The time so far by the square of the height, which is the way that cold has to go."""
    was = [
        s.step.time
        for s in timed_steps(before.dessert)
        if s.kind == timed.kind and (s.component is None) == (timed.component is None)
    ]
    hours = next((t for t in was if t), timed.step.time or 0.0)
    heights = (before.placed.cavity.height, reckoning.placed.cavity.height)
    factor = max(1.0, (heights[1] / heights[0]) ** 2)
    return rounded_up(hours * factor), say(
        "not computed ({why}); scaled by the square of the height, {before} before and {now} now, "
        "never down",
        why=why,
        before=format_length(heights[0]),
        now=format_length(heights[1]),
    )
