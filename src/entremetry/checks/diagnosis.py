"""From what went wrong to what most likely lies behind it, for one dessert."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.checks.symptoms import SYMPTOMS
from entremetry.checks.verdict import Verdict
from entremetry.errors import UnknownName
from entremetry.words import say

UNKNOWN = 0.35  # of its weight for a cause that no number of this dessert tells of
STEEPNESS = 3.0  # per width of the caution


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """A cause with how likely it is here, 0 to 1 among all, and the check that says so."""

    cause: Cause
    likelihood: float
    verdict: Verdict | None = None

    @property
    def margin(self) -> float | None:
        """Room this dessert has before that cause, below 0 none; None if it is not computed."""
        return None if self.verdict is None else _margin(self.verdict, self.cause.toward)


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnosis:
    """A symptom and its suspects, the likeliest first."""

    symptom: Symptom
    suspects: tuple[Suspect, ...]


def find_symptom(name: str) -> Symptom:
    """The symptom with this id, or whose words, in English or as they are spoken, hold the text.

    Raises
    ------
    UnknownName
        With the nearest ids, if there is none.
    """
    wanted = name.strip().casefold()
    slug = "-".join(wanted.split())
    for symptom in SYMPTOMS:
        if slug == symptom.id or wanted in _names(symptom):
            return symptom
    holding = [each for each in SYMPTOMS if wanted and any(wanted in n for n in _names(each))]
    if len(holding) == 1:
        return holding[0]
    raise UnknownName("symptom", name, [symptom.id for symptom in SYMPTOMS])


def _names(symptom: Symptom) -> tuple[str, str]:
    """Its words as they are written and as they are spoken, to be compared."""
    return symptom.name.casefold(), say(symptom.name).casefold()


def diagnose(
    symptom: Symptom, verdicts: Iterable[Verdict], component: str | None = None
) -> Diagnosis:
    """Rank the causes of a symptom by how little room the checks leave.

    A cause whose check does not apply to this dessert is left out; one that nothing computes
    stays with a part of its weight. The words are in the language that is spoken.
    """
    found = tuple(verdicts)
    pairs = [pair for cause in symptom.causes for pair in _suspicion(cause, found, component)]
    total = sum(weight for _, weight, _ in pairs)
    suspects = (
        Suspect(cause=_said(cause), likelihood=weight / total, verdict=verdict)
        for cause, weight, verdict in pairs
    )
    return Diagnosis(
        symptom=replace(symptom, name=say(symptom.name)),
        suspects=tuple(sorted(suspects, key=lambda s: -s.likelihood)),
    )


def _said(cause: Cause) -> Cause:
    """A cause in the language that is spoken."""
    return replace(
        cause, name=say(cause.name), measure=say(cause.measure), advice=say(cause.advice)
    )


def _suspicion(
    cause: Cause, verdicts: tuple[Verdict, ...], component: str | None
) -> Iterator[tuple[Cause, float, Verdict | None]]:
    if not cause.rule:
        yield cause, cause.weight * UNKNOWN, None
        return
    mine = [
        verdict
        for verdict in verdicts
        if verdict.id == cause.rule and component in (None, verdict.component)
    ]
    if mine:
        worst = min(mine, key=lambda verdict: _margin(verdict, cause.toward))
        yield cause, cause.weight * _near(_margin(worst, cause.toward)), worst


def _margin(verdict: Verdict, toward: Toward) -> float:
    match toward:
        case Toward.LOW:
            return verdict.band.margin_low(verdict.value)
        case Toward.HIGH:
            return verdict.band.margin_high(verdict.value)
    return verdict.margin


def _near(margin: float) -> float:
    """1 well beyond the limit, a half at it, next to nothing far inside."""
    return 1.0 / (1.0 + math.exp(STEEPNESS * min(max(margin, -20.0), 20.0)))
