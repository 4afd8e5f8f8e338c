"""Verdicts and suspects as the pages say them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.words import say, say_later

if TYPE_CHECKING:
    from entremetry.checks.diagnosis import Diagnosis
    from entremetry.checks.verdict import Input, Verdict

CLOSE = say_later("It is close: with what we do not know, the verdict could be another.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A verdict in words: what, of which component, the value, what is good, and from where."""

    title: str
    name: str
    because: str
    advice: str
    value: str
    good: str
    between: str
    close: str
    formula: str
    inputs: tuple[Input, ...]
    limit_source: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspected:
    """A cause with how likely it is here, the check behind it, and what would confirm it."""

    name: str
    likelihood: int
    measure: str
    advice: str
    verdict: Said | None


def said_of(verdict: Verdict) -> Said:
    """A verdict in words."""
    from entremetry.checks.saying import amount, number, said

    unit, low, high = verdict.unit, verdict.low, verdict.high
    return Said(
        title=verdict.title,
        name=verdict.name,
        because=verdict.because,
        advice=verdict.advice,
        value=amount(verdict.value, unit),
        good=said(verdict.band),
        between=_between(number(low), amount(high, unit)) if high > low else "",
        close="" if verdict.is_sure else say(CLOSE),
        formula=verdict.formula,
        inputs=verdict.inputs,
        limit_source=(verdict.source,),
        sources=verdict.sources,
    )


def _between(low: str, high: str) -> str:
    return say("Here it may lie between {low} and {high}.", low=low, high=high)


def suspected(diagnosis: Diagnosis) -> tuple[Suspected, ...]:
    """The suspects in words, the likeliest first."""
    return tuple(
        Suspected(
            name=suspect.cause.name,
            likelihood=round(100.0 * suspect.likelihood),
            measure=suspect.cause.measure,
            advice=suspect.cause.advice,
            verdict=said_of(suspect.verdict) if suspect.verdict else None,
        )
        for suspect in diagnosis.suspects
    )
