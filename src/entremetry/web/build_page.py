"""Build a dessert: what it is made of, how it lies in the mould, and how it is made."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar
from urllib.parse import urlencode

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from entremetry.documents import read_tree
from entremetry.errors import EntremetryError
from entremetry.store import Origin, StoredDocument
from entremetry.usecases.building import alter_dessert, duplicate_dessert
from entremetry.usecases.library import (
    dessert,
    dessert_at,
    kitchen_text,
    restore_dessert,
    undo_dessert,
)
from entremetry.web.answers import reckoned
from entremetry.web.build_fields import Field
from entremetry.web.build_form import Seen, alteration_of
from entremetry.web.build_handles import Grips, grips
from entremetry.web.build_refusal import Refused, refused_change
from entremetry.web.build_rows import (
    Card,
    Row,
    cards,
    names_in,
    new_step_fields,
    place_rows,
    step_rows,
    whole_fields,
)
from entremetry.web.build_words import places, steps
from entremetry.web.choice_words import kinds
from entremetry.web.choosing import View, view
from entremetry.web.forms import Form
from entremetry.web.mould_tiles import MouldGroup, mould_groups
from entremetry.web.part_path import path_at
from entremetry.web.rendering import HTMX, rendered
from entremetry.web.turns import in_turn
from entremetry.web.workbench import workbench_of
from entremetry.words import say

ASSEMBLY = "assembly"


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildPage:
    """Context of build.html and of build_part.html, which a change swaps in."""

    template: ClassVar[str] = "build.html"
    id: str
    name: str
    started_from: int
    view: View
    grips: Grips | None
    fields: tuple[Field, ...]
    mould: str
    groups: tuple[MouldGroup, ...]
    places: tuple[Row, ...]
    cards: tuple[Card, ...]
    assembly: tuple[Row, ...]
    adding: str
    kind: str
    new_fields: tuple[Field, ...]
    opened: str
    can_undo: bool
    can_redo: bool
    refused: Refused | None
    told: str
    place_words: Mapping[str, str]
    step_words: Mapping[str, str]
    kind_words: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class BuildPart(BuildPage):
    """The part of the page that a change renews."""

    template: ClassVar[str] = "build_part.html"


@in_turn
def show_build(request: Request) -> Response:
    """GET /desserts/{id}/build?open=PATH&adding=PATH&kind=STEP"""
    return _answer(request, dict(request.query_params))


@in_turn
def change(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/build: one change, kept at once."""
    library, id_ = workbench_of(request).library, str(request.path_params["id"])
    started_from = form.whole_number("started_from") or 0
    at = {name: form.line(name) for name in ("open", "adding", "kind") if form.line(name)}
    try:
        seen = Seen(text=dessert_at(library, id_, started_from), kitchen=kitchen_text(library))
        alteration = alteration_of(form, seen)
        if alteration is None:
            return _answer(request, at, told=say("Nothing to change."))
        saved = alter_dessert(library, id_, alteration, started_from=started_from, reckon=reckoned)
    except EntremetryError as error:
        return _answer(request, at, refused=refused_change(error, form))
    if form.line("do") == "add-step":
        at = {}
    return _after(request, at, _kept(saved.trouble))


def undo(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/build/undo"""
    library, id_ = workbench_of(request).library, str(request.path_params["id"])
    undo_dessert(library, id_, started_from=form.whole_number("started_from") or 0)
    return _after(request, {}, say("The last change is undone."))


def redo(request: Request, form: Form) -> Response:
    """POST /desserts/{id}/build/redo: take an undo back."""
    library, id_ = workbench_of(request).library, str(request.path_params["id"])
    newest = form.whole_number("started_from") or 0
    restore_dessert(library, id_, newest - 1, started_from=newest)
    return _after(request, {}, say("The change is back."))


def duplicate(request: Request, _form: Form) -> Response:
    """POST /desserts/{id}/duplicate: a copy, ready to be changed."""
    library, id_ = workbench_of(request).library, str(request.path_params["id"])
    copy = duplicate_dessert(library, id_)
    return RedirectResponse(f"/desserts/{copy.id}/build", status_code=303)


def _kept(trouble: str) -> str:
    return say("Kept. {trouble}", trouble=trouble) if trouble else say("Kept.")


def _after(request: Request, at: Mapping[str, str], told: str) -> Response:
    """The renewed part, or for a browser without scripts the page by a new request."""
    if HTMX in request.headers:
        return _answer(request, at, told=told)
    query = f"?{urlencode(at)}" if at else ""
    return RedirectResponse(f"/desserts/{request.path_params['id']}/build{query}", status_code=303)


def _answer(
    request: Request, at: Mapping[str, str], *, refused: Refused | None = None, told: str = ""
) -> Response:
    library, id_ = workbench_of(request).library, str(request.path_params["id"])
    stored, kitchen = dessert(library, id_), kitchen_text(library)
    is_part = HTMX in request.headers
    page = _page(BuildPart if is_part else BuildPage, stored, kitchen, at, refused, told)
    answer = rendered(request, page, status=422 if refused and not is_part else 200)
    answer.headers["Vary"] = HTMX
    return answer


def _page(
    kind: type[BuildPage],
    stored: StoredDocument,
    kitchen: str | None,
    at: Mapping[str, str],
    refused: Refused | None,
    told: str,
) -> BuildPage:
    data = read_tree(stored.text, file=stored.id).data
    shown = view(stored.text, stored.id, {}, kitchen)
    placed = [entry for entry in data.get("placement") or [] if isinstance(entry, dict)]
    components: Mapping[str, Any] = data.get("components") or {}
    names = {id_: str(each.get("name", id_)) for id_, each in components.items()}
    adding, step = at.get("adding", ""), at.get("kind", "")
    sentences = shown.sheet.assembly if shown.sheet else ()
    return kind(
        id=stored.id,
        name=str(data.get("name", stored.id)),
        started_from=stored.revision.number,
        view=shown,
        grips=_grips(shown, placed),
        fields=whole_fields(data),
        mould=str(data["mould"]) if isinstance(data.get("mould"), str) else "",
        groups=mould_groups(kitchen) if "moulds" in at else (),
        places=place_rows(data, names),
        cards=cards(data, shown.sheet, at.get("open", "")),
        assembly=step_rows(
            data.get(ASSEMBLY) or [], (ASSEMBLY,), sentences, names, at.get("open", "")
        ),
        adding=adding,
        kind=step,
        new_fields=_new_fields(adding, step, components, names, shown),
        opened=at.get("open", ""),
        can_undo=stored.revision.parent is not None,
        can_redo=stored.revision.origin is Origin.UNDO,
        refused=refused,
        told=told,
        place_words=places(),
        step_words=steps(),
        kind_words=kinds(),
    )


def _grips(shown: View, placed: Sequence[Mapping[str, Any]]) -> Grips | None:
    """Handles on the drawing, if there is one."""
    if shown.sheet is None or shown.stage is None or shown.plate is None:
        return None
    return grips(shown.sheet, shown.stage, shown.plate, placed)


def _new_fields(
    adding: str, step: str, components: Mapping[str, Any], names: Mapping[str, str], shown: View
) -> tuple[Field, ...]:
    """Fields of the step that is being added, if one is."""
    if not adding or not step:
        return ()
    path = path_at(adding)
    owner = components.get(str(path[1])) if len(path) == 3 else None
    if not owner:
        return new_step_fields(step, path, names)
    made = (each for each in (shown.sheet.components if shown.sheet else ()) if each.id == path[1])
    return new_step_fields(step, path, names_in(owner, next(made, None)))
