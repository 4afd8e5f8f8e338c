"""'I have something else': the swap, what the bench checks say of it, the adapted document."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.adapt.rebalanced import Adapted, Change
from entremetry.checks.band import Outcome
from entremetry.dessert.dessert import Dessert
from entremetry.larder.spoken_name import ingredient_name
from entremetry.questions import said
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.losses import not_whipping
from entremetry.questions.question import Instead
from entremetry.questions.reckoned import State
from entremetry.questions.verdicts import newly, turned
from entremetry.words import say

KIND = "instead"


def replaced(asked: Instead, result: Adapted, before: State, after: State) -> Answer:
    """The answer for a swap that was worked out."""
    have, old = _names(asked, before.reckoning.dessert)
    question = say("Can I take {have} instead of {old}?", have=have, old=old)
    conflicts = [each for each in result.components if not each.feasible]
    if conflicts:
        return Answer(
            kind=KIND,
            question=question,
            reply=Reply.NO,
            says=say("No: no formula can do it with these ingredients."),
            facts=tuple(
                Fact(text=f"{each.name}: {demand}")
                for each in conflicts
                for demand in (each.conflict.demands if each.conflict else ())
            ),
        )
    found = turned(before.verdicts, after.verdicts)
    fails = newly(found, Outcome.FAIL)
    cares = newly(found, Outcome.CAUTION)
    lost = tuple(
        fact for each in result.components for fact in not_whipping(each.component, before, after)
    )
    return Answer(
        kind=KIND,
        question=question,
        reply=Reply.DEPENDS if fails or lost else Reply.CHANGED,
        says=_says(bool(fails), lost, bool(cares or _cautions(result.changes))),
        facts=(
            *(each.fact for each in (*fails, *cares)),
            *lost,
            *_masses(result),
            *_gave_way(result),
            *_cautions(result.changes),
        ),
        changes=result.changes,
        checks=tuple(dict.fromkeys(each.after.id for each in found)),
        document=result.text,
        apart=say("with {have}", have=have),
    )


def _names(asked: Instead, dessert: Dessert) -> tuple[str, str]:
    """What is there and what is not, by the names of the larder."""
    known = [dessert.larder.known(name.strip()) for name in asked.have.split("+")]
    have = " + ".join(ingredient_name(each) for each in known if each is not None)
    component, slash, line = asked.old.partition("/")
    for each in dessert.components:
        for other in each.lines:
            if (each.id, other.name) == (component, line) and other.ingredient is not None:
                name = ingredient_name(other.ingredient)
                return have, say("{line} in {component}", line=name, component=each.name)
    found = dessert.larder.known(asked.old)
    return have, asked.old if found is None else ingredient_name(found)


def _says(fails: bool, lost: Sequence[Fact], cares: bool) -> str:
    if lost and not fails:
        return say("It depends: {because}.", because=lost[0].text)
    if fails:
        return say("Only if you mend what then fails: a bench check says no to it as it stands.")
    if cares:
        return say("Yes, with other masses; look after what is named below.")
    return say("Yes, with other masses.")


def _masses(result: Adapted) -> Iterator[Fact]:
    for component in result.components:
        for line in component.lines:
            if line.before == line.after:
                continue
            yield Fact(
                text=say(
                    "{component}, {line}: {after}, {before} before",
                    component=component.name,
                    line=line.name,
                    after=_mass(line.after),
                    before=_mass(line.before),
                )
            )


def _mass(mass: float | None) -> str:
    return say("none") if mass is None else said.mass(mass)


def _gave_way(result: Adapted) -> Iterator[Fact]:
    for component in result.components:
        for each in component.gave_way:
            yield Fact(
                text=say(
                    "{component}: {measure} could not be kept",
                    component=component.name,
                    measure=each.measure.said,
                )
            )


def _cautions(changes: Sequence[Change]) -> tuple[Fact, ...]:
    return tuple(
        Fact(text=f"{each.text[:1].upper()}{each.text[1:]}.", because=each.because)
        for each in changes
        if each.kind == "caution"
    )
