"""What most likely goes wrong with a dessert, for those who make it the first time."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.checks.band import Outcome
from entremetry.checks.diagnosis import Suspect, diagnose
from entremetry.checks.registry import check
from entremetry.checks.symptom import Symptom
from entremetry.checks.symptoms import SYMPTOMS
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.words import say

MOST = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Pitfall:
    """What one would see, its likeliest cause here, and what helps."""

    seen: str
    cause: str
    advice: str


def pitfalls(reckoning: Reckoning, kitchen: KitchenDocument | None = None) -> tuple[Pitfall, ...]:
    """What the bench checks warn of, then the symptoms this dessert has least room before."""
    verdicts = check(reckoning, kitchen)
    warned = [
        Pitfall(
            seen=say("{part}: {seen}", part=v.name, seen=v.title), cause=v.because, advice=v.advice
        )
        for v in verdicts
        if v.verdict is not Outcome.PASS
    ]
    near = []
    for symptom in SYMPTOMS:
        suspects = [s for s in diagnose(symptom, verdicts).suspects if s.margin is not None]
        if suspects:
            near.append((symptom, suspects[0]))
    near.sort(key=lambda pair: _margin(pair[1]))
    told = [_told(symptom, suspect) for symptom, suspect in near]
    return (*warned, *told)[: max(MOST, len(warned))]


def _told(symptom: Symptom, suspect: Suspect) -> Pitfall:
    """A symptom with its likeliest cause, in the language that is spoken."""
    cause = suspect.cause
    return Pitfall(seen=say(symptom.name), cause=cause.name, advice=cause.advice)


def _margin(suspect: Suspect) -> float:
    return suspect.margin if suspect.margin is not None else float("inf")
