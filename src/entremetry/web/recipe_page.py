"""The recipe page as it would be published, and its drawing as a file."""

from __future__ import annotations

from datetime import date

from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import section_svg
from entremetry.usecases.library import dessert, kitchen_text
from entremetry.usecases.publishing import published_files
from entremetry.web.answers import answer
from entremetry.web.choosing import choices
from entremetry.web.page_policy import policy_of_document
from entremetry.web.workbench import workbench_of


def show_recipe(request: Request) -> Response:
    """GET /desserts/{id}/page: the self-contained page, allowed its own style and no script."""
    sheet = _sheet(request)
    page = published_files(sheet, date.today())[f"{sheet.id}.html"]
    return HTMLResponse(page, headers={"Content-Security-Policy": policy_of_document(page)})


def show_drawing(request: Request) -> Response:
    """GET /desserts/{id}/section.svg: the drawing that the page's structured data name."""
    sheet = _sheet(request)
    drawing = section_svg(sheet.section, title=f"Section of {sheet.name}", standalone=True)
    return Response(drawing, media_type="image/svg+xml; charset=utf-8")


def _sheet(request: Request) -> BatchSheet:
    library = workbench_of(request).library
    stored = dessert(library, request.path_params["id"])
    asked = choices(request.query_params)
    return answer(stored.text, stored.id, asked, kitchen_text(library)).sheet
