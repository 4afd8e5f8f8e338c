"""What a publication is asked for: forms, paper, the letters of a description."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from entremetry.publish.description_text import LIMIT
from entremetry.publish.typesetting import Paper
from entremetry.usecases.publication_files import ENDINGS, Form, Wishes, file_names, name_of_file
from entremetry.words import current, language, languages, say, say_later

WORDS: Mapping[Form, str] = {
    Form.PAGE: say_later("Page for the reader"),
    Form.PAPER: say_later("Print sheets"),
    Form.TEXT: say_later("Texts to paste and to say"),
    Form.TABLES: say_later("Spreadsheets"),
    Form.PICTURES: say_later("Pictures"),
}
FILES: Mapping[str, str] = {
    ".html": say_later("the page, in one file"),
    ".jsonld": say_later("its structured data"),
    "-section.svg": say_later("its drawing"),
    ".pdf": say_later("the recipe on paper"),
    "-wall.pdf": say_later("the sheet for the wall"),
    "-description.txt": say_later("text for a video or a post"),
    "-spoken.txt": say_later("the numbers to say aloud"),
    ".xlsx": say_later("quantities, XLSX"),
    ".ods": say_later("quantities, ODS"),
    "-section.png": say_later("the section"),
    "-card.svg": say_later("a card, as lines"),
    "-card.png": say_later("a card, as dots"),
}
PAPERS: Mapping[Paper, str] = {Paper.A4: "A4", Paper.LETTER: say_later("Letter")}
MOST_LETTERS = 1_000_000
CARRIED = ("pieces", "mould", "language")
FORM = "form-"  # before the name of a form in a field


@dataclass(frozen=True, slots=True, kw_only=True)
class FormChoice:
    """A form with its files: value, words, whether it is wished, names and what each is."""

    value: str
    words: str
    chosen: bool
    files: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was asked; `wishes` is None if something stands in the way, told by field."""

    wishes: Wishes | None
    forms: tuple[Form, ...]
    paper: Paper
    limit: str
    language: str
    faults: Mapping[str, str]


def asked_of(fields: Mapping[str, str]) -> Asked:
    """Read the fields; without any of them it is everything, as the command has it."""
    forms = tuple(form for form in Form if FORM + form in fields)
    if not forms and "limit" not in fields:
        forms = tuple(Form)
    limit = fields.get("limit", str(LIMIT)).strip()
    paper = Paper.LETTER if fields.get("paper") == Paper.LETTER else Paper.A4
    faults, code = _faults(forms, limit), language_of(fields)
    wishes = None
    if not faults:
        wishes = Wishes(forms=forms, paper=paper, limit=int(limit), language=code)
    return Asked(wishes=wishes, forms=forms, paper=paper, limit=limit, language=code, faults=faults)


def language_of(fields: Mapping[str, str]) -> str:
    """The language that is asked for; the spoken one where there is no such language."""
    code = fields.get("language", "")
    return code if code in languages() else current().code


def language_choices() -> tuple[tuple[str, str], ...]:
    """Codes of the languages, and their names in themselves."""
    return tuple((code, language(code).name) for code in languages())


def form_choices(dessert_id: str, asked: Asked) -> tuple[FormChoice, ...]:
    """Every form with the names of its files."""
    return tuple(
        FormChoice(
            value=FORM + form,
            words=say(WORDS[form]),
            chosen=form in asked.forms,
            files=tuple(
                (name_of_file(dessert_id, ending, asked.language), say(FILES[ending]))
                for ending in ENDINGS[form]
            ),
        )
        for form in Form
    )


def form_of(dessert_id: str, name: str, language: str) -> Form | None:
    """The form that a file in a language belongs to, or None."""
    known = {each: form for form in Form for each in file_names(dessert_id, (form,), language)}
    return known.get(name)


def query(fields: Mapping[str, str], *names: str) -> str:
    """Those fields of a query that are there, as a query."""
    return urlencode({name: fields[name] for name in names if fields.get(name)})


def _faults(forms: tuple[Form, ...], limit: str) -> dict[str, str]:
    faults = {} if forms else {"forms": say("Choose at least one.")}
    plain = limit.isascii() and limit.isdigit() and len(limit) <= len(str(MOST_LETTERS))
    if not (plain and 1 <= int(limit) <= MOST_LETTERS):
        faults["limit"] = say(
            "Found '{found}'; a whole number, such as {example}.", found=limit[:40], example=LIMIT
        )
    return faults
