"""The drawing of a recipe page, its print sheet and its tables."""

from __future__ import annotations

from datetime import date

from starlette.requests import Request
from starlette.responses import Response

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import section_svg
from entremetry.publish.typesetting import Paper
from entremetry.usecases.library import dessert, kitchen_text
from entremetry.usecases.publication_files import paper_files, table_files
from entremetry.web.answers import answer
from entremetry.web.choosing import choices
from entremetry.web.workbench import workbench_of
from entremetry.words import say

WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


def show_drawing(request: Request) -> Response:
    """GET /desserts/{id}/section.svg: the drawing that the page's structured data name."""
    sheet = _sheet(request)
    drawing = section_svg(
        sheet.section, title=say("Section of {name}", name=sheet.name), standalone=True
    )
    return Response(drawing, media_type="image/svg+xml; charset=utf-8")


def show_print_sheet(request: Request) -> Response:
    """GET /desserts/{id}/print.pdf: the recipe on paper, A4 unless `paper=letter` is asked for."""
    sheet = _sheet(request)
    letter = request.query_params.get("paper") == Paper.LETTER
    paper = Paper.LETTER if letter else Paper.A4
    return _file(paper_files(sheet, date.today(), paper), f"{sheet.id}.pdf", "application/pdf")


def show_quantities(request: Request) -> Response:
    """GET /desserts/{id}/quantities.xlsx: the quantities for a spreadsheet."""
    sheet = _sheet(request)
    return _file(table_files(sheet, date.today()), f"{sheet.id}.xlsx", WORKBOOK)


def _file(files: dict[str, bytes], name: str, kind: str) -> Response:
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(files[name], media_type=kind, headers=headers)


def _sheet(request: Request) -> BatchSheet:
    library = workbench_of(request).library
    stored = dessert(library, request.path_params["id"])
    asked = choices(request.query_params)
    return answer(stored.text, stored.id, asked, kitchen_text(library)).sheet
