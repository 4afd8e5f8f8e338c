"""Rebalance a component of a dessert: what to keep, what to change, and what comes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, ClassVar

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import EntremetryError
from entremetry.larder.spoken_name import ingredient_name
from entremetry.publish.typography import grams
from entremetry.store import StoredDocument
from entremetry.usecases.library import (
    dessert,
    dessert_at,
    dessert_name,
    kitchen_text,
    save_dessert,
)
from entremetry.web.forms import Form
from entremetry.web.rebalance_words import LineRow, MeasureRow, line_rows, measure_rows
from entremetry.web.rendering import rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.workbench import workbench_of
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.adapt.asking import Asked
    from entremetry.adapt.rebalanced import Rebalanced
    from entremetry.dessert.dessert import Dessert, Line

KEEP, PIN = "keep-", "pin-"
ONE_LINE = 120  # characters that a field is read up to


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Something to choose: its value, its words, and whether it is chosen."""

    value: str
    words: str
    chosen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RebalancePage:
    """Context of rebalance.html: what was asked, and what comes of it if anything was.

    `sent` are the fields as they were asked, to be asked again when the result is saved.
    """

    template: ClassVar[str] = "rebalance.html"
    id: str
    name: str
    started_from: int
    components: tuple[Choice, ...] = ()
    component: str = ""
    measures: tuple[Choice, ...] = ()
    keeps: tuple[Choice, ...] = ()
    pins: tuple[Choice, ...] = ()
    swappable: tuple[Choice, ...] = ()
    swap_to: str = ""
    value: str = ""
    rules: tuple[Choice, ...] = ()
    sent: tuple[tuple[str, str], ...] = ()
    lines: tuple[LineRow, ...] = ()
    wished: tuple[MeasureRow, ...] = ()
    others: tuple[MeasureRow, ...] = ()
    gave_way: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    conflict: tuple[str, ...] = ()
    proved: bool = True
    changed: bool = False
    trouble: str = ""


def show_rebalance(request: Request) -> Response:
    """GET /desserts/{id}/rebalance"""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    return rendered(request, _page(stored, kitchen, dict(request.query_params)))


def save(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/rebalance: worked out once more and saved as a new revision."""
    library = workbench_of(request).library
    dessert_id = str(request.path_params["id"])
    kitchen, started_from = kitchen_text(library), form.whole_number("started_from") or 0
    text = dessert_at(library, dessert_id, started_from)
    result = _result(text, dessert_id, kitchen, asked_of(form.fields))
    if not result.feasible:
        page = _page(dessert(library, dessert_id), kitchen, form.fields)
        return rendered(request, page, status=422)
    save_dessert(library, dessert_id, result.text, started_from=started_from)
    return RedirectResponse(f"/desserts/{dessert_id}", status_code=303)


def asked_of(fields: Mapping[str, str]) -> Asked:
    """What the fields of the form ask for.

    Raises
    ------
    QuantityError
        If a swap cannot be read.
    """
    from entremetry.adapt.asking import Asked
    from entremetry.adapt.swap import read_swap
    from entremetry.physics.gelatine import BloomRule

    target, value = _line(fields, "target"), _line(fields, "value")
    old, new = _line(fields, "swap_from"), _line(fields, "swap_to")
    rule = BloomRule.SQUARE_ROOT if _line(fields, "rule") == "root" else BloomRule.LINEAR
    return Asked(
        component=_line(fields, "component"),
        targets=(f"{target}={value}",) if target and value else (),
        keeps=_named(fields, KEEP),
        pins=_named(fields, PIN),
        swaps=(read_swap(f"{old}={new}"),) if old and new else (),
        rule=rule,
    )


def _page(stored: StoredDocument, kitchen: str | None, fields: Mapping[str, str]) -> RebalancePage:
    """Page for what was asked; what stands in the way is told on it."""
    name = dessert_name(stored.id, stored.text)
    bare = RebalancePage(id=stored.id, name=name, started_from=stored.revision.number)
    try:
        opened = _opened(stored.text, stored.id, kitchen)
        fields = {**fields, "component": _line(fields, "component") or opened.components[0].id}
        asking = replace(bare, **_form(opened, fields))
    except EntremetryError as error:
        return replace(bare, trouble=str(error))
    if "work" not in fields:
        return asking
    try:
        return _answered(asking, _result(stored.text, stored.id, kitchen, asked_of(fields)))
    except EntremetryError as error:
        return replace(asking, trouble=str(error))


def _answered(page: RebalancePage, result: Rebalanced) -> RebalancePage:
    rows = measure_rows(result)
    return replace(
        page,
        lines=line_rows(result) if result.feasible else (),
        wished=tuple(row for row in rows if row.wish) if result.feasible else (),
        others=tuple(row for row in rows if not row.wish) if result.feasible else (),
        gave_way=tuple(row.words for row in rows if row.wish and not row.held),
        cautions=tuple(change.text for change in result.cautions),
        conflict=result.conflict.demands if result.conflict else (),
        proved=result.conflict is None or result.conflict.proved,
        changed=bool(result.changes),
    )


def _form(opened: Dessert, fields: Mapping[str, str]) -> dict[str, Any]:
    """Fields of the form, with what was chosen in them."""
    from entremetry.adapt.behaviour import component_of
    from entremetry.formula.measures import MEASURES

    component = component_of(opened, fields["component"])
    target, old = _line(fields, "target"), _line(fields, "swap_from")
    return {
        "components": tuple(
            Choice(value=each.id, words=each.name, chosen=each.id == component.id)
            for each in opened.components
        ),
        "component": component.id,
        "measures": tuple(
            Choice(
                value=n,
                words=say("{measure} ({unit})", measure=m.said, unit=m.unit),
                chosen=n == target,
            )
            for n, m in MEASURES.items()
        ),
        "keeps": tuple(
            Choice(value=f"{KEEP}{n}", words=m.said, chosen=f"{KEEP}{n}" in fields)
            for n, m in MEASURES.items()
        ),
        "pins": tuple(
            Choice(
                value=f"{PIN}{line.name}", words=_words(line), chosen=f"{PIN}{line.name}" in fields
            )
            for line in component.lines
        ),
        "swappable": tuple(
            Choice(value=line.name, words=_words(line), chosen=line.name == old)
            for line in component.lines
            if line.ingredient is not None
        ),
        "swap_to": _line(fields, "swap_to"),
        "value": _line(fields, "value"),
        "rules": (
            Choice(
                value="linear", words=say("mass times Bloom"), chosen=fields.get("rule") != "root"
            ),
            Choice(value="root", words=say("gel strength"), chosen=fields.get("rule") == "root"),
        ),
        "sent": tuple((n, v) for n, v in fields.items() if n not in ("token", "started_from")),
    }


def _words(line: Line) -> str:
    name = ingredient_name(line.ingredient) if line.ingredient else line.name
    return say("{name}, {mass}", name=name, mass=grams(line.mass))


def _line(fields: Mapping[str, str], name: str) -> str:
    return fields.get(name, "").strip()[:ONE_LINE]


def _named(fields: Mapping[str, str], prefix: str) -> tuple[str, ...]:
    return tuple(name.removeprefix(prefix) for name in fields if name.startswith(prefix))


@kept_by_language(32)
def _result(text: str, file: str, kitchen: str | None, asked: Asked) -> Rebalanced:
    from entremetry.usecases.rebalancing import rebalance_of_text

    return rebalance_of_text(text, asked, file=file, kitchen_text=kitchen)


@kept_by_language(32)
def _opened(text: str, file: str, kitchen: str | None) -> Dessert:
    from entremetry.usecases.rebalancing import dessert_of_text

    return dessert_of_text(text, file=file, kitchen_text=kitchen)
