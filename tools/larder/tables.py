"""The written tables beside this file, row by row."""

from __future__ import annotations

import csv
from pathlib import Path

HERE = Path(__file__).parent
Row = dict[str, str]


def read(name: str) -> list[Row]:
    """Rows of a table, in its order."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def listed(cell: str) -> tuple[str, ...]:
    """Parts of a cell that holds several, divided by semicolons."""
    return tuple(part.strip() for part in cell.split(";") if part.strip())


def figures(cell: str) -> dict[str, float]:
    """Words with their numbers: 'water 13; protein 85.6'."""
    return {word: float(number) for word, number in (part.split() for part in listed(cell))}
