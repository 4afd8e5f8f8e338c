"""A diagnosis as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from typing import Any

from entremetry.checks.diagnosis import Suspect
from entremetry.checks.symptom import Symptom
from entremetry.cli.check_view import verdict_object
from entremetry.usecases.diagnosing import Diagnosed

RESTS_ON = "How often each cause is seen is common practice, no source; the numbers are yours."
OF_THE_CHECK = ("id", "component", "verdict", "value", "unit", "limit", "because", "source")


def as_json(found: Diagnosed) -> str:
    """One JSON object; likelihoods in per cent of all causes that are named."""
    symptom = found.diagnosis.symptom
    return json.dumps(
        {
            "id": found.id,
            "name": found.name,
            "symptom": symptom.id,
            "symptom_name": symptom.name,
            "causes": [_suspect(suspect) for suspect in found.diagnosis.suspects],
        },
        ensure_ascii=False,
        indent=2,
        allow_nan=False,
    )


def _suspect(suspect: Suspect) -> dict[str, Any]:
    verdict = suspect.verdict
    told = verdict_object(verdict) if verdict else {}
    return {
        "cause": suspect.cause.name,
        "likelihood_percent": round(100.0 * suspect.likelihood, 2),
        "margin": suspect.margin,
        "measure": suspect.cause.measure,
        "advice": suspect.cause.advice,
        "check": {key: told[key] for key in OF_THE_CHECK} if told else None,
    }


def as_text(found: Diagnosed) -> str:
    """The likeliest cause first, each with what would confirm it."""
    return "\n".join(_lines(found))


def _lines(found: Diagnosed) -> Iterator[str]:
    yield f"{found.name}: {found.diagnosis.symptom.name.lower()}"
    for number, suspect in enumerate(found.diagnosis.suspects, start=1):
        yield ""
        yield f"{number}. {suspect.cause.name} ({100.0 * suspect.likelihood:.0f} %)"
        if suspect.verdict is not None:
            yield f"   {suspect.verdict.name}: {suspect.verdict.because}"
        yield f"   Measure: {suspect.cause.measure}"
        yield f"   Do: {suspect.cause.advice}"
    yield ""
    yield RESTS_ON


def symptoms_text(symptoms: Sequence[Symptom]) -> str:
    """The symptoms one can ask about, a line each."""
    width = max(len(symptom.id) for symptom in symptoms)
    lines = [f"  {symptom.id:<{width}}  {symptom.name}" for symptom in symptoms]
    return "\n".join(["say what went wrong with --symptom; these are known:", *lines])
