"""A rebalanced formula and a swapped document as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from entremetry.adapt.rebalanced import Adapted, Change, LineChange, MeasureChange, Rebalanced
from entremetry.quantities import format_mass

NO_FORMULA = "No formula can do this: these exclude each other"
ALONE = "No formula of these ingredients can do this"
NONE_FOUND = "No formula was found that does all of this, and it is not proved that there is none"


def as_json(result: Rebalanced) -> str:
    """One JSON object with the new formula, its measures before and after, and the document."""
    return _dumped(
        {
            **_component(result),
            "document": result.text,
        }
    )


def adapted_as_json(result: Adapted) -> str:
    """One JSON object with the new document and everything that was changed in it."""
    return _dumped(
        {
            "document": result.text,
            "changes": [_change(change) for change in result.changes],
            "components": [_component(each) for each in result.components],
        }
    )


def as_text(result: Rebalanced) -> str:
    """The formula before and after, then what it is like, then what needs care."""
    return "\n".join(_lines(result))


def changes_text(result: Adapted) -> str:
    """What was changed, a line each, and what gave way."""
    told = [_told(each) for each in result.changes]
    told += [
        f"{each.component}: {_gave_way(m)}" for each in result.components for m in each.gave_way
    ]
    return "\n".join(told) or "nothing was changed"


def _told(each: Change) -> str:
    """A change with its reason; what needs care says so."""
    what = ": ".join(part for part in (each.component, each.text) if part)
    care = "look after this: " if each.kind == "caution" and not each.component else ""
    return f"{care}{what} ({each.because})" if each.because else f"{care}{what}"


def conflict_text(result: Rebalanced) -> str:
    """Why there is no formula, and which demands to loosen."""
    if result.conflict is None:
        return ""
    demands = result.conflict.demands
    if result.conflict.proved and len(demands) == 1:
        return f"{result.name}: {ALONE}; loosen it or add an ingredient: {demands[0]}"
    head = NO_FORMULA if result.conflict.proved else NONE_FOUND
    listed = "".join(f"\n  - {each}" for each in demands)
    return f"{result.name}: {head}; loosen one of them:{listed}"


def _component(result: Rebalanced) -> dict[str, Any]:
    return {
        "component": result.component,
        "name": result.name,
        "feasible": result.feasible,
        "proved_infeasible": result.conflict is not None and result.conflict.proved,
        "conflicts": list(result.conflict.demands) if result.conflict else [],
        "formula": [_formula_line(line) for line in result.lines],
        "metrics_before": _values(result, "before"),
        "metrics_after": _values(result, "after"),
        "metrics": [_metric(each) for each in result.measures],
        "gave_way": [each.measure.name for each in result.gave_way],
        "changes": [_change(change) for change in result.changes],
    }


def _formula_line(line: LineChange) -> dict[str, Any]:
    return {
        "line": line.line,
        "id": line.ingredient,
        "name": line.name,
        "before_g": _grams(line.before),
        "mass_g": _grams(line.after),
        "pinned": line.pinned,
    }


def _values(result: Rebalanced, when: str) -> dict[str, float | None]:
    values = {each.measure.key: _printed(each, getattr(each, when)) for each in result.measures}
    sweet = result.sweetness[when]
    return {
        **values,
        "sweetness_low_percent": round(sweet.low * 100.0, 4),
        "sweetness_high_percent": round(sweet.high * 100.0, 4),
    }


def _metric(each: MeasureChange) -> dict[str, Any]:
    return {
        "name": each.measure.name,
        "words": each.measure.words,
        "unit": each.measure.unit,
        "before": _printed(each, each.before),
        "after": _printed(each, each.after),
        "wish": each.wish,
        "low": _printed(each, each.low),
        "high": _printed(each, each.high),
        "held": each.held,
    }


def _change(change: Change) -> dict[str, Any]:
    return {
        "component": change.component,
        "line": change.line,
        "kind": change.kind,
        "text": change.text,
        "because": change.because,
        "before_g": _grams(change.before),
        "after_g": _grams(change.after),
    }


def _lines(result: Rebalanced) -> Iterator[str]:
    yield result.name
    width = max(len(line.line) for line in result.lines)
    yield f"{'':<{width}}  {'before':>10}  {'after':>10}"
    for line in result.lines:
        pinned = "  pinned" if line.pinned else ""
        before, after = (_weighed(mass) for mass in (line.before, line.after))
        yield f"{line.line:<{width}}  {before:>10}  {after:>10}{pinned}"
    yield ""
    shown = [each for each in result.measures if each.before or each.after]
    width = max(len(each.measure.words) for each in shown)
    for each in shown:
        before, after = (_number(each, value) for value in (each.before, each.after))
        unit = each.measure.unit
        yield f"{each.measure.words:<{width}}  {before:>10}  {after:>10}  {unit:<4}{_verdict(each)}"
    for change in result.cautions:
        yield f"Look after this: {change.text}."


def _verdict(each: MeasureChange) -> str:
    if not each.wish:
        return ""
    return each.wish if each.held else f"gave way ({_ends(each)} wished)"


def _gave_way(each: MeasureChange) -> str:
    now = _number(each, each.after)
    return f"{each.measure.words} gave way: {now} {each.measure.unit}, {_ends(each)} wished"


def _ends(each: MeasureChange) -> str:
    return f"{_number(each, each.low)} to {_number(each, each.high)}"


def _weighed(mass: float | None) -> str:
    return "-" if mass is None else format_mass(mass)


def _number(each: MeasureChange, value: float | None) -> str:
    return "-" if value is None else f"{each.measure.printed(value):.4g}"


def _printed(each: MeasureChange, value: float | None) -> float | None:
    if value is None or value in (float("inf"), float("-inf")):
        return None
    return round(each.measure.printed(value), 4)


def _grams(mass: float | None) -> float | None:
    return None if mass is None else round(mass * 1e3, 4)


def _dumped(shown: dict[str, Any]) -> str:
    return json.dumps(shown, ensure_ascii=False, indent=2, allow_nan=False)
