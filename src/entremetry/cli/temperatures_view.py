"""The temperatures of a step as JSON, as text for a terminal, and as a drawing."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np

from entremetry.cli.listing import listed
from entremetry.publish.picture import png
from entremetry.publish.temperature_curves import curves_svg
from entremetry.publish.temperature_table import table
from entremetry.publish.temperature_thinning import kept_points
from entremetry.publish.temperature_wording import (
    FREEZING_POINT,
    answer,
    fact_value,
    interval,
    roughly,
    spoken,
)
from entremetry.publish.typography import MINUS, NO_BREAK
from entremetry.sources import cite
from entremetry.timings.step_temperatures import Curve, Fact, StepTemperatures
from entremetry.timings.timed_step import TimedStep

MOST_POINTS = 400

PNG_WIDTH = 1600


def as_json(result: StepTemperatures) -> str:
    """One JSON object; times in min, temperatures in °C, null for what is never reached."""
    return json.dumps(
        {
            "step": result.step,
            "name": result.name,
            "kind": result.kind,
            "sentence": result.sentence,
            "time_min": _minutes(result.time),
            "low_min": _minutes(result.low),
            "high_min": _minutes(result.high),
            "target_c": None if result.target is None else _celsius(result.target),
            "reason": result.reason,
            "mostly": result.mostly,
            "because": result.because,
            "written_time_min": _minutes(result.written_time),
            "points": [_point(curve) for curve in result.curves],
            "marks": [{"time_min": _minutes(m.time), "text": m.text} for m in result.marks],
            "facts": [
                {
                    "name": fact.name,
                    "value": _finite(fact.value, 4),
                    "unit": fact.unit,
                    "because": fact.because,
                }
                for fact in result.facts
            ],
            "assumptions": list(result.assumptions),
            "sources": [
                {"key": key, "text": cite(key).text} for key in dict.fromkeys(result.sources)
            ],
            "energy_balance_error": _finite(result.balance_error),
        },
        ensure_ascii=False,
        indent=2,
        allow_nan=False,
    )


def _point(curve: Curve) -> dict[str, Any]:
    known = np.isfinite(curve.temperatures) & np.isfinite(curve.times)
    times, values = curve.times[known], curve.temperatures[known]
    kept = kept_points(times, values, MOST_POINTS)
    return {
        "name": curve.name,
        "time_min": [_minutes(float(times[k])) for k in kept],
        "temperature_c": [_celsius(float(values[k])) for k in kept],
    }


def as_text(result: StepTemperatures) -> str:
    """The answer first, then the temperatures at even times, then what it rests on."""
    return _plain("\n".join(_lines(result)))


def as_svg(result: StepTemperatures) -> str:
    """The curves as a drawing that stands on its own."""
    return curves_svg(result, title=f"{result.name}: {result.sentence}", standalone=True)


def as_png(result: StepTemperatures) -> bytes:
    """The curves as a picture."""
    return png(as_svg(result), PNG_WIDTH)


def steps_text(steps: Sequence[TimedStep], file: str) -> str:
    """The steps one can ask for, a line each."""
    if not steps:
        return f"{file}: no step of this document can be timed"
    width = max(len(step.id) for step in steps)
    lines = [f"  {step.id:<{width}}  {step.name}: {step.sentence}" for step in steps]
    return "\n".join([f"{file}: say which step with --step; these can be timed:", *lines])


def _lines(result: StepTemperatures) -> Iterator[str]:
    yield f"{result.name}: {result.sentence}"
    yield _answer(result)
    if result.written_time is not None:
        yield f"The document says {spoken(result.written_time)}."
    if result.curves:
        yield ""
        yield from _table(result)
    yield from listed("In numbers", [_fact(fact) for fact in result.facts])
    yield from listed("On the way", [f"{roughly(m.time)}: {m.text}" for m in result.marks])
    yield from listed("Taken for granted", result.assumptions)
    yield ""
    yield f"How it was found: {result.because.rstrip('.')}."
    yield from listed("Sources", [cite(key).text for key in dict.fromkeys(result.sources)])


def _fact(fact: Fact) -> str:
    why = f" ({fact.because})" if fact.because else ""
    return f"{fact.name}: {fact_value(fact)}{why}"


def _answer(result: StepTemperatures) -> str:
    if result.time is None:
        return answer(result)
    range_ = interval(result)
    return f"{roughly(result.time)}{', ' if range_ else ''}{range_}"


def _table(result: StepTemperatures) -> Iterator[str]:
    """Temperatures of each point in °C at even times, and at the moment the step is done."""
    names = [curve.name for curve in result.curves]
    widths = [max(len(name), 8) for name in names]
    yield "  ".join([f"{'':<12}", *(f"{n:>{w}}" for n, w in zip(names, widths, strict=True))])
    for row in table(result):
        cells = [f"{cell:>{w}}" for cell, w in zip(row.cells, widths, strict=True)]
        yield "  ".join([f"{row.time:<12}", *cells]) + ("  done" if row.done else "")


def _minutes(time: float | None) -> float | None:
    return None if time is None or not math.isfinite(time) else round(time / 60.0, 4)


def _celsius(temperature: float) -> float | None:
    return _finite(temperature - FREEZING_POINT, 3)


def _finite(value: float, places: int | None = None) -> float | None:
    if not math.isfinite(value):
        return None
    return value if places is None else round(value, places)


def _plain(text: str) -> str:
    """Text with the signs of a keyboard, so that a terminal finds what one looks for."""
    return text.replace(NO_BREAK, " ").replace(MINUS, "-")
