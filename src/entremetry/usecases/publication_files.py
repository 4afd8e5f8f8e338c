"""What a publication is made of: its forms, their files, and how the files are called."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import recipe_json_ld, recipe_page, section_svg
from entremetry.publish.description_text import LIMIT, description_text
from entremetry.publish.reader_page import Reader
from entremetry.publish.spoken_sheet import spoken_sheet
from entremetry.publish.tables import tables
from entremetry.publish.typesetting import Paper
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
