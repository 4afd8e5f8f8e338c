"""Draft a dessert document from pasted lines and steps, or from a saved page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from entremetry.dessert.answer_words import answer_words
from entremetry.dessert.draft import MEASURES, Draft, DraftRequest, draft
from entremetry.dessert.draft_line import identifier
from entremetry.dessert.draft_question import Question
from entremetry.dessert.page_recipe import PageRecipe, page_recipe
from entremetry.documents.saved_page import LARGEST_PAGE, is_page
from entremetry.errors import DocumentError, Fault, QuantityError, UnknownName, nearest_names
from entremetry.kitchen.water_weighing import water_volume
from entremetry.store.files import read_input, text_of
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_moulds, built_in_shapes
from entremetry.usecases.pieces import require_pieces
from entremetry.words import one_of, quoted, say, say_as, say_later

LONGEST_NAME = 120


def draft_text(request: DraftRequest) -> Draft:
    """Draft a document; see `entremetry.dessert.draft`.

    Raises
    ------
    QuantityError
        If the number of pieces or the name is none.
    """
    _require(request)
    chosen = request.mould or request.answers.get("mould", "").strip()
    mould = built_in_moulds().get(chosen) if isinstance(chosen, str) else None
    upright = mould is not None and not mould.fills_upside_down
    request = replace(request, upright=request.upright or upright)
    return draft(request, open_larder(), built_in_shapes())


def said_answer(key: str, answer: str) -> str:
    """What an answer to a question of a draft is called."""
    return answer_words(key, answer, open_larder())


def decoded(content: bytes, *, file: str) -> str:
    """Text of a file that was sent.

    Raises
    ------
    StoreError
        If it is too large or no UTF-8 text.
    """
    return text_of(content, file, what=say_later("saved page"), largest=LARGEST_PAGE)


def page_text(content: str, *, file: str) -> PageRecipe:
    """A recipe of a saved page as the lines that pasting takes; see `page_recipe`."""
    return page_recipe(content, file=file)


def draft_source(
    source: str,
    *,
    name: str | None,
    pieces: int | None,
    mould: str | None,
    holds: str | None,
    like: str | None,
    measures: str | None,
    answers: Mapping[str, str],
) -> Draft:
    """Draft a document from a file of pasted lines or a saved page; '-' is standard input.

    Raises
    ------
    EntremetryError
        If the file cannot be read, it has no recipe and no lines, its name is not said, the
        mould is unknown, or an answer is none of the choices or answers nothing that is asked.
    """
    text, page_name, others = _read(source)
    request = DraftRequest(
        name=name or page_name or _unnamed(),
        pieces=pieces,
        mould=chosen_mould(mould, holds, like) if mould or holds is not None else None,
        text=text,
        measures=measures,
        answers=answers,
    )
    drafted = draft_text(request)
    _refuse_wrong_answers(drafted, source)
    return replace(drafted, remarks=(*_told_of(others), *drafted.remarks))


def _read(source: str) -> tuple[str, str, tuple[str, ...]]:
    """Lines of a source, the name a page gives, and what other recipes the page has."""
    what = say_later("text of pasted lines or saved page")
    content = read_input(source, what=what, largest=LARGEST_PAGE)
    if not is_page(content):
        return content, "", ()
    page = page_text(content, file=source)
    return page.text, page.name, page.others


def _unnamed() -> str:
    raise QuantityError(say("no name for the dessert"), say("--name with a name on one line"))


def _told_of(others: tuple[str, ...]) -> tuple[str, ...]:
    if not others:
        return ()
    names = ", ".join(others)[:200]
    return (say("The page has other recipes too, which are not read: {names}.", names=names),)


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
        found = say("the mould '{mould}' and what one holds", mould=mould)
        raise QuantityError(found, say("one of the two"))
    if holds is not None:
        water_volume(holds)
        return _measured(holds, like)
    if not mould:
        accepted = say("the id of a mould, or what a cavity holds of water")
        raise QuantityError(say("no mould"), accepted)
    if mould not in built_in_moulds():
        raise UnknownName("mould", mould, built_in_moulds())
    return mould


def _measured(holds: str, like: str | None) -> dict[str, Any]:
    shapes = built_in_shapes()
    if not like:
        found = say("no mould that the weighed one is like")
        raise QuantityError(found, say("the id of one of: {names}", names=", ".join(shapes)))
    if like not in shapes:
        raise UnknownName("mould", like, shapes)
    return {
        "id": f"weighed-{identifier(holds)}",
        "name": say("Mould that holds {volume} of water", volume=holds),
        "shape": {"kind": "measured", "holds": holds, "like": dict(shapes[like])},
    }


def _require(request: DraftRequest) -> None:
    if request.pieces is not None:
        require_pieces(request.pieces)
    if not 0 < len(request.name.strip()) <= LONGEST_NAME or not request.name.isprintable():
        raise QuantityError(
            say("a name of {number} characters", number=len(request.name.strip())),
            say("a name on one line, of 1 to {most} characters", most=LONGEST_NAME),
        )
    if request.measures is not None and request.measures not in MEASURES:
        raise QuantityError(
            say("measures '{name}'", name=request.measures),
            one_of(MEASURES),
            nearest_names(request.measures, MEASURES),
        )


def _refuse_wrong_answers(drafted: Draft, file: str) -> None:
    """Refuse answers that are none of the choices, and answers to nothing, all at once."""
    faults = [_wrong(question, file) for question in drafted.questions if question.refused]
    faults += [
        Fault(
            file=file,
            field=say("answer {key}", key=key),
            found=say("an answer to no question"),
            accepted=say("answers to {names}", names=", ".join(drafted.keys))
            if drafted.keys
            else say("answers to nothing: no question is open"),
            nearest=nearest_names(key, drafted.keys),
        )
        for key in drafted.unasked
    ]
    if faults:
        raise DocumentError(faults)


def _wrong(question: Question, file: str) -> Fault:
    choices = [answer for answer, _ in question.choices]
    words = [one_of(choices)] if choices else []
    if question.example:
        words.append(say("your own, such as {example}", example=question.example))
    return Fault(
        file=file,
        field=say("answer {key}", key=question.key),
        found=quoted(question.refused),
        accepted=say_as("between two choices", " or ").join(words),
        nearest=nearest_names(question.refused, choices),
    )
