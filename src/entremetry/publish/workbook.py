"""Tables as a workbook of Office Open XML (XLSX)."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, time
from io import BytesIO
from typing import TYPE_CHECKING, Any

from entremetry.publish.tables import Table, width
from entremetry.publish.typesetting import EPOCH, line

if TYPE_CHECKING:
    from xlsxwriter import Workbook

LONGEST_PROPERTY = 250


def xlsx(tables: Sequence[Table], *, title: str, author: str = "", on: date | None = None) -> bytes:
    """A sheet for each table. Every text is a text cell: none is read as formula or as link."""
    from xlsxwriter import Workbook

    file = BytesIO()
    with Workbook(file, {"in_memory": True}) as book:
        made = datetime.combine(on or EPOCH, time(), UTC)
        words = {"title": _property(title), "author": _property(author), "created": made}
        book.set_properties(words)
        for table in tables:
            _write(book, table)
    return file.getvalue()


def _property(text: str) -> str:
    return line(text)[:LONGEST_PROPERTY]


def _write(book: Workbook, table: Table) -> None:
    page = book.add_worksheet(table.name)
    head = book.add_format({"bold": True, "text_wrap": True, "valign": "top", "bottom": 1})
    body = book.add_format({"text_wrap": True, "valign": "top"})
    page.freeze_panes(1, 0)
    page.repeat_rows(0)
    page.set_landscape()
    page.fit_to_pages(1, 0)
    for column, heading in enumerate(table.headings):
        page.set_column(column, column, width(table, column))
        page.write_string(0, column, heading, head)
    for number, row in enumerate(table.rows, start=1):
        for column, cell in enumerate(row):
            _put(page, number, column, cell, body)


def _put(page: Any, row: int, column: int, cell: str | float | int | None, form: Any) -> None:
    if isinstance(cell, str):
        page.write_string(row, column, cell, form)
    elif cell is not None:
        page.write_number(row, column, cell, form)
