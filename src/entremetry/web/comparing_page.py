"""Two desserts of the library side by side."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import Response

from entremetry.errors import EntremetryError
from entremetry.usecases.library import dessert, desserts, kitchen_text, listed_name
from entremetry.web.answers import small_drawing
from entremetry.web.rendering import rendered
from entremetry.web.workbench import workbench_of

if TYPE_CHECKING:
    from entremetry.usecases.comparing import Comparison


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparePage:
    """Context of compare.html: what may be chosen, and what was."""

    template: ClassVar[str] = "compare.html"
    known: tuple[tuple[str, str], ...]
    one: str
    other: str
    comparison: Comparison | None = None
    drawings: tuple[Markup, ...] = ()
    trouble: str = ""


def show_comparison(request: Request) -> Response:
    """GET /compare?one=ID&other=ID"""
    from entremetry.usecases.comparing import compare

    library, asked = workbench_of(request).library, request.query_params
    kitchen = kitchen_text(library)
    known = tuple((each.id, listed_name(each.id, each.text)) for each in desserts(library))
    ids = [id_ for id_, _ in known]
    one = asked.get("one", "") or (ids[0] if ids else "")
    other = asked.get("other", "") or next((id_ for id_ in ids if id_ != one), one)
    page = ComparePage(known=known, one=one, other=other)
    if not ids:
        return rendered(request, page)
    texts = [dessert(library, id_).text for id_ in (one, other)]
    try:
        found = compare(*texts, kitchen_text=kitchen, files=(one, other))
        drawings = tuple(
            small_drawing(text, id_, kitchen) for text, id_ in zip(texts, (one, other), strict=True)
        )
    except EntremetryError as error:
        return rendered(request, ComparePage(known=known, one=one, other=other, trouble=str(error)))
    return rendered(
        request,
        ComparePage(known=known, one=one, other=other, comparison=found, drawings=drawings),
    )
