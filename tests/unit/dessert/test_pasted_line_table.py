"""Every line of a table written by hand is taken apart as a cook would read it."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.dessert.pasted_line import pasted_line

TABLE = Path(__file__).with_name("pasted_lines.csv")


def rows() -> list[dict[str, str]]:
    """Lines with the amount and the name that they mean; a range has both its ends."""
    with TABLE.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["line"])
def test_a_line_is_read_as_the_table_says(row: dict[str, str]) -> None:
    found = pasted_line(row["line"])
    amount = "|".join(found.either) if found.either else found.amount
    assert (amount, found.name) == (row["amount"], row["name"])
