"""What the recipe page has for its reader beside the batch sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.labels.english import row_name
from entremetry.labels.label import Label, label
from entremetry.labels.naming import Rules
from entremetry.publish.cold_tables import Heard, cold_tables, minutes, timed
from entremetry.publish.days_ahead import Ahead, days_ahead
from entremetry.publish.pitfalls import Pitfall, pitfalls
from entremetry.publish.reader_model import ColdTimes, reader_model
from entremetry.publish.reader_text import Part, method_parts
from entremetry.questions.for_reader import ReaderQuestion


@dataclass(frozen=True, slots=True, kw_only=True)
class Nutrient:
    """One line of the nutrition table, in words."""

    name: str
    level: int
    per_100g: str
    per_serving: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader:
    """What a reader asks beyond the amounts; `model` is what the page's script computes with."""

    model: Mapping[str, Any]
    methods: Mapping[str, tuple[tuple[Part, ...], ...]]
    ahead: tuple[Ahead, ...]
    pitfalls: tuple[Pitfall, ...]
    nutrients: tuple[Nutrient, ...]
    serving: str
    storage: str
    use_by: str
    measures: str
    questions: tuple[ReaderQuestion, ...] = ()


def cold_times(
    reckoning: Reckoning, kitchen: KitchenDocument | None, heard: Heard | None = None
) -> ColdTimes | None:
    """Freezing and thawing in the own mould and in others; None if nothing is frozen."""
    if not timed(reckoning):
        return None
    tables = cold_tables(reckoning, kitchen, heard)
    return ColdTimes(tables=tables, own=minutes(reckoning, kitchen))


def reader(
    reckoning: Reckoning,
    sheet: BatchSheet,
    *,
    kitchen: KitchenDocument | None = None,
    fan: bool | None = None,
    times: ColdTimes | None = None,
    measures: str = "us",
    questions: tuple[ReaderQuestion, ...] = (),
) -> Reader:
    """Everything for the reader of a dessert's page; `questions` are those answered beforehand."""
    told = label(reckoning, pieces=sheet.pieces, rules=Rules.EU)
    return Reader(
        model=reader_model(reckoning, sheet, measures, times),
        methods={
            c.id: method_parts(reckoning, c, pieces=sheet.pieces, fan=fan)
            for c in reckoning.dessert.components
        },
        ahead=days_ahead(reckoning),
        pitfalls=pitfalls(reckoning, kitchen),
        nutrients=tuple(_nutrients(told)),
        serving=told.serving.household,
        storage=told.keeping.storage,
        use_by=told.keeping.use_by,
        measures=measures,
        questions=questions,
    )


def _nutrients(told: Label) -> list[Nutrient]:
    """Rows as printed; the two measures of energy share one."""
    found: list[Nutrient] = []
    for row in told.rows:
        name = row_name(row.key, told.rules)
        if name:
            found.append(
                Nutrient(
                    name=name,
                    level=row.level,
                    per_100g=str(row.declared_100g),
                    per_serving=str(row.declared_serving),
                )
            )
        elif found:
            last = found.pop()
            found.append(
                Nutrient(
                    name=last.name,
                    level=last.level,
                    per_100g=f"{last.per_100g} / {row.declared_100g}",
                    per_serving=f"{last.per_serving} / {row.declared_serving}",
                )
            )
    return found
