"""Bench checks: will each component set, hold, release, shine, stay crisp; how sure are we."""

from entremetry.checks.band import Band, Outcome
from entremetry.checks.diagnosis import Diagnosis, Suspect, diagnose, find_symptom
from entremetry.checks.registry import RULES, check
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.symptom import Cause, Symptom, Toward
from entremetry.checks.symptoms import SYMPTOMS
from entremetry.checks.verdict import Input, Verdict

__all__ = [
    "RULES",
    "SYMPTOMS",
    "Band",
    "Cause",
    "Diagnosis",
    "Finding",
    "Input",
    "Outcome",
    "Rule",
    "Side",
    "Suspect",
    "Symptom",
    "Toward",
    "Verdict",
    "check",
    "diagnose",
    "find_symptom",
]
