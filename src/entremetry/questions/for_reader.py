"""Questions with answers that do not depend on who asks, for the published page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import reduce

from entremetry.agenda.keeping import Limit
from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.gelatine_swap import agent, in_place_of
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.physics.gels import Gel
from entremetry.questions import said
from entremetry.questions.answer import Reply
from entremetry.questions.keeping import FILLED, FINISHED, TABLE, Kept, waitings
from entremetry.questions.reckoned import Reckon
from entremetry.questions.without import without
from entremetry.words import say

HOUR = 60
STAND_INS = ("gelatine-powder-200", "gelatine-sheet-silver", "gelatine-sheet-gold")
"""What people have in the place of a gelatine."""


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
    """What sets each component, and what others of its kind would weigh."""
    factors = reckoning.requirements(reckoning.dessert.document.pieces)
    for component in reckoning.dessert.components:
        factor = factors[component.id].factor
        for line in component.lines:
            if line.ingredient is None:
                continue
            if line.ingredient.bloom is not None:
                others = _stand_ins(line.ingredient, reckoning.dessert)
                if others:
                    yield _equivalents(component, line.mass * factor, line.ingredient, others)
            elif (gel := agent(line.ingredient)) is not None:
                water = reckoning.makings[component.id].mix.constituents.water
                yield _dosed(component, line.mass * factor, line.ingredient, gel, line.mass / water)


def _stand_ins(old: Ingredient, dessert: Dessert) -> list[Ingredient]:
    names = [name for name in STAND_INS if name != old.id and name in dessert.larder]
    return [dessert.larder.find(name) for name in names]


def _equivalents(
    component: Component, mass: float, old: Ingredient, others: list[Ingredient]
) -> str:
    told = reduce(
        lambda first, other: say("{first}, or {other}", first=first, other=other),
        (_one(mass, old, other) for other in others),
    )
    return say(
        "{component}: for {mass} of {gelatine} take {others}.",
        component=component.name,
        mass=said.mass(mass),
        gelatine=ingredient_name(old),
        others=told,
    )


def _dosed(component: Component, mass: float, new: Ingredient, gel: Gel, share: float) -> str:
    return say(
        "{component}: {mass} of {agent} are {share} of its water, where {low} to {high} are "
        "usual; gelatine takes its place only with another method.",
        component=component.name,
        mass=said.mass(mass),
        agent=ingredient_name(new),
        share=said.share(share),
        low=said.share(gel.dose.low),
        high=said.share(gel.dose.high),
    )


def _one(mass: float, old: Ingredient, new: Ingredient) -> str:
    both = in_place_of(mass, old, new)
    linear, root = said.mass(both.linear), said.mass(both.square_root)
    if linear == root:
        return say("{mass} of {gelatine}", mass=linear, gelatine=ingredient_name(new))
    return say(
        "{mass} of {gelatine} ({root} by gel strength)",
        mass=linear,
        gelatine=ingredient_name(new),
        root=root,
    )


def _left_out(
    text: str, dessert: Dessert, reckon: Reckon, kitchen: KitchenDocument | None
) -> Iterator[str]:
    for component in dessert.components:
        answer = without(text, component.id, reckon, kitchen)
        facts = " ".join(_sentence(fact.text) for fact in answer.facts)
        if answer.reply is Reply.YES:
            yield say("{component}: yes. {facts}", component=component.name, facts=facts)
        elif answer.facts:
            yield f"{component.name}: {answer.says} {facts}"
        else:
            yield answer.says


def _sentence(text: str) -> str:
    return text if text.endswith(".") else f"{text}."


def _waits(dessert: Dessert) -> Iterator[str]:
    ids = {component.id for component in dessert.components}
    for part in waitings(dessert):
        if part.id not in ids and part.id not in (FILLED, FINISHED):
            continue
        long = [kept for kept in part.kept if _keeps_long(kept)]
        told = [_place(kept) for kept in (long or part.kept[-1:]) if kept.minutes]
        if told:
            yield say("{part}: {places}.", part=part.name, places=", ".join(told))


def _keeps_long(kept: Kept) -> bool:
    """Whether it keeps for hours there; on the table only what does not spoil."""
    if (kept.minutes or 0) < HOUR:
        return False
    return kept.where != TABLE or kept.limit is Limit.HABIT


def _place(kept: Kept) -> str:
    time = said.time(kept.minutes or 0)
    if (kept.minutes or 0) < HOUR:
        return say("at once, {time} after it is ready at the latest", time=time)
    match kept.where:
        case "freezer":
            return say("up to {time} in the freezer", time=time)
        case "table":
            return say("up to {time} closed up, outside the fridge", time=time)
    if kept.is_dough:
        return say("as dough up to {time} in the fridge", time=time)
    return say("up to {time} in the fridge", time=time)
