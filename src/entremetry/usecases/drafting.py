"""Draft a dessert document from pasted lines."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from entremetry.dessert.document import MAX_PIECES
from entremetry.dessert.draft import MEASURES, Draft, DraftRequest, draft
from entremetry.dessert.draft_line import identifier
from entremetry.dessert.draft_question import Question
from entremetry.errors import DocumentError, Fault, QuantityError, UnknownName, nearest_names
from entremetry.kitchen.water_weighing import water_volume
from entremetry.store.files import read_text
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_moulds, built_in_shapes

LONGEST_NAME = 120


def draft_text(request: DraftRequest) -> Draft:
    """Draft a document; see `entremetry.dessert.draft`.

    Raises
    ------
    QuantityError
        If the number of pieces or the name is none.
    """
    _require(request)
    mould = built_in_moulds().get(request.mould) if isinstance(request.mould, str) else None
    upright = mould is not None and not mould.fills_upside_down
    request = replace(request, upright=request.upright or upright)
    return draft(request, open_larder(), built_in_shapes())


def draft_file(
    source: Path,
    *,
    name: str,
    pieces: int,
    mould: str | None,
    holds: str | None,
    like: str | None,
    measures: str | None,
    answers: Mapping[str, str],
) -> Draft:
    """Draft a document from a text file of pasted lines.

    Raises
    ------
    EntremetryError
        If the file cannot be read, no mould is said or it is unknown, or an answer is none of
        the choices or answers nothing that is asked.
    """
    drafted = draft_text(
        DraftRequest(
            name=name,
            pieces=pieces,
            mould=chosen_mould(mould, holds, like),
            text=read_text(source, what="text of pasted lines"),
            measures=measures,
            answers=answers,
        )
    )
    _refuse_wrong_answers(drafted, str(source))
    return drafted


def chosen_mould(mould: str | None, holds: str | None, like: str | None) -> str | dict[str, Any]:
    """The mould as a document writes it: an id of the shelf, or one weighed with water.

    Raises
    ------
    QuantityError
        If neither is said, or both, or the volume is none, or not what the shape is like.
    UnknownName
        If the shelf has no such mould.
    """
    if holds is not None and mould:
        raise QuantityError(f"the mould '{mould}' and what one holds", "one of the two")
    if holds is not None:
        water_volume(holds)
        return _measured(holds, like)
    if not mould:
        raise QuantityError("no mould", "the id of a mould, or what a cavity holds of water")
    if mould not in built_in_moulds():
        raise UnknownName("mould", mould, built_in_moulds())
    return mould


def _measured(holds: str, like: str | None) -> dict[str, Any]:
    shapes = built_in_shapes()
    if not like:
        found = "no mould that the weighed one is like"
        raise QuantityError(found, f"the id of one of: {', '.join(shapes)}")
    if like not in shapes:
        raise UnknownName("mould", like, shapes)
    return {
        "id": f"weighed-{identifier(holds)}",
        "name": f"Mould that holds {holds} of water",
        "shape": {"kind": "measured", "holds": holds, "like": dict(shapes[like])},
    }


def _require(request: DraftRequest) -> None:
    if not 1 <= request.pieces <= MAX_PIECES:
        raise QuantityError(f"{request.pieces} pieces", f"1 to {MAX_PIECES} pieces")
    if not 0 < len(request.name.strip()) <= LONGEST_NAME or not request.name.isprintable():
        raise QuantityError(
            f"a name of {len(request.name.strip())} characters",
            f"a name on one line, of 1 to {LONGEST_NAME} characters",
        )
    if request.measures is not None and request.measures not in MEASURES:
        raise QuantityError(
            f"measures '{request.measures}'",
            f"one of {', '.join(MEASURES)}",
            nearest_names(request.measures, MEASURES),
        )


def _refuse_wrong_answers(drafted: Draft, file: str) -> None:
    """Refuse answers that are none of the choices, and answers to nothing, all at once."""
    faults = [_wrong(question, file) for question in drafted.questions if question.refused]
    faults += [
        Fault(
            file=file,
            field=f"answer {key}",
            found="an answer to no question",
            accepted=f"answers to {', '.join(drafted.keys) or 'nothing: no question is open'}",
            nearest=nearest_names(key, drafted.keys),
        )
        for key in drafted.unasked
    ]
    if faults:
        raise DocumentError(faults)


def _wrong(question: Question, file: str) -> Fault:
    choices = [answer for answer, _ in question.choices]
    words = [f"one of {', '.join(choices)}"] if choices else []
    words += [f"your own, such as {question.example}"] if question.example else []
    return Fault(
        file=file,
        field=f"answer {question.key}",
        found=f"'{question.refused}'",
        accepted=" or ".join(words),
        nearest=nearest_names(question.refused, choices),
    )
