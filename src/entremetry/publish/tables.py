"""The quantities as tables with real numbers: a view for each question."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish.json_ld import stretches
from entremetry.publish.typesetting import line
from entremetry.words import say, say_later

Cell: TypeAlias = str | float | int | None
LONGEST = 32_767
"""Letters that a cell of a spreadsheet holds; the rest of a longer text goes on in rows below."""
GRAM = 1e-3  # kg
NARROWEST, WIDEST = 8, 60  # letters


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows under headings; a heading ends in its unit where it has one. None is an empty cell."""

    name: str
    headings: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def tables(sheet: BatchSheet) -> tuple[Table, ...]:
    """Quantities, shopping, fill steps, method and cautions of a batch."""
    return (
        _table(say("Quantities"), QUANTITIES, _quantities(sheet)),
        _table(say("Shopping"), SHOPPING, _shopping(sheet)),
        _table(say("Fill steps"), FILLING, _fill_steps(sheet)),
        _table(say("Method"), METHOD, _method(sheet)),
        _table(say("Take care"), CARE, ((caution,) for caution in sheet.cautions)),
    )


QUANTITIES = (
    say_later("Component"),
    say_later("Ingredient"),
    say_later("Mass (g)"),
    say_later("Measure"),
    say_later("Measure is off by (%)"),
    say_later("Note"),
)
SHOPPING = (
    say_later("Ingredient"),
    say_later("Needed (g)"),
    say_later("Buy"),
    say_later("Bought (g)"),
    say_later("Left over (g)"),
    say_later("Effect"),
)
FILLING = (
    say_later("Step"),
    say_later("What to do"),
    say_later("Mass in one (g)"),
    say_later("Below the rim (mm)"),
)
METHOD = (
    say_later("Part"),
    say_later("Step"),
    say_later("What to do"),
)
CARE = (say_later("Caution"),)


def _table(name: str, headings: tuple[str, ...], rows: Iterator[tuple[Cell, ...]]) -> Table:
    whole = tuple(part for row in rows for part in _parts(row))
    return Table(name=name, headings=tuple(line(say(each)) for each in headings), rows=whole)


def _parts(row: tuple[Cell, ...]) -> Iterator[tuple[Cell, ...]]:
    """A row with texts in one line each; what a cell cannot hold goes on in a row below."""
    cells = tuple(line(cell) if isinstance(cell, str) else cell for cell in row)
    yield tuple(cell[:LONGEST] if isinstance(cell, str) else cell for cell in cells)
    rest = tuple(cell[LONGEST:] if isinstance(cell, str) else None for cell in cells)
    if any(rest):
        yield from _parts(rest)


def _quantities(sheet: BatchSheet) -> Iterator[tuple[Cell, ...]]:
    for component in sheet.components:
        for each in component.lines:
            error = each.household_error if each.household else None
            off = None if error is None else round(100.0 * error, 1)
            yield component.name, each.name, _grams(each.mass), each.household, off, each.note


def _shopping(sheet: BatchSheet) -> Iterator[tuple[Cell, ...]]:
    for item in sheet.shopping:
        masses = (_grams(item.mass), _grams(item.bought_mass), _grams(item.left_over))
        yield item.name, masses[0], item.buy, *masses[1:], item.effect


def _fill_steps(sheet: BatchSheet) -> Iterator[tuple[Cell, ...]]:
    for number, step in enumerate(sheet.fill_steps, start=1):
        mass = None if step.mass is None else _grams(step.mass)
        depth = None if step.below_rim is None else round(step.below_rim * 1e3, 1)
        yield number, step.text, mass, depth


def _method(sheet: BatchSheet) -> Iterator[tuple[Cell, ...]]:
    for name, sentences in stretches(sheet):
        for number, sentence in enumerate(sentences, start=1):
            yield name, number, sentence


def _grams(mass: float) -> float:
    """Mass in kg as grams, to a hundredth."""
    return round(mass / GRAM, 2)


def width(table: Table, column: int) -> int:
    """Width of a column in letters: that of its longest text, within reason."""
    texts = [table.headings[column], *(str(row[column] or "") for row in table.rows)]
    return max(NARROWEST, min(WIDEST, max(len(text) for text in texts) + 2))
