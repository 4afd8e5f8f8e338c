"""'I have something else': the swap, what the bench checks say of it, the adapted document."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.adapt.rebalanced import Adapted, Change
from entremetry.checks.band import Outcome
from entremetry.quantities import format_mass
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.question import Instead
from entremetry.questions.reckoned import State
from entremetry.questions.verdicts import newly, turned
from entremetry.words import say

KIND = "instead"


def replaced(asked: Instead, result: Adapted, before: State, after: State) -> Answer:
    """The answer for a swap that was worked out."""
    question = say("Can I take {have} instead of {old}?", have=asked.have, old=asked.old)
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
    return Answer(
        kind=KIND,
        question=question,
        reply=Reply.DEPENDS if fails else Reply.CHANGED,
        says=_says(bool(fails), bool(cares or _cautions(result.changes))),
        facts=(
            *(each.fact for each in (*fails, *cares)),
            *_masses(result),
            *_gave_way(result),
            *_cautions(result.changes),
        ),
        changes=result.changes,
        checks=tuple(dict.fromkeys(each.after.id for each in found)),
        document=result.text,
    )


def _says(fails: bool, cares: bool) -> str:
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
    return say("none") if mass is None else format_mass(mass)


def _gave_way(result: Adapted) -> Iterator[Fact]:
    for component in result.components:
        for each in component.gave_way:
            yield Fact(
                text=say(
                    "{component}: {measure} could not be kept",
                    component=component.name,
                    measure=each.measure.words,
                )
            )


def _cautions(changes: Sequence[Change]) -> tuple[Fact, ...]:
    return tuple(
        Fact(text=f"{each.text[:1].upper()}{each.text[1:]}.", because=each.because)
        for each in changes
        if each.kind == "caution"
    )
