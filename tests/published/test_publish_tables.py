"""Spreadsheets read back by libraries we did not write, one for each format."""

from __future__ import annotations

from datetime import date
from io import BytesIO
from typing import Any
from zipfile import ZipFile

import pytest
from odfdo import Document
from openpyxl import load_workbook

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish.open_document import KIND, ods
from entremetry.publish.tables import Table, tables
from entremetry.publish.workbook import xlsx
from unit.publish.foreign import TEXTS, foreign
from unit.publish.sheets import SHEET

DAY = date(2026, 3, 1)
SHEETS = {"hand-made": SHEET, **{name: foreign(text) for name, text in TEXTS.items()}}


def as_read(table: Table) -> list[list[Any]]:
    """Headings and rows as a reader gives them: an empty text is an empty cell."""
    rows = [list(table.headings), *(list(row) for row in table.rows)]
    return [[None if cell == "" else cell for cell in row] for row in rows]


@pytest.mark.parametrize("name", SHEETS)
def test_a_workbook_holds_the_same_texts_and_numbers(name: str) -> None:
    sheet: BatchSheet = SHEETS[name]
    book = load_workbook(BytesIO(xlsx(tables(sheet), title=sheet.name, on=DAY)))
    assert book.sheetnames == [table.name for table in tables(sheet)]
    for table in tables(sheet):
        page = book[table.name]
        found = [[cell.value or (0 if cell.value == 0 else None) for cell in r] for r in page.rows]
        assert found == as_read(table)
        for row in page.rows:
            for cell in row:
                assert cell.data_type in {"s", "n", "inlineStr"}
                assert cell.hyperlink is None
                assert isinstance(cell.value, str) == (cell.data_type == "s")


@pytest.mark.parametrize("name", SHEETS)
def test_an_open_document_holds_the_same_texts_and_numbers(name: str) -> None:
    sheet: BatchSheet = SHEETS[name]
    data = ods(tables(sheet), title=sheet.name, on=DAY)
    pages = Document(BytesIO(data)).body.get_tables()
    assert [page.name for page in pages] == [table.name for table in tables(sheet)]
    for page, table in zip(pages, tables(sheet), strict=True):
        found = [
            [float(c) if c is not None and not isinstance(c, str) else c or None for c in row]
            for row in page.get_values()
        ]
        wanted = [
            [float(cell) if isinstance(cell, int | float) else cell for cell in row]
            for row in as_read(table)
        ]
        assert found == wanted
    content = ZipFile(BytesIO(data)).read("content.xml").decode()
    assert "table:formula" not in content


def test_an_open_document_names_its_kind_first_and_unpacked() -> None:
    data = ods(tables(SHEET), title="Dome", on=DAY)
    first = ZipFile(BytesIO(data)).infolist()[0]
    assert (first.filename, first.compress_type) == ("mimetype", 0)
    assert data[38 : 38 + len(KIND)] == KIND.encode()


def test_a_workbook_says_who_made_it_and_when() -> None:
    written = xlsx(tables(SHEET), title=SHEET.name, author="A. Baker", on=DAY)
    properties = load_workbook(BytesIO(written)).properties
    assert (properties.title, properties.creator) == (SHEET.name, "A. Baker")
    assert properties.created.date() == DAY
