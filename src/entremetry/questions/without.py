"""'Can I leave it out?': take it out, and look at what the bench checks say then."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.adapt.leaving_out import Without as Shorter
from entremetry.adapt.leaving_out import without_component, without_line
from entremetry.checks.band import Outcome
from entremetry.dessert.dessert import Component, Dessert
from entremetry.errors import EntremetryError, QuantityError, UnknownName
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.labels.english_names import allergen_word
from entremetry.larder.spoken_name import ingredient_name
from entremetry.questions import said
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.losses import losses
from entremetry.questions.measured import tasted
from entremetry.questions.reckoned import Reckon, State, state
from entremetry.questions.verdicts import Turned, newly, turned
from entremetry.words import say

KIND = "without"
SAME = 0.01  # part of a mass that is told of


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """What a name means in a dessert: a component, or one line of it; and its words."""

    component: Component
    line: str = ""

    @property
    def words(self) -> str:
        """Its name as a sentence says it."""
        if not self.line:
            return self.component.name
        line = next(each for each in self.component.lines if each.name == self.line)
        name = line.name if line.ingredient is None else ingredient_name(line.ingredient)
        return say("{line} in {component}", line=name, component=self.component.name)


def named(dessert: Dessert, name: str) -> Named:
    """A component by its id or name, or a line by its name or ingredient, or 'component/line'.

    Raises
    ------
    UnknownName
        With the nearest names, if nothing bears it.
    QuantityError
        If several lines bear it, with the names that tell them apart.
    """
    for component in dessert.components:
        if name in (component.id, component.name):
            return Named(component=component)
    of, slash, line = name.partition("/")
    found = [
        Named(component=component, line=each.name)
        for component in dessert.components
        if not slash or of == component.id
        for each in component.lines
        if (line if slash else name)
        in (each.name, *((each.ingredient.id, each.ingredient.name) if each.ingredient else ()))
    ]
    if len(found) == 1:
        return found[0]
    if found:
        told = ", ".join(f"{each.component.id}/{each.line}" for each in found)
        raise QuantityError(say("'{name}', which stands in several formulas", name=name), told)
    raise UnknownName("component, line or ingredient of this dessert", name, _names(dessert))


def without(text: str, name: str, reckon: Reckon, kitchen: KitchenDocument | None = None) -> Answer:
    """Whether a dessert does without a component or a line.

    Raises
    ------
    EntremetryError
        If the dessert cannot be reckoned as it is, or nothing bears the name.
    """
    before = state(text, reckon, kitchen)
    meant = named(before.reckoning.dessert, name)
    question = say("Can I leave out {what}?", what=meant.words)
    shorter = (
        without_line(text, meant.component.id, meant.line)
        if meant.line
        else without_component(text, meant.component.id, name=meant.component.name)
    )
    if shorter.refused:
        return Answer(
            kind=KIND,
            question=question,
            reply=Reply.NO,
            says=say("No.") + f" {_upper(shorter.refused)}.",
        )
    try:
        after = state(shorter.text, reckon, kitchen)
    except EntremetryError as error:
        return Answer(
            kind=KIND,
            question=question,
            reply=Reply.NO,
            says=say("No: without it the dessert cannot be made as it is written."),
            facts=(Fact(text=str(error)),),
            changes=shorter.changes,
        )
    return _told(question, meant, shorter, before, after)


def _told(question: str, meant: Named, shorter: Shorter, before: State, after: State) -> Answer:
    found = turned(before.verdicts, after.verdicts)
    fails = newly(found, Outcome.FAIL)
    cares = newly(found, Outcome.CAUTION)
    lost = tuple(losses(meant.component.id, meant.line, before, after)) if meant.line else ()
    reply = Reply.NO if fails else Reply.DEPENDS if cares or lost else Reply.YES
    turns = (each.fact for each in (*fails, *cares))
    facts = (*turns, *lost, *_facts(meant, before, after))
    better = tuple(each.fact for each in found if not each.is_worse)
    return Answer(
        kind=KIND,
        question=question,
        reply=reply,
        says=_says(reply, fails or cares, lost),
        facts=(*facts, *better),
        changes=shorter.changes,
        checks=tuple(dict.fromkeys(each.after.id for each in found)),
        document="" if fails else shorter.text,
        apart=say("without {what}", what=meant.words),
    )


def _says(reply: Reply, worse: tuple[Turned, ...], lost: tuple[Fact, ...]) -> str:
    if reply is Reply.YES:
        return say("Yes: no bench check says worse of it than before.")
    if not worse:
        return say("It depends: {because}.", because=lost[0].text)
    names = ", ".join(
        dict.fromkeys(f"{each.after.name}: {each.after.title.lower()}" for each in worse)
    )
    if reply is Reply.NO:
        return say("No: a bench check then fails ({names}).", names=names)
    return say("It depends: a bench check then needs care ({names}).", names=names)


def _facts(meant: Named, before: State, after: State) -> Iterator[Fact]:
    yield from _masses(meant, before, after)
    gone = sorted(before.allergens - after.allergens)
    if gone:
        words = ", ".join(allergen_word(code) for code in gone)
        yield Fact(
            text=say("It no longer contains {allergens}.", allergens=words),
            because=say("as far as the larder knows; the packets in your hand decide"),
        )
    else:
        yield Fact(text=say("The allergens stay the same."))
    yield from tasted(meant.component.id, before.reckoning, after.reckoning)


def _masses(meant: Named, before: State, after: State) -> Iterator[Fact]:
    masses = said.mass(after.piece_mass), said.mass(before.piece_mass)
    pieces = after.reckoning.dessert.document.pieces
    yield Fact(
        text=say(
            "A piece weighs {after} instead of {before}; the number of pieces stays {pieces}.",
            after=masses[0],
            before=masses[1],
            pieces=pieces,
        )
    )
    names, factors = after.reckoning.dessert.names, before.factors
    for component, factor in after.factors.items():
        change = factor / factors[component] - 1.0 if factors.get(component) else 0.0
        if abs(change) <= SAME:
            continue
        own = bool(meant.line) and component == meant.component.id
        message = _more(names[component], change, own=own)
        yield Fact(text=message, because=say("so that the mould is full"))


def _more(name: str, change: float, *, own: bool) -> str:
    """How much more or less is made of a component; `own` is the one a line went out of."""
    share = said.share(abs(change))
    if change < 0.0:
        return say("{component}: {share} less of it", component=name, share=share)
    if own:
        return say(
            "{component}: {share} more of all that is left in it", component=name, share=share
        )
    return say("{component}: {share} more of it", component=name, share=share)


def _names(dessert: Dessert) -> list[str]:
    lines = [line.name for component in dessert.components for line in component.lines]
    return [*(component.id for component in dessert.components), *lines]


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]
