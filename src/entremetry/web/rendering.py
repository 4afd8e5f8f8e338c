"""Pages made from templates: each page is a frozen context that names its template."""

from __future__ import annotations

from dataclasses import fields
from functools import cache
from pathlib import Path
from typing import Any, ClassVar, Protocol

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse

from entremetry.labels.language_words import allergen_code
from entremetry.larder.spoken_name import ingredient_name
from entremetry.publish.page_words import filled, spoken, spoken_as, spoken_count
from entremetry.publish.typography import (
    grams,
    hours,
    millilitres,
    millimetres,
    per_cent,
    typeset,
)
from entremetry.web import larder_words, wording
from entremetry.web.assets import address
from entremetry.web.speech import others
from entremetry.words import current, decimal, say

FOLDER = Path(__file__).parent / "templates"
HTMX = "HX-Request"
"""Header of a request for a part of a page that is already there."""


class Page(Protocol):
    """What a page shows; its fields are all that its template may name."""

    template: ClassVar[str]
    __dataclass_fields__: ClassVar[dict[str, Any]]


@cache
def environment() -> Environment:
    """Return the templates, compiled once, that escape everything and refuse unknown names."""
    made = Environment(
        loader=FileSystemLoader(FOLDER),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.filters.update(
        grams=grams,
        hours=hours,
        millimetres=millimetres,
        per_cent=per_cent,
        typeset=typeset,
        millilitres=millilitres,
        density=wording.density,
        figure=wording.figure,
        interval=wording.interval,
        cited=wording.cited,
        standing=wording.standing,
        when=wording.when,
        allergen=allergen_code,
        kind=larder_words.kind,
        group=larder_words.group,
        tag=larder_words.tag,
        measure=larder_words.measure,
    )
    made.globals.update(
        asset=address,
        counted=wording.counted,
        decimal=decimal,
        drift=wording.drift,
        fact_names=larder_words.facts,
        filled=filled,
        ingredient_name=ingredient_name,
        other_languages=others,
        plainly=say,
        say=spoken,
        say_as=spoken_as,
        say_count=spoken_count,
        spoken_language=current,
    )
    return made


def fragment(template: str, **shown: object) -> Markup:
    """Part of a page that is the same for whoever asks."""
    return Markup(environment().get_template(template).render(**shown))


def page_text(page: Page, *, token: str, path: str) -> str:
    """Whole page as it is sent; forms in it bear the token, the menu marks the path."""
    shown = {field.name: getattr(page, field.name) for field in fields(page)}
    return environment().get_template(page.template).render(**shown, token=token, path=path)


def rendered(request: Request, page: Page, *, status: int = 200) -> HTMLResponse:
    """Answer a request with a page."""
    token = request.app.state.workbench.token
    return HTMLResponse(page_text(page, token=token, path=request.url.path), status_code=status)
