"""Questions with answers that do not depend on who asks, for the published page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.gelatine_swap import in_place_of
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.larder.ingredient import Ingredient
from entremetry.quantities import format_duration, format_mass
from entremetry.questions.keeping import FILLED, FINISHED, FREEZER, FRIDGE, Kept, waitings
from entremetry.questions.reckoned import Reckon
from entremetry.questions.without import without
from entremetry.words import say

STAND_INS = ("gelatine-powder-200", "gelatine-sheet-silver", "gelatine-sheet-gold")
"""What people have in the place of a gelatine; the first that is another one is told first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReaderQuestion:
    """A question of a reader with its answers, one sentence each."""

    question: str
    answers: tuple[str, ...]


def reader_questions(
    text: str,
    reckoning: Reckoning,
    reckon: Reckon,
    kitchen: KitchenDocument | None = None,
) -> tuple[ReaderQuestion, ...]:
    """Gelatine of another kind, what may be left out, how long it may wait; none without answers.

    `reckoning` is for the pieces and the mould that are published, `text` its document.
    """
    found = (
        ReaderQuestion(
            question=say("I have powder instead of sheets, or another gelatine"),
            answers=tuple(_gelatines(reckoning)),
        ),
        ReaderQuestion(
            question=say("Can I leave something out?"),
            answers=tuple(_left_out(text, reckoning.dessert, reckon, kitchen)),
        ),
        ReaderQuestion(
            question=say("How long can it wait?"),
            answers=tuple(_waits(reckoning.dessert)),
        ),
    )
    return tuple(each for each in found if each.answers)


def _gelatines(reckoning: Reckoning) -> Iterator[str]:
    pieces = reckoning.dessert.document.pieces
    factors = reckoning.requirements(pieces)
    for component in reckoning.dessert.components:
        for line in component.lines:
            if line.ingredient is not None and line.ingredient.bloom is not None:
                yield _equivalents(
                    component, line, line.ingredient, factors[component.id].factor, reckoning
                )


def _equivalents(
    component: Component, line: Line, old: Ingredient, factor: float, reckoning: Reckoning
) -> str:
    mass = line.mass * factor
    others = [
        reckoning.dessert.larder.find(name)
        for name in STAND_INS
        if name != old.id and name in reckoning.dessert.larder
    ]
    told = "; ".join(_one(mass, old, other) for other in others)
    return say(
        "{component}: for {mass} of {gelatine} take {others}.",
        component=component.name,
        mass=format_mass(mass),
        gelatine=old.name,
        others=told,
    )


def _one(mass: float, old: Ingredient, new: Ingredient) -> str:
    both = in_place_of(mass, old, new)
    linear, root = format_mass(both.linear), format_mass(both.square_root)
    if linear == root:
        return say("{mass} of {gelatine}", mass=linear, gelatine=new.name)
    return say(
        "{mass} of {gelatine} ({root} by gel strength)", mass=linear, gelatine=new.name, root=root
    )


def _left_out(
    text: str, dessert: Dessert, reckon: Reckon, kitchen: KitchenDocument | None
) -> Iterator[str]:
    for component in dessert.components:
        answer = without(text, component.id, reckon, kitchen)
        yield say("{component}: {answer}", component=component.name, answer=answer.says)


def _waits(dessert: Dessert) -> Iterator[str]:
    ids = {component.id for component in dessert.components}
    for part in waitings(dessert):
        if part.id not in ids and part.id not in (FILLED, FINISHED):
            continue
        told = [_place(kept) for kept in part.kept if kept.minutes and kept.where in WORDS]
        if told:
            yield say("{part}: {places}.", part=part.name, places=", ".join(told))


def _place(kept: Kept) -> str:
    return WORDS[kept.where](format_duration(60.0 * (kept.minutes or 0)))


def _frozen(time: str) -> str:
    return say("up to {time} in the freezer", time=time)


def _cold(time: str) -> str:
    return say("up to {time} in the fridge", time=time)


WORDS = {FREEZER: _frozen, FRIDGE: _cold}
