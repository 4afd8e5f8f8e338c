"""Publish a dessert: page, paper, texts, tables and pictures, all from one batch sheet."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.translating import untranslated
from entremetry.publish.cold_tables import Heard
from entremetry.publish.reader_page import Reader, cold_times, reader
from entremetry.questions.for_reader import ReaderQuestion, reader_questions
from entremetry.store.files import read_text
from entremetry.store.kernel_cache import require_fresh_kernels
from entremetry.store.publication_folder import write_together
from entremetry.usecases.batch import (
    Surroundings,
    reckoned_as_spoken,
    reckoned_sheet,
    surroundings,
    surroundings_of,
)
from entremetry.usecases.language import in_language
from entremetry.usecases.publication_files import (
    EVERYTHING,
    Form,
    Wishes,
    file_name,
    page_files,
    published_files,
)
from entremetry.usecases.published_calendar import calendar_files
from entremetry.words import ENGLISH, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Prepared:
    """A dessert worked out for its publication: the sheet, and what its page has beside it."""

    sheet: BatchSheet
    told: Reader
    language: str = ENGLISH.code


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """What was written in which language, the sheet it was written from, and the author's texts
    that have no translation and stand in it as they are."""

    files: tuple[Path, ...]
    sheet: BatchSheet
    language: str = ENGLISH.code
    untranslated: tuple[str, ...] = ()


def publish(
    path: Path,
    to: Path,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    kitchen: Path | None = None,
    wishes: Wishes = EVERYTHING,
    serve: str | None = None,
    today: date | None = None,
) -> Published:
    """Write a dessert document in all its forms into a folder, which is made if it is not there.

    With an hour of service such as '2026-12-24 19:00' a calendar of the days before is among them.

    Raises
    ------
    EntremetryError
        If the document is refused, there is no such language, the limit is too small, or the
        folder cannot be written; nothing half-written stays.
    """
    around = surroundings_of(path, kitchen)
    text = read_text(path, what=say_later("dessert document"))
    require_fresh_kernels()
    with in_language(wishes.language):
        reckoning, sheet = reckoned_sheet(text, str(path), around, pieces=pieces, mould=mould)
        day = today or date.today()
        others = [form for form in wishes.forms if form is not Form.PAGE]
        contents = published_files(sheet, day, replace(wishes, forms=others))
        if serve is not None:
            contents |= calendar_files(text, sheet, serve, kitchen=kitchen, mould=mould)
        if Form.PAGE in wishes.forms:  # it takes long, so that what can be refused comes before
            questions = questions_of(text, str(path), reckoning, around, mould)
            told = reader_of(reckoning, sheet, around, questions)
            contents = (
                published_files(sheet, day, replace(wishes, forms=(Form.PAGE,)), told) | contents
            )
    return Published(
        files=write_together(to, contents),
        sheet=sheet,
        language=wishes.language,
        untranslated=untranslated(reckoning.dessert.document, wishes.language),
    )


def questions_of(
    text: str, file: str, reckoning: Reckoning, around: Surroundings, mould: str | None = None
) -> tuple[ReaderQuestion, ...]:
    """Questions that the page answers of itself; leaving out is reckoned from the text."""
    return reader_questions(
        text, reckoning, lambda new: reckoned_as_spoken(new, file, around, mould), around.kitchen
    )


def reader_of(
    reckoning: Reckoning,
    sheet: BatchSheet,
    around: Surroundings,
    questions: tuple[ReaderQuestion, ...] = (),
    heard: Heard | None = None,
) -> Reader:
    """What the page has for its reader, with tables of freezing and thawing in other moulds."""
    return reader(
        reckoning,
        sheet,
        kitchen=around.kitchen,
        fan=around.fan,
        times=cold_times(reckoning, around.kitchen, heard),
        measures=around.measures(reckoning.dessert.document),
        questions=questions,
    )


def page_of_text(
    text: str,
    *,
    file: str = "document",
    pieces: int | None = None,
    mould: str | None = None,
    kitchen_text: str | None = None,
    today: date | None = None,
    language: str = ENGLISH.code,
) -> str:
    """The page of a document at hand as text, as `publish` would write it."""
    ready = prepared_of_text(
        text, file=file, pieces=pieces, mould=mould, kitchen_text=kitchen_text, language=language
    )
    return page_of(ready, today or date.today())


def prepared_of_text(
    text: str,
    *,
    file: str = "document",
    pieces: int | None = None,
    mould: str | None = None,
    kitchen_text: str | None = None,
    language: str = ENGLISH.code,
    heard: Heard | None = None,
) -> Prepared:
    """Work out everything that takes long; `heard` is told how far it is, and may raise to end it.

    Raises
    ------
    EntremetryError
        If the document is refused or no batch comes of it.
    """
    around = surroundings(kitchen_text, "kitchen")
    require_fresh_kernels()
    with in_language(language):
        reckoning, sheet = reckoned_sheet(text, file, around, pieces=pieces, mould=mould)
        questions = questions_of(text, file, reckoning, around, mould)
        told = reader_of(reckoning, sheet, around, questions, heard)
    return Prepared(sheet=sheet, told=told, language=language)


def page_of(ready: Prepared, today: date) -> str:
    """The page of a dessert that is worked out."""
    with in_language(ready.language):
        files = page_files(ready.sheet, today, told=ready.told)
        return files[file_name(ready.sheet, ".html")].decode()
