"""Adapt a dessert to another mould or number of pieces, and keep it as a new one."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, ClassVar

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.dessert.translating import settled
from entremetry.documents import edited
from entremetry.errors import EntremetryError, QuantityError
from entremetry.store import StoredDocument
from entremetry.usecases.adapting import Adaptation, adapt_of_text
from entremetry.usecases.library import add_dessert, dessert, dessert_name, kitchen_text
from entremetry.web.answers import Choices, answer
from entremetry.web.choosing import choices
from entremetry.web.dessert_page import tiles
from entremetry.web.forms import Form
from entremetry.web.mould_form import KINDS, WORDS, OwnKind, own_mould
from entremetry.web.rendering import rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.workbench import workbench_of
from entremetry.words import say

if TYPE_CHECKING:
    from entremetry.adapt.rebalanced import Adapted, Change
    from entremetry.dessert.batch_sheet import BatchSheet

SENT = ("mould", "own", *WORDS, "cavities", "pieces")
LONGEST = 120  # characters of a name and of an id


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """A dessert before or after: its drawing, and its numbers by name."""

    name: str
    drawing: Markup
    numbers: Mapping[str, str]
    components: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class AdaptPage:
    """Context of adapt.html; `fields` are as they were typed, `faults` by field."""

    template: ClassVar[str] = "adapt.html"
    id: str
    name: str
    tiles: Markup
    kinds: tuple[OwnKind, ...]
    measures: Mapping[str, str]
    fields: Mapping[str, str]
    faults: Mapping[str, str]
    sent: tuple[tuple[str, str], ...] = ()
    before: Side | None = None
    after: Side | None = None
    changes: tuple[Change, ...] = ()
    cautions: tuple[Change, ...] = ()
    names: Mapping[str, str] = field(default_factory=dict)
    new_name: str = ""
    trouble: str = ""


def show_adapt(request: Request) -> Response:
    """GET /desserts/{id}/adapt"""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    return rendered(request, _page(stored, kitchen, dict(request.query_params)))


def keep(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/adapt: worked out once more and kept as a new dessert."""
    library = workbench_of(request).library
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    fields = {**form.fields, "work": "1"}
    page = _page(stored, kitchen, fields)
    if page.after is None:
        return rendered(request, page, status=422)
    name = form.line("new_name")[:LONGEST]
    new_id = id_of(name)
    if not new_id:
        fault = {"new_name": say("Give it a name with a letter or a figure in it.")}
        return rendered(request, replace(page, faults=fault, new_name=name), status=422)
    text = _adapted(stored.text, stored.id, _asked(fields), kitchen).text
    text = settled(edited(edited(text, ("name",), name), ("id",), new_id))
    try:
        kept = add_dessert(library, text)
    except EntremetryError as error:
        fault = {"new_name": f"{error}."}
        return rendered(request, replace(page, faults=fault, new_name=name), status=422)
    return RedirectResponse(f"/desserts/{kept.id}", status_code=303)


def id_of(name: str) -> str:
    """Id of a name: its letters and figures without accents, small, with hyphens between."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().casefold()
    return "-".join(re.findall(r"[a-z0-9]+", plain))[:80].strip("-")


def _page(stored: StoredDocument, kitchen: str | None, fields: Mapping[str, str]) -> AdaptPage:
    """Page for what was asked; what stands in the way is told on it."""
    page = AdaptPage(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        tiles=tiles(kitchen, fields.get("mould", ""), say("The mould it has")),
        kinds=KINDS,
        measures=WORDS,
        fields=fields,
        faults=own_mould(fields).faults,
        sent=tuple((name, fields[name]) for name in SENT if fields.get(name)),
    )
    if "work" not in fields or page.faults:
        return page
    try:
        return _answered(page, stored, kitchen, _asked(fields))
    except EntremetryError as error:
        return replace(page, trouble=f"{error}.")


def _asked(fields: Mapping[str, str]) -> Adaptation:
    """What the fields ask for; QuantityError if that is nothing."""
    chosen, own = choices(fields), own_mould(fields).text
    if not (own or chosen.mould or chosen.pieces):
        raise QuantityError(
            say("nothing to adapt to"), say("another mould, a size or a number of pieces")
        )
    return Adaptation(mould=None if own else chosen.mould, own=own or None, pieces=chosen.pieces)


@kept_by_language(32)
def _adapted(text: str, file: str, asked: Adaptation, kitchen: str | None) -> Adapted:
    """The new document, kept while it is asked for again; a glass is asked for as a vessel."""
    from entremetry.usecases.batch import moulds

    vessels = {mould.id for mould in moulds(kitchen) if mould.vessel}
    if asked.mould in vessels:
        asked = replace(asked, mould=None, vessel=asked.mould)
    return adapt_of_text(text, asked, file=file, kitchen_text=kitchen)


def _answered(
    page: AdaptPage, stored: StoredDocument, kitchen: str | None, asked: Adaptation
) -> AdaptPage:
    adapted = _adapted(stored.text, stored.id, asked, kitchen)
    after = _side(adapted.text, stored.id, kitchen)
    name = after.name if after.name != page.name else say("{name}, adapted", name=after.name)
    return replace(
        page,
        before=_side(stored.text, stored.id, kitchen),
        after=after,
        names=after.components,
        changes=tuple(each for each in adapted.changes if each.kind != "caution"),
        cautions=tuple(each for each in adapted.changes if each.kind == "caution"),
        new_name=page.fields.get("new_name", "") or name,
    )


def _side(text: str, file: str, kitchen: str | None) -> Side:
    found = answer(text, file, Choices(), kitchen)
    return Side(
        name=found.sheet.name,
        drawing=found.drawing,
        numbers=_numbers(found.sheet),
        components={each.id: each.name for each in found.sheet.components},
    )


def _numbers(sheet: BatchSheet) -> dict[str, str]:
    from entremetry.publish.typography import grams, millilitres

    total = sum(component.mass.value for component in sheet.components)
    return {
        say("Mould"): sheet.mould.name,
        say("One cavity holds"): millilitres(sheet.mould.cavity_volume.value),
        say("Pieces"): str(sheet.pieces),
        say("To make in all"): grams(total),
        **{component.name: grams(component.mass.value) for component in sheet.components},
    }
