"""The label of a dessert: both panels as they would be printed, and where each number is from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import ClassVar

from starlette.requests import Request
from starlette.responses import Response

from entremetry.dessert.document import MAX_PIECES
from entremetry.errors import EntremetryError
from entremetry.labels import english
from entremetry.labels.ingredient_list import Listed
from entremetry.labels.label import Label
from entremetry.labels.naming import Rules
from entremetry.labels.panel import Row
from entremetry.labels.serving import metric_mass
from entremetry.usecases.batch import moulds
from entremetry.usecases.labelling import label_of_text
from entremetry.usecases.library import dessert, dessert_name, kitchen_text
from entremetry.web.answers import Choices
from entremetry.web.choosing import choices
from entremetry.web.rendering import rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.workbench import workbench_of
from entremetry.words import say, speaking


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelRow:
    """A row in words: `percent` of the daily value, and what a source leaves blank."""

    name: str
    level: int
    hundred: str
    served: str
    percent: str
    row: Row
    blank: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownLabel:
    """A label by the rules of one jurisdiction, ready to be shown."""

    rules: str
    title: str
    label: Label
    serving: str
    rows: tuple[PanelRow, ...]
    large: tuple[Listed, ...]
    small: tuple[Listed, ...]
    small_heading: str
    allergen_list: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MouldChoice:
    """A mould to choose by name."""

    id: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelPage:
    """Context of label.html; texts of fields are as they were typed."""

    template: ClassVar[str] = "label.html"
    id: str
    name: str
    pieces: str
    mould: str
    moulds: tuple[MouldChoice, ...]
    labels: tuple[ShownLabel, ...] = ()
    trouble: str = ""


def show_label(request: Request) -> Response:
    """GET /desserts/{id}/label"""
    library, fields = workbench_of(request).library, request.query_params
    stored, kitchen = dessert(library, request.path_params["id"]), kitchen_text(library)
    labels, trouble = _labels(stored.text, stored.id, fields, kitchen)
    pieces = str(labels[0].label.pieces) if labels else ""
    page = LabelPage(
        id=stored.id,
        name=dessert_name(stored.id, stored.text),
        pieces=fields.get("pieces", "") or pieces,
        mould=fields.get("mould", ""),
        moulds=tuple(MouldChoice(id=each.id, name=each.name) for each in moulds(kitchen)),
        labels=labels,
        trouble=trouble,
    )
    return rendered(request, page)


def _labels(
    text: str, file: str, fields: Mapping[str, str], kitchen: str | None
) -> tuple[tuple[ShownLabel, ...], str]:
    try:
        chosen = choices(fields)
        if chosen.pieces is not None and 1 <= chosen.pieces <= MAX_PIECES:
            chosen = replace(chosen, pieces=None)  # a label is of one piece
        return _both(text, file, chosen, kitchen), ""
    except EntremetryError as error:
        return (), f"{error}."


@kept_by_language(64)
def _both(text: str, file: str, chosen: Choices, kitchen: str | None) -> tuple[ShownLabel, ...]:
    drafts = (
        label_of_text(
            text,
            file=file,
            pieces=chosen.pieces,
            mould=chosen.mould,
            kitchen_text=kitchen,
            rules=rules.value,
        )
        for rules in Rules
    )
    return tuple(_as_written(draft) for draft in drafts)


def _as_written(label: Label) -> ShownLabel:
    """A label in the language that its rules ask for."""
    with speaking(label.rules.language):
        return _shown(label)


def _shown(label: Label) -> ShownLabel:
    found, american = label.ingredients, label.rules is Rules.US
    cut = found.small_from if american else len(found.entries)
    return ShownLabel(
        rules=label.rules.value,
        title=english.title(label.rules),
        label=label,
        serving=f"{label.serving.household} ({metric_mass(label.serving.mass)})",
        rows=tuple(_rows(label)),
        large=found.entries[:cut],
        small=found.entries[cut:],
        small_heading=english.SMALL_GROUP,
        allergen_list=english.allergen_list(label.rules),
    )


def _rows(label: Label) -> list[PanelRow]:
    """Rows as printed; the second measure of energy stands below the first without a name."""
    calories = label.rules is Rules.US
    return [
        PanelRow(
            name=english.row_name(row.key, label.rules),
            level=row.level,
            hundred=str(row.declared_100g),
            served=str(row.declared_serving).removesuffix(" kcal" if calories else "\0"),
            percent=_percent(row),
            row=row,
            blank=_blank(row),
        )
        for row in label.rows
    ]


def _blank(row: Row) -> str:
    """Ingredients of which no number is published, each with its share of the piece."""
    shares = ((each.name, english.percent(each.share, 1)) for each in row.missing)
    return ", ".join(
        say("{name} ({share} of the piece)", name=name, share=share) for name, share in shares
    )


def _percent(row: Row) -> str:
    low, high = row.daily_value_percent, row.daily_value_up_to_percent
    if low is None:
        return ""
    return f"{low}%" if high is None or high == low else f"{low} to {high}%"
