"""'Why did that happen?': the likeliest causes in this dessert, and the check behind each."""

from __future__ import annotations

from entremetry.checks.diagnosis import Diagnosis, Suspect
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.words import say

KIND = "symptom"
MOST = 5


def diagnosed(found: Diagnosis) -> Answer:
    """The answer for a diagnosis."""
    first = found.suspects[:MOST]
    return Answer(
        kind=KIND,
        question=say("Why did this happen: {symptom}?", symptom=found.symptom.name),
        reply=Reply.DEPENDS,
        says=_says(first),
        facts=tuple(_fact(each) for each in first),
        checks=tuple(dict.fromkeys(each.verdict.id for each in first if each.verdict)),
    )


def _says(found: tuple[Suspect, ...]) -> str:
    if not found:
        return say("Nothing in this dessert is known to do that.")
    return say(
        "Most likely {cause}. {advice}", cause=found[0].cause.name, advice=found[0].cause.advice
    )


def _fact(suspect: Suspect) -> Fact:
    name = suspect.cause.name
    return Fact(
        text=say(
            "{cause}: {share} %. Measure: {measure}",
            cause=f"{name[:1].upper()}{name[1:]}",
            share=round(100.0 * suspect.likelihood),
            measure=suspect.cause.measure,
        ),
        because=suspect.verdict.because if suspect.verdict else "",
        source=suspect.verdict.source if suspect.verdict else "common_practice",
    )
