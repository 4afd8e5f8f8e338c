"""A batch sheet in French: every text of ours is French, what an author wrote stays."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache

import pytest

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.method.work import Work
from entremetry.quantities import find_slips
from entremetry.store.demo import demo_texts
from entremetry.store.shelf import built_in_moulds
from entremetry.usecases.batch import Surroundings, reckoned_sheet
from entremetry.words import speaking

DEMOS = sorted(demo_texts())
KEYS = re.compile(
    r".*\.(id|line|kind|unit|source|component|position)|.*\.sources|.*allergens\.\w+"
    r"|\.own_ingredients\..*"
)
AUTHORS = re.compile(
    r"\.(about|author|name|keywords)|\.components\.name|\.components\.lines\.(note|written)"
    r"|\.walls\.(insert|around)|\.section\.parts\.name"
)
NAMES_OF_THE_LARDER = re.compile(r"\.components\.lines\.name|\.shopping\.name")
NUMBERS = re.compile(r"(?:[\d½¼¾⅓⅔⅛ ,×+]|\b(?:g|kg|mg|ml|l|mm)\b)*")
ENGLISH = re.compile(
    r"\b(?:the|of|with|and|is|to|at|for|until|it|be|from|about|weigh|each|into|on|step|per|more"
    r"|less|cups?|tbsp|tsp|eggs?|sheets?|across|high|thick|ready|stated|minutes?|hours?|days?)\b"
)
POINT = re.compile(r"\d\.\d")


@cache
def in_language(demo: str, code: str) -> tuple[BatchSheet, str]:
    """The sheet of a demo, and all words in it that are not ours."""
    with speaking(code):
        reckoning, sheet = reckoned_sheet(demo_texts()[demo], demo, Surroundings())
    return sheet, "\n".join(_foreign(reckoning.dessert.document, sheet))


def _foreign(document: object, sheet: BatchSheet) -> Iterator[str]:
    for component in sheet.components:
        yield component.name
        yield from (line.name for line in component.lines)
    for value in _every(document):
        if isinstance(value, Work):
            yield value.note
            yield value.bowl or ""


def _every(value: object) -> Iterator[object]:
    yield value
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list | tuple):
        for each in value:
            yield from _every(each)
    elif hasattr(type(value), "model_fields"):
        for name in type(value).model_fields:
            yield from _every(getattr(value, name))


def texts(value: object, path: str = "") -> Iterator[tuple[str, str]]:
    """Every text of a sheet with the fields that lead to it."""
    if isinstance(value, str):
        yield path, value
    elif is_dataclass(value):
        for field in fields(value):
            yield from texts(getattr(value, field.name), f"{path}.{field.name}")
    elif isinstance(value, tuple | frozenset):
        for each in value:
            yield from texts(each, path)


def comparable(sheet: BatchSheet) -> list[tuple[str, str]]:
    """Texts of a sheet, without the names under which an own ingredient is found as well."""
    return [each for each in texts(sheet) if each[0] != ".own_ingredients.aliases"]


def ours(demo: str) -> Iterator[tuple[str, str]]:
    """Texts of the French sheet that are ours, without the words of author and larder in them."""
    sheet, foreign = in_language(demo, "fr")
    words = [word for word in foreign.splitlines() if word]
    words += [re.sub(r"\s+\d.*$", "", word) for word in words]
    words += [word[:1].lower() + word[1:] for word in words]
    for path, text in texts(sheet):
        if not any(known.fullmatch(path) for known in (KEYS, AUTHORS, NAMES_OF_THE_LARDER)):
            for word in sorted(words, key=len, reverse=True):
                text = text.replace(word, "…")
            yield path, text


@pytest.mark.parametrize("demo", DEMOS)
def test_a_text_that_is_alike_in_both_languages_is_not_ours(demo: str) -> None:
    english, french = in_language(demo, "en")[0], in_language(demo, "fr")[0]
    alike = [
        (path, text)
        for (path, text), (_, other) in zip(comparable(english), comparable(french), strict=True)
        if text == other
        and not any(known.fullmatch(path) for known in (KEYS, AUTHORS, NAMES_OF_THE_LARDER))
        and not NUMBERS.fullmatch(text)
        and not (path == ".mould.name" and english.mould.id not in built_in_moulds())
    ]
    assert alike == []


@pytest.mark.parametrize("demo", DEMOS)
def test_no_english_is_left_in_what_is_ours(demo: str) -> None:
    assert [text for _, text in ours(demo) if ENGLISH.search(text)] == []


@pytest.mark.parametrize("demo", DEMOS)
def test_every_number_of_ours_has_a_decimal_comma(demo: str) -> None:
    found = [text for _, text in ours(demo)]
    assert [text for text in found if POINT.search(text)] == []
    assert any(re.search(r"\d,\d", text) for text in found)


@pytest.mark.parametrize("demo", DEMOS)
def test_what_we_write_in_french_is_never_taken_for_a_slip(demo: str) -> None:
    assert [text for _, text in ours(demo) if find_slips(text)] == []


@pytest.mark.parametrize("demo", DEMOS)
def test_a_language_changes_no_number(demo: str) -> None:
    english, french = in_language(demo, "en")[0], in_language(demo, "fr")[0]
    assert [c.lines[0].mass for c in english.components] == [
        c.lines[0].mass for c in french.components
    ]
    assert english.piece_mass.value == french.piece_mass.value
    assert english.time == french.time
    needed = [{p.id: p.mass for p in sheet.shopping} for sheet in (english, french)]
    assert needed[0] == needed[1]


def test_a_shelf_kept_in_one_language_is_not_shown_in_another() -> None:
    with speaking("fr"):
        assert built_in_moulds()["hemisphere-70"].name == "Demi-sphère 70 mm"
        assert built_in_moulds()["hemisphere-70"].size == "70 mm de diamètre"
    assert built_in_moulds()["hemisphere-70"].name == "Half-sphere 70 mm"


def test_every_mould_of_the_shelf_has_a_french_name() -> None:
    english = built_in_moulds()
    with speaking("fr"):
        french = built_in_moulds()
    alike = {key for key, mould in english.items() if mould.name == french[key].name}
    assert alike == {"coupe", "cube-50", "savarin-80", "savarin-180"}
