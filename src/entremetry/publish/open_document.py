"""Tables as a spreadsheet of OpenDocument (opendocument_13), the format of free office programs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from entremetry.publish.markup import escaped
from entremetry.publish.tables import Cell, Table, width
from entremetry.publish.typesetting import EPOCH, line
from entremetry.words import current

KIND = "application/vnd.oasis.opendocument.spreadsheet"
NAMES = " ".join(
    f'xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for short, name in {
        "office": "office",
        "style": "style",
        "table": "table",
        "text": "text",
        "meta": "meta",
        "manifest": "manifest",
        "fo": "xsl-fo-compatible",
    }.items()
)
ELEMENTS = 'xmlns:dc="http://purl.org/dc/elements/1.1/"'
XML = '<?xml version="1.0" encoding="UTF-8"?>\n'
LETTER = 2.1
"""Width of a letter in a column. [mm]"""


def ods(tables: Sequence[Table], *, title: str, author: str = "", on: date | None = None) -> bytes:
    """A sheet for each table. Texts are texts: a formula would stand in an attribute of its own."""
    parts = {
        "mimetype": KIND,
        "content.xml": content(tables),
        "styles.xml": f'{XML}<office:document-styles {NAMES} office:version="1.3"/>',
        "meta.xml": meta(title, author, on or EPOCH),
        "META-INF/manifest.xml": manifest(),
    }
    file = BytesIO()
    with ZipFile(file, "w") as archive:
        for name, text in parts.items():
            entry = ZipInfo(name, date_time=(1980, 1, 1, 0, 0, 0))
            entry.compress_type = ZIP_STORED if name == "mimetype" else ZIP_DEFLATED
            archive.writestr(entry, text)
    return file.getvalue()


def content(tables: Sequence[Table]) -> str:
    """The document itself."""
    widths = {width(table, k) for table in tables for k in range(len(table.headings))}
    columns = "".join(
        f'<style:style style:name="wide{letters}" style:family="table-column">'
        f'<style:table-column-properties style:column-width="{letters * LETTER:.1f}mm"/>'
        "</style:style>"
        for letters in sorted(widths)
    )
    wrapped = '<style:table-cell-properties fo:wrap-option="wrap" style:vertical-align="top"/>'
    cells = (
        f'<style:style style:name="body" style:family="table-cell">{wrapped}</style:style>'
        f'<style:style style:name="head" style:family="table-cell">{wrapped}'
        '<style:text-properties fo:font-weight="bold"/></style:style>'
    )
    return (
        f'{XML}<office:document-content {NAMES} office:version="1.3">'
        f"<office:automatic-styles>{columns}{cells}</office:automatic-styles>"
        f"<office:body><office:spreadsheet>{''.join(page(table) for table in tables)}"
        "</office:spreadsheet></office:body></office:document-content>"
    )


def page(table: Table) -> str:
    """One sheet, whose headings are printed again on each page."""
    columns = "".join(
        f'<table:table-column table:style-name="wide{width(table, k)}"/>'
        for k in range(len(table.headings))
    )
    head = row(table.headings, "head")
    rows = "".join(row(cells, "body") for cells in table.rows)
    return (
        f'<table:table table:name="{escaped(table.name)}">{columns}'
        f"<table:table-header-rows>{head}</table:table-header-rows>{rows}</table:table>"
    )


def row(cells: Sequence[Cell], style: str) -> str:
    """One row."""
    return f"<table:table-row>{''.join(written(cells, style))}</table:table-row>"


def written(cells: Sequence[Cell], style: str) -> Iterator[str]:
    """Cells with their type and value."""
    for cell in cells:
        if cell is None:
            yield "<table:table-cell/>"
            continue
        kind = 'string"' if isinstance(cell, str) else f'float" office:value="{cell}"'
        yield (
            f'<table:table-cell table:style-name="{style}" office:value-type="{kind}>'
            f"<text:p>{escaped(str(cell))}</text:p></table:table-cell>"
        )


def meta(title: str, author: str, day: date) -> str:
    """Who made what, and when."""
    return (
        f'{XML}<office:document-meta {NAMES} {ELEMENTS} office:version="1.3"><office:meta>'
        f"<meta:generator>Entremetry</meta:generator><dc:title>{escaped(line(title))}</dc:title>"
        f"<dc:creator>{escaped(line(author))}</dc:creator>"
        f"<meta:creation-date>{day.isoformat()}T00:00:00</meta:creation-date>"
        f"<dc:language>{current().tag}</dc:language></office:meta></office:document-meta>"
    )


def manifest() -> str:
    """What the archive holds."""
    entries = "".join(
        f'<manifest:file-entry manifest:full-path="{path}" manifest:media-type="{kind}"/>'
        for path, kind in {
            "/": KIND,
            "content.xml": "text/xml",
            "styles.xml": "text/xml",
            "meta.xml": "text/xml",
        }.items()
    )
    return f'{XML}<manifest:manifest {NAMES} manifest:version="1.3">{entries}</manifest:manifest>'
