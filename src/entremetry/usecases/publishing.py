"""Publish a dessert: page, paper, texts, tables and pictures, all from one batch sheet."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import Path

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.translating import untranslated
from entremetry.publish import recipe_json_ld, recipe_page, section_svg
from entremetry.publish.cold_tables import Heard
from entremetry.publish.description_text import LIMIT, description_text
from entremetry.publish.reader_page import Reader, cold_times, reader
from entremetry.publish.spoken_sheet import spoken_sheet
from entremetry.publish.tables import tables
from entremetry.publish.typesetting import Paper
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
from entremetry.words import ENGLISH, current, say_as

DRAWING = "section.svg"


class Form(StrEnum):
    """What a publication is made of; each is a few files."""

    PAGE = "page"
    PAPER = "paper"
    TEXT = "text"
    TABLES = "tables"
    PICTURES = "pictures"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """Which forms, on what paper, how many letters a description may have, and the language."""

    forms: Collection[Form] = tuple(Form)
    paper: Paper = Paper.A4
    limit: int = LIMIT
    language: str = ENGLISH.code


EVERYTHING = Wishes()


ENDINGS: Mapping[Form, tuple[str, ...]] = {
    Form.PAGE: (".html", ".jsonld", f"-{DRAWING}"),
    Form.PAPER: (".pdf", "-wall.pdf"),
    Form.TEXT: ("-description.txt", "-spoken.txt"),
    Form.TABLES: (".xlsx", ".ods"),
    Form.PICTURES: ("-section.png", "-card.svg", "-card.png"),
}


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
    today: date | None = None,
) -> Published:
    """Write a dessert document in all its forms into a folder, which is made if it is not there.

    Raises
    ------
    EntremetryError
        If the document is refused, there is no such language, the limit is too small, or the
        folder cannot be written; nothing half-written stays.
    """
    around = surroundings_of(path, kitchen)
    text = read_text(path, what="dessert document")
    require_fresh_kernels()
    with in_language(wishes.language):
        reckoning, sheet = reckoned_sheet(text, str(path), around, pieces=pieces, mould=mould)
        told = None
        if Form.PAGE in wishes.forms:
            questions = questions_of(text, str(path), reckoning, around, mould)
            told = reader_of(reckoning, sheet, around, questions)
        contents = published_files(sheet, today or date.today(), wishes, told)
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


def file_names(
    dessert_id: str, forms: Collection[Form], language: str = ENGLISH.code
) -> tuple[str, ...]:
    """Names of the files that a publication in these forms has, in its order."""
    endings = (ending for form in Form if form in forms for ending in ENDINGS[form])
    return tuple(name_of_file(dessert_id, ending, language) for ending in endings)


def file_name(sheet: BatchSheet, ending: str) -> str:
    """Name of a file of a publication in the spoken language."""
    return name_of_file(sheet.id, ending, current().code)


def name_of_file(dessert_id: str, ending: str, language: str) -> str:
    """Name of a file: 'dome-wall.pdf', and in another language 'dome-wall.fr.pdf'.

    So a publication in several languages may lie in one folder.
    """
    part, _, kind = ending.partition(".")
    code = "" if language == ENGLISH.code else f".{language}"
    return f"{dessert_id}{part}{code}.{kind}"


def published_files(
    sheet: BatchSheet, today: date, wishes: Wishes = EVERYTHING, told: Reader | None = None
) -> dict[str, bytes]:
    """Contents of the files of a publication by their names."""
    makers: dict[Form, Callable[[], dict[str, bytes]]] = {
        Form.PAGE: lambda: page_files(sheet, today, file_name(sheet, f"-{DRAWING}"), told),
        Form.PAPER: lambda: paper_files(sheet, today, wishes.paper),
        Form.TEXT: lambda: text_files(sheet, wishes.limit),
        Form.TABLES: lambda: table_files(sheet, today),
        Form.PICTURES: lambda: picture_files(sheet),
    }
    wished = [make for form, make in makers.items() if form in wishes.forms]
    return {name: content for make in wished for name, content in make().items()}


def page_files(
    sheet: BatchSheet, today: date, drawing: str = DRAWING, told: Reader | None = None
) -> dict[str, bytes]:
    """The recipe page, its structured data and its drawing, which is called `drawing`."""
    structured = recipe_json_ld(sheet, image=drawing, date_published=today)
    page = recipe_page(
        sheet, allergens=allergen_words(sheet), date_published=today, image=drawing, reader=told
    )
    section = section_svg(sheet.section, title=f"Section of {sheet.name}", standalone=True)
    return {
        file_name(sheet, ".html"): page.encode(),
        file_name(sheet, ".jsonld"): json.dumps(structured, ensure_ascii=False, indent=2).encode()
        + b"\n",
        drawing: section.encode(),
    }


def paper_files(sheet: BatchSheet, today: date, paper: Paper) -> dict[str, bytes]:
    """The print sheet for the reader and the wall sheet for the kitchen, as PDF."""
    from entremetry.publish.print_sheet import print_sheet
    from entremetry.publish.wall_sheet import wall_sheet

    allergens = allergen_words(sheet)
    return {
        file_name(sheet, ".pdf"): print_sheet(
            sheet, paper=paper, allergens=allergens, date_published=today
        ),
        file_name(sheet, "-wall.pdf"): wall_sheet(sheet, paper=paper, on=today),
    }


def text_files(sheet: BatchSheet, limit: int = LIMIT) -> dict[str, bytes]:
    """The description for a video or post, and the numbers to say aloud."""
    words = description_text(sheet, allergens=allergen_words(sheet), limit=limit)
    return {
        file_name(sheet, "-description.txt"): words.encode(),
        file_name(sheet, "-spoken.txt"): spoken_sheet(sheet).encode(),
    }


def table_files(sheet: BatchSheet, today: date) -> dict[str, bytes]:
    """The quantities for a spreadsheet, in both of its usual formats."""
    from entremetry.publish.open_document import ods
    from entremetry.publish.workbook import xlsx

    views = tables(sheet)
    return {
        file_name(sheet, ".xlsx"): xlsx(views, title=sheet.name, author=sheet.author, on=today),
        file_name(sheet, ".ods"): ods(views, title=sheet.name, author=sheet.author, on=today),
    }


def picture_files(sheet: BatchSheet) -> dict[str, bytes]:
    """The section as dots, and the card of a post as dots and lines."""
    from entremetry.publish.picture import card_png, card_svg, section_png

    return {
        file_name(sheet, "-section.png"): section_png(sheet.section),
        file_name(sheet, "-card.svg"): card_svg(sheet),
        file_name(sheet, "-card.png"): card_png(sheet),
    }


def allergen_words(sheet: BatchSheet) -> tuple[str, ...]:
    """Allergens in words, 'gluten (wheat)', 'milk': the European list, then what the American
    list has beside it."""
    european = [_words(code) for code in sheet.allergens.eu]
    named = {code.rpartition(":")[2].rstrip("s") for code in sheet.allergens.eu}
    american = [
        _words(code)
        for code in sheet.allergens.us
        if code.rpartition(":")[2].rstrip("s") not in named
    ]
    return (*european, *american)


def _words(code: str) -> str:
    group, _, name = (say_as("allergen", part) for part in code.partition(":"))
    return f"{group} ({name})" if name else group
