"""'My mould is another one': what changed for it and why, or why it cannot be."""

from __future__ import annotations

from entremetry.adapt.rebalanced import Adapted, Change
from entremetry.checks.band import Outcome
from entremetry.errors import FitError
from entremetry.kitchen.mould import Mould
from entremetry.questions import said
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.reckoned import State
from entremetry.questions.verdicts import newly, turned
from entremetry.words import say

KIND = "mould"


def fitted(mould: Mould, result: Adapted, before: State, after: State) -> Answer:
    """The answer for a mould that the dessert was adapted to."""
    found = turned(before.verdicts, after.verdicts)
    fails, cares = newly(found, Outcome.FAIL), newly(found, Outcome.CAUTION)
    told = tuple(
        Fact(text=_of_part(each, before), because=each.because)
        for each in result.changes
        if each.kind in ("mould", "pieces", "placement", "caution")
    )
    if not result.changes:
        reply, says = Reply.YES, say("Yes: it is the mould the dessert is written for.")
    elif fails:
        reply = Reply.DEPENDS
        says = say("Only if you mend what then fails: a bench check says no to it as it stands.")
    else:
        reply, says = Reply.CHANGED, say("Yes: the document is written anew for it.")
    return Answer(
        kind=KIND,
        question=_question(mould),
        reply=reply,
        says=says,
        facts=(*(each.fact for each in (*fails, *cares)), *told),
        changes=result.changes,
        checks=tuple(dict.fromkeys(each.after.id for each in found)),
        document=result.text if result.changes else "",
    )


def _of_part(change: Change, before: State) -> str:
    """A change with the name of the component it is about."""
    name = before.reckoning.dessert.names.get(change.component)
    if name is None:
        return f"{change.text[:1].upper()}{change.text[1:]}"
    return say("{component}: {change}", component=name, change=change.text)


def misfit(mould: Mould, error: FitError) -> Answer:
    """The answer for a mould in which the dessert finds no room."""
    return Answer(
        kind=KIND,
        question=_question(mould),
        reply=Reply.NO,
        says=say("No: the parts do not fit into it."),
        facts=(Fact(text=str(error)),),
        checks=("mousse-wall", "insert-share"),
    )


def _question(mould: Mould) -> str:
    return say(
        "Can I make it in this: {mould}, which holds {volume}?",
        mould=mould.name,
        volume=said.volume(mould.solid.volume),
    )
