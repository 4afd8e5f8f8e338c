"""What a dessert costs: prices typed beside its ingredients, and what comes of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, ClassVar, cast
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.errors import Conflict, DocumentError, EntremetryError, QuantityError
from entremetry.publish.typography import grams
from entremetry.usecases.labelling import Prices, label_of_text
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.usecases.planned_hands import served_in
from entremetry.usecases.price_list import STARTER, price_list, save_price_list, undo_price_list
from entremetry.web.answers import Choices
from entremetry.web.choosing import choices
from entremetry.web.cost_form import (
    PACK,
    PRICE,
    WHOLE,
    by_field,
    empty_halves,
    text_from,
    typed_from,
)
from entremetry.web.forms import Form
from entremetry.web.rendering import rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.wording import when
from entremetry.web.workbench import workbench_of
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.labels.cost import Cost
    from entremetry.larder.larder import Larder
    from entremetry.store import StoredDocument
    from entremetry.store.library import Library

CARRIED = ("pieces", "mould", "plan")
DRIVERS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceRow:
    """An ingredient with its fields as they were typed."""

    id: str
    name: str
    mass: str
    pack: str
    price: str
    pack_fault: str = ""
    price_fault: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CostPage:
    """Context of cost.html; `whole` are fields of the whole list: name, words, text, fault."""

    template: ClassVar[str] = "cost.html"
    id: str
    name: str
    pieces: str
    carried: tuple[tuple[str, str], ...]
    started_from: int
    can_undo: bool
    plan: str = ""
    plans: tuple[tuple[str, str], ...] = ()
    rows: tuple[PriceRow, ...] = ()
    whole: tuple[tuple[str, str, str, str], ...] = ()
    cost: Cost | None = None
    drivers: int = DRIVERS
    trouble: str = ""


def show_cost(request: Request) -> Response:
    """GET /desserts/{id}/cost"""
    library = workbench_of(request).library
    return rendered(request, _page(request, request.query_params, price_list(library).text, {}))


def save(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/cost: the prices typed become the next state of the list."""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    before, fields = price_list(library).text, form.fields
    ids = [
        each.id for each in _cost(stored.text, stored.id, Choices(), kitchen, STARTER).ingredients
    ]
    text, origin = text_from(before, fields, ids, _larder(stored, kitchen))
    faults = empty_halves(fields, ids)
    try:
        if not faults:
            _cost(stored.text, stored.id, Choices(), kitchen, text)
            started_from = form.whole_number("started_from") or 0
            save_price_list(library, text, started_from=started_from)
    except DocumentError as error:
        faults = by_field(error.faults, origin)
    except Conflict as error:
        page = _page(request, fields, before, {}, typed=fields)
        return rendered(request, replace(page, trouble=f"{error}."), status=409)
    if faults:
        return rendered(request, _page(request, fields, before, faults, typed=fields), status=422)
    return RedirectResponse(_address(request, fields), status_code=303)


def undo(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/cost/undo: the list as it was before the last change."""
    started_from = form.whole_number("started_from") or 0
    undo_price_list(workbench_of(request).library, started_from=started_from)
    return RedirectResponse(_address(request, form.fields), status_code=303)


def _page(
    request: Request,
    asked: Mapping[str, str],
    text: str,
    faults: Mapping[str, str],
    *,
    typed: Mapping[str, str] | None = None,
) -> CostPage:
    """The page for a list; `typed` are fields that are not in the list yet."""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    listed = price_list(library)
    page = CostPage(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        pieces=asked.get("pieces", ""),
        carried=tuple((name, asked[name]) for name in CARRIED if asked.get(name)),
        started_from=listed.revision,
        can_undo=listed.can_undo,
        trouble=faults.get("", ""),
        plan=asked.get("plan", ""),
        plans=_plans(library, stored.id),
    )
    try:
        plan = _plan_text(library, page.plan)
        cost = _cost(stored.text, stored.id, choices(asked), kitchen, text, plan)
    except EntremetryError as error:
        return replace(page, trouble=f"{error}.")
    ids = [each.id for each in cost.ingredients]
    fields = typed or typed_from(text, ids, _larder(stored, kitchen))
    return replace(
        page,
        pieces=page.pieces or str(cost.pieces),
        cost=cost,
        rows=tuple(
            _row(each.id, each.name, each.mass, fields, faults) for each in cost.ingredients
        ),
        whole=tuple(
            (name, say(words), fields.get(name, ""), faults.get(name, ""))
            for name, words in WHOLE.items()
        ),
    )


def _row(
    id: str, name: str, mass: float, fields: Mapping[str, str], faults: Mapping[str, str]
) -> PriceRow:
    return PriceRow(
        id=id,
        name=name,
        mass=grams(mass),
        pack=fields.get(PACK + id, ""),
        price=fields.get(PRICE + id, ""),
        pack_fault=faults.get(PACK + id, ""),
        price_fault=faults.get(PRICE + id, ""),
    )


@kept_by_language(64)
def _cost(
    text: str,
    file: str,
    chosen: Choices,
    kitchen: str | None,
    prices: str,
    plan: str | None = None,
) -> Cost:
    drafted = label_of_text(
        text,
        file=file,
        pieces=chosen.pieces,
        mould=chosen.mould,
        kitchen_text=kitchen,
        prices=Prices(text=prices, shared=True, plan=plan),
    )
    return cast("Cost", drafted.cost)


def _plans(library: Library, dessert_id: str) -> tuple[tuple[str, str], ...]:
    """Numbers and names of the kept plans that have tasks for a dessert."""
    return tuple(
        (str(kept.id), say("{plan}, {moment}", plan=kept.name, moment=when(kept.made_at)))
        for kept in library.plans.all()
        if dessert_id in _served(kept.text)
    )


@kept_by_language(64)
def _served(text: str) -> frozenset[str]:
    try:
        return served_in(text)
    except EntremetryError:
        return frozenset()


def _plan_text(library: Library, number: str) -> str | None:
    """Text of the plan that was chosen; EntremetryError if there is none of that number."""
    if not number:
        return None
    if not (number.isascii() and number.isdigit() and len(number) <= 9):
        raise QuantityError(
            say("plan '{number}'", number=number[:40]), say("the number of a plan that is kept")
        )
    return library.plans.plan(int(number)).text


def _larder(stored: StoredDocument, kitchen: str | None) -> Larder:
    """The larder with what the kitchen and the dessert have of their own."""
    return _larder_of(stored.text, stored.id, kitchen)


@kept_by_language(32)
def _larder_of(text: str, file: str, kitchen: str | None) -> Larder:
    from entremetry.usecases.batch import reckoned, surroundings

    return reckoned(text, file, surroundings(kitchen, "kitchen")).dessert.larder


def _address(request: Request, fields: Mapping[str, str]) -> str:
    chosen = {name: fields[name] for name in CARRIED if fields.get(name)}
    base = f"/desserts/{request.path_params['id']}/cost"
    return f"{base}?{urlencode(chosen)}" if chosen else base
