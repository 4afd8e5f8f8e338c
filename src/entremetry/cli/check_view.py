"""Bench checks as JSON and as text for a terminal."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator, Sequence
from typing import Any

from entremetry.checks.band import Outcome
from entremetry.checks.saying import said
from entremetry.checks.verdict import Verdict
from entremetry.sources import Standing, cite
from entremetry.usecases.checking import Checked

MARKS = {Outcome.FAIL: "FAILS  ", Outcome.CAUTION: "care   ", Outcome.PASS: "fine   "}
DEFERENCE = (
    "Worked out from the document alone. No promise: your thermometer, your senses and the food "
    "rules of your place decide."
)


def as_json(checked: Checked) -> str:
    """One JSON object; values are in the unit that stands beside them, open ends are null."""
    return json.dumps(
        {
            "id": checked.id,
            "name": checked.name,
            "fails": len(checked.of(Outcome.FAIL)),
            "cautions": len(checked.of(Outcome.CAUTION)),
            "passes": len(checked.of(Outcome.PASS)),
            "checks": [verdict_object(verdict) for verdict in checked.verdicts],
            "untimed_steps": list(checked.untimed),
        },
        ensure_ascii=False,
        indent=2,
        allow_nan=False,
    )


def verdict_object(verdict: Verdict) -> dict[str, Any]:
    """One verdict as scripts read it."""
    band = verdict.band
    return {
        "id": verdict.id,
        "title": verdict.title,
        "concern": verdict.concern,
        "component": verdict.component,
        "name": verdict.name,
        "verdict": verdict.verdict.value,
        "value": _number(verdict.value),
        "unit": verdict.unit,
        "limit": _number(verdict.limit),
        "interval_low": _number(verdict.low),
        "interval_high": _number(verdict.high),
        "sure": verdict.is_sure,
        "good_from": _number(band.low),
        "good_to": _number(band.high),
        "fails_below": _number(band.fails_below),
        "fails_above": _number(band.fails_above),
        "margin": _number(verdict.margin),
        "because": verdict.because,
        "advice": verdict.advice,
        "source": verdict.source,
        "source_text": cite(verdict.source).text,
        "sources": list(verdict.sources),
        "formula": verdict.formula,
        "inputs": [{"name": each.name, "value": each.said} for each in verdict.inputs],
    }


def as_text(checked: Checked, *, everything: bool = False) -> str:
    """What needs care with what to do; what is fine in one line, or all of it if wanted."""
    return "\n".join(_lines(checked, everything))


def _lines(checked: Checked, everything: bool) -> Iterator[str]:
    yield checked.name
    for outcome in (Outcome.FAIL, Outcome.CAUTION):
        yield from _told(checked.of(outcome))
    fine = checked.of(Outcome.PASS)
    yield ""
    if everything:
        yield from _told(fine)
    else:
        yield f"{len(fine)} checks are fine (--all shows them)."
    if checked.untimed:
        yield f"Not computed: the times of {', '.join(checked.untimed)}."
    yield DEFERENCE


def _told(verdicts: Sequence[Verdict]) -> Iterator[str]:
    for verdict in verdicts:
        yield ""
        yield f"{MARKS[verdict.verdict]}{verdict.name}: {verdict.title}"
        yield f"       {verdict.because}"
        if verdict.advice:
            yield f"       Do: {verdict.advice}"
        yield f"       {_sureness(verdict)}"


def _sureness(verdict: Verdict) -> str:
    sure = "" if verdict.is_sure else "; close, so the other verdict is possible"
    return f"Good: {said(verdict.band)} ({_source(verdict.source)}){sure}."


def _source(key: str) -> str:
    source = cite(key)
    return source.text.rstrip(".") if source.standing is Standing.PUBLISHED else source.standing


def _number(value: float) -> float | None:
    return float(f"{value:.6g}") if math.isfinite(value) else None
