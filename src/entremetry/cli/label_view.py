"""The label as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from typing import Any

from entremetry.cli.cost_view import cost_as_json, cost_lines
from entremetry.cli.listing import listed
from entremetry.labels import english
from entremetry.labels.allergen_statement import AllergenEntry
from entremetry.labels.emphasis import Span
from entremetry.labels.ingredient_list import IngredientList, Listed
from entremetry.labels.label import Label
from entremetry.labels.naming import Rules
from entremetry.labels.nutrition import Missing
from entremetry.labels.panel import Row
from entremetry.labels.serving import metric_mass
from entremetry.quantities import format_mass
from entremetry.words import say, speaking


def as_json(label: Label) -> str:
    """One JSON object; the unit is the last word of a key, of a row as of all others."""
    with speaking(label.rules.language):
        return _json(label)


def _json(label: Label) -> str:
    serves = label.serving.per_container
    per_100g = {row.key: _number(row.per_100g) for row in label.rows}
    per_piece = {row.key: _number(row.per_serving * serves) for row in label.rows}
    return json.dumps(
        {
            "id": label.id,
            "name": label.name,
            "rules": label.rules.value,
            "pieces": label.pieces,
            "piece_mass_g": _number(label.piece_mass.value * 1e3),
            "net_quantity": label.net_quantity,
            "serving": {
                "household": label.serving.household,
                "mass_g": _number(label.serving.mass * 1e3),
                "per_container": serves,
            },
            "parts": [
                {
                    "id": part.id,
                    "name": part.name,
                    "mass_g": _number(part.mass * 1e3),
                    "share_percent": _number(part.share * 100.0),
                }
                for part in label.parts
            ],
            "per_100g": per_100g,
            "per_piece": per_piece,
            "per_serving": {row.key: _number(row.per_serving) for row in label.rows},
            "highest_per_100g": {
                row.key: _number(row.highest_100g) for row in label.rows if row.missing
            },
            "declaration": [_row(row, label.rules) for row in label.rows],
            "allergen_list": english.allergen_list(label.rules),
            "allergens": [
                {
                    "code": entry.code,
                    "name": entry.word,
                    "group": entry.group,
                    "because": list(entry.because),
                }
                for entry in label.allergens
            ],
            "contains": label.contains,
            "ingredient_list": _ingredients(label.ingredients, label.rules),
            "keeping": {
                "storage": label.keeping.storage,
                "use_by": label.keeping.use_by,
                "because": label.keeping.because,
            },
            "cost": None if label.cost is None else cost_as_json(label.cost, serves),
            "cautions": list(label.cautions),
        },
        ensure_ascii=False,
        indent=2,
    )


def _row(row: Row, rules: Rules) -> dict[str, Any]:
    return {
        "key": row.key,
        "name": english.row_name(row.key, rules),
        "level": row.level,
        "per_100g": str(row.declared_100g),
        "per_serving": str(row.declared_serving),
        "daily_value_percent": row.daily_value_percent,
        "daily_value_up_to_percent": row.daily_value_up_to_percent,
        "because": row.figure.because,
        "sources": list(row.figure.sources),
        "relative_error_percent": _number(row.figure.relative_error * 100.0),
        "not_reported": [
            {"id": each.id, "name": each.name, "share_percent": _number(each.share * 100.0)}
            for each in row.missing
        ],
    }


def _ingredients(found: IngredientList, rules: Rules) -> dict[str, Any]:
    return {
        "heading": found.heading,
        "text": list_text(found, rules, strong=lambda text: text),
        "entries": [
            {
                "ids": list(entry.ids),
                "name": entry.name,
                "text": entry.text,
                "mass_g": _number(entry.mass * 1e3),
                "share_percent": _number(entry.share * 100.0),
                "quantity_percent": None
                if entry.quantity is None
                else _number(entry.quantity * 100.0),
                "quantity_because": entry.quantity_because,
                "taken_out": entry.taken_out,
                "spans": [{"text": s.text, "strong": s.strong} for s in entry.spans],
            }
            for entry in found.entries
        ],
        "water_left_out_g": None
        if found.water_left_out is None
        else _number(found.water_left_out * 1e3),
        "notes": list(found.notes),
    }


def list_text(found: IngredientList, rules: Rules, *, strong: Any) -> str:
    """The list on one line; `strong` sets the words apart that name allergens."""
    large, small = found.entries[: found.small_from], found.entries[found.small_from :]
    if rules is Rules.EU or not small:
        entries = _joined(found.entries, strong)
        return say("{heading}: {entries}.", heading=found.heading, entries=entries)
    group = f"{english.SMALL_GROUP}: {_joined(small, strong)}"
    return f"{found.heading}: {_joined(large, strong)}. {group}."


def _joined(entries: Sequence[Listed], strong: Any) -> str:
    return ", ".join(_spelled(entry.spans, strong) for entry in entries)


def _spelled(spans: Sequence[Span], strong: Any) -> str:
    return "".join(strong(span.text) if span.strong else span.text for span in spans)


def as_text(label: Label) -> str:
    """The label as one reads it in a terminal; allergens of the list in capitals."""
    with speaking(label.rules.language):
        return "\n".join(_lines(label))


def _lines(label: Label) -> Iterator[str]:
    yield say(
        "{name}, draft label ({rules})", name=label.name, rules=english.rules_name(label.rules)
    )
    eu = label.rules is Rules.EU
    held = ", ".join(f"{part.name} {format_mass(part.mass)}" for part in label.parts)
    yield say("A piece holds, after losses: {parts}", parts=held)
    net = label.net_quantity
    yield say("Net quantity: {mass}", mass=net) if eu else net
    if label.rules is Rules.US:
        yield f"Serving size: {label.serving.household} ({metric_mass(label.serving.mass)})"
        yield f"Servings per container: {label.serving.per_container}"
    yield ""
    strong = str.upper if eu else (lambda text: text)
    yield list_text(label.ingredients, label.rules, strong=strong)
    if label.contains:
        yield label.contains
    yield ""
    yield from _panel(label)
    yield from listed(say("Not reported by the sources"), _unreported(label))
    title = say("Allergens ({whose})", whose=english.allergen_list(label.rules))
    yield from listed(title, [_allergen(entry) for entry in label.allergens])
    yield from listed(say("For the list"), label.ingredients.notes)
    yield ""
    yield f"{label.keeping.storage} {label.keeping.use_by} ({label.keeping.because})"
    if label.cost is not None:
        yield ""
        yield from cost_lines(label.cost, label.serving.per_container)
    yield from listed(say("Beware"), label.cautions)


def _panel(label: Label) -> Iterator[str]:
    eu = label.rules is Rules.EU
    one = f"{label.serving.household}, {metric_mass(label.serving.mass)}"
    yield f"{english.title(label.rules):<26}{'100 g' if eu else '':>18}{one:>20}".rstrip()
    for row in label.rows:
        name = "  " * row.level + english.row_name(row.key, label.rules)
        percent = _daily_value(row)
        hundred = str(row.declared_100g) if eu else ""
        served = str(row.declared_serving)
        if row.key == "energy_kcal" and not eu:
            served = served.removesuffix(" kcal")
        yield f"{name:<26}{hundred:>18}{served:>20}{percent}".rstrip()


def _daily_value(row: Row) -> str:
    if row.daily_value_percent is None:
        return ""
    span = f"{row.daily_value_percent}"
    if row.daily_value_up_to_percent != row.daily_value_percent:
        span += f" to {row.daily_value_up_to_percent}"
    return f"{span:>12} %"


def _unreported(label: Label) -> list[str]:
    return [
        say(
            "{value}: {ingredients}",
            value=_alone(row, label.rules),
            ingredients=", ".join(_share(each) for each in row.missing),
        )
        for row in label.rows
        if row.declared_serving.up_to is not None or row.declared_100g.up_to is not None
    ]


def _alone(row: Row, rules: Rules) -> str:
    """Name of a row that stands apart from the row before."""
    name = english.row_name(row.key, rules)
    return name.removeprefix(say("of which ")) if rules is Rules.EU else name


def _share(missing: Missing) -> str:
    share = english.percent(missing.share, 1)
    return say("{name} ({share} of the piece)", name=missing.name, share=share)


def _allergen(entry: AllergenEntry) -> str:
    word = f"{entry.word} ({entry.group})" if entry.group else entry.word
    return say("{allergen}: {names}", allergen=word, names=", ".join(entry.because))


def _number(value: float) -> float:
    return float(f"{value:.6g}")
