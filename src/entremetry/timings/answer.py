"""The temperatures of one step, whatever its kind."""

from __future__ import annotations

from dataclasses import replace

from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.cooking import CoolTo, Fold, Heated
from entremetry.method.waiting import FreezeUntil, GlazeAt, ThawUntil
from entremetry.timings.boiling import boiling_answer
from entremetry.timings.bowl_cooling import cooling_answer
from entremetry.timings.freezer_load import freezer_load, load_facts
from entremetry.timings.freezing import freezing, freezing_insert
from entremetry.timings.glazing import glazing_answer
from entremetry.timings.mixing import mixing_answer
from entremetry.timings.piece_answer import piece_answer
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.timings.thawing import thawing
from entremetry.timings.timed_step import TimedStep, find_step


def answer(
    reckoning: Reckoning,
    step_id: str,
    kitchen: KitchenDocument | None,
    *,
    pictures: bool = False,
    load: bool = True,
) -> StepTemperatures:
    """How long the step takes, how sure that is, and the temperatures meanwhile.

    `load` asks for what all pieces together do to the freezer too, which costs as much again.

    Raises
    ------
    UnknownName
        With the nearest ids, if no step that can be timed has this one.
    QuantityError
        If the step's shape or quantity cannot be known from the document.
    """
    timed = find_step(reckoning.dessert, step_id)
    match timed.step:
        case CoolTo():
            return cooling_answer(reckoning, timed, kitchen)
        case GlazeAt():
            return glazing_answer(reckoning, timed, kitchen)
        case Fold():
            return mixing_answer(reckoning, timed, kitchen)
        case Heated():
            return boiling_answer(reckoning, timed)
    return _piece(reckoning, timed, kitchen, pictures=pictures, load=load)


def _piece(
    reckoning: Reckoning,
    timed: TimedStep,
    kitchen: KitchenDocument | None,
    *,
    pictures: bool,
    load: bool,
) -> StepTemperatures:
    """A piece or an insert that freezes or thaws, and what it does to the freezer if asked."""
    match timed.step:
        case FreezeUntil() as step if timed.component is not None:
            setting = freezing_insert(reckoning, timed.component, step, kitchen)
        case FreezeUntil() as step:
            setting = freezing(reckoning, step, kitchen)
        case ThawUntil() as step:
            setting = thawing(reckoning, step, kitchen)
    found = piece_answer(reckoning, timed, setting, pictures=pictures)
    if load and isinstance(timed.step, FreezeUntil) and found.time:
        pieces = reckoning.cavities(reckoning.dessert.document.pieces)
        loaded = freezer_load(setting, kitchen, pieces, found.time)
        return replace(found, facts=(*found.facts, *(load_facts(loaded, pieces) if loaded else ())))
    return found
