from __future__ import annotations

from io import BytesIO

import pytest

from entremetry.publish.open_document import ods
from entremetry.publish.tables import LONGEST, tables
from entremetry.publish.typesetting import line
from entremetry.publish.workbook import xlsx
from unit.publish.foreign import TEXTS, foreign
from unit.publish.sheets import SHEET


def test_there_is_a_view_for_each_question_with_units_in_its_headings() -> None:
    assert [table.name for table in tables(SHEET)] == [
        "Quantities",
        "Shopping",
        "Fill steps",
        "Method",
        "Take care",
    ]
    for table in tables(SHEET):
        assert all(len(row) == len(table.headings) for row in table.rows)
        for row in table.rows:
            for heading, cell in zip(table.headings, row, strict=True):
                numeric = heading.endswith((" (g)", " (mm)", " (%)")) or heading == "Step"
                assert cell is None or isinstance(cell, int | float) is numeric, heading


def test_masses_are_those_of_the_sheet() -> None:
    quantities, shopping, filling, *_ = tables(SHEET)
    masses = [line.mass * 1e3 for component in SHEET.components for line in component.lines]
    assert [row[2] for row in quantities.rows] == pytest.approx(masses, abs=0.005)
    assert [row[1] for row in shopping.rows] == pytest.approx([300.0, 6.0, 165.0])
    assert [row[2] for row in filling.rows] == [38.0, None, None]


def test_a_text_longer_than_a_cell_goes_on_below() -> None:
    text = "word " * 10_000
    whole = line(text)
    rows = next(table for table in tables(foreign(text)) if table.name == "Take care").rows
    assert "".join(str(row[0]) for row in rows) == whole
    assert all(len(str(row[0])) <= LONGEST for row in rows)


@pytest.mark.parametrize("write", [xlsx, ods])
def test_the_same_tables_give_the_same_bytes(write: object) -> None:
    assert callable(write)
    one, two = (write(tables(SHEET), title=SHEET.name, author="A. Baker") for _ in range(2))
    assert one == two
    assert BytesIO(one).read(2) == b"PK"


@pytest.mark.parametrize("name", TEXTS)
def test_no_row_is_lost_to_a_hostile_text(name: str) -> None:
    quantities, *_ = tables(foreign(TEXTS[name]))
    assert [row[2] for row in quantities.rows if row[2] is not None] == [190.0]
