from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser

from entremetry.publish import recipe_page
from entremetry.publish.markup import plain
from unit.publish.sheets import HOSTILE, SHEET, hostile

FETCHING = {"src", "href", "srcset", "action", "data", "poster", "xlink:href", "background"}
VOID = {"meta", "link", "br", "img", "hr", "input"}


class Reading(HTMLParser):
    """Elements, attributes and text of a page; `open_` is empty if all are closed in order."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str, str | None]] = []
        self.words: list[str] = []
        self.open_: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(tag, name, value) for name, value in attrs]
        if tag not in VOID:
            self.open_.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(tag, name, value) for name, value in attrs]

    def handle_endtag(self, tag: str) -> None:
        assert self.open_.pop() == tag

    def handle_data(self, data: str) -> None:
        if not self.open_ or self.open_[-1] not in {"style", "script"}:
            self.words.append(data)

    @property
    def text(self) -> str:
        return re.sub(r"[ \n]+", " ", "".join(self.words))


def test_the_page_is_whole_and_asks_nothing_of_the_network() -> None:
    page = recipe_page(SHEET)
    reading = Reading(page)
    assert reading.open_ == []
    assert not [a for a in reading.attributes if a[1] in FETCHING]
    assert not re.search(r"@import|url\((?!#)", page)
    assert {"link", "img", "iframe", "form"}.isdisjoint(reading.tags)
    assert reading.tags.count("script") == 1
    assert len(page.encode()) < 500_000


def test_ids_are_unique_and_headings_step_down_by_one() -> None:
    reading = Reading(recipe_page(SHEET))
    ids = [value for _, name, value in reading.attributes if name == "id"]
    assert len(ids) == len(set(ids))
    levels = [int(tag[1]) for tag in reading.tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert set(levels) == {1, 2}
    named = [v for _, name, v in reading.attributes if name == "aria-labelledby" and v]
    assert {word for value in named for word in value.split()} <= set(ids)


def test_everything_the_sheet_says_can_be_read() -> None:
    text = Reading(
        recipe_page(SHEET, allergens=("milk", "egg"), date_published=date(2026, 3, 1))
    ).text.replace("\u00a0", " ")
    for component in SHEET.components:
        assert component.name in text
        for line in component.lines:
            assert line.name in text
    for words in (
        "190 g",
        "3/4 cup",
        "±15\u202f%",
        "Pipe 38 g of mousse, to 14 mm below the rim.",
        "6 of 60 mm disc",
        "2 × 200 g tub",
        "100 g left over",
        "2 h 10 min",
        "14 h 20 min",
        "milk, egg",
        "1 March 2026",
        "own figures",
        "“60 °C (150 °F)” should be “60 °C (140 °F)”",
        "8 mm thick around vanilla cream insert",
        "cook it to 82 °C and cool it below 5 °C",
        "(from memory)",
        "stays in bowl and bag \u22125.6 g",
    ):
        assert words in text, words


def test_small_errors_of_household_measures_are_not_shouted() -> None:
    text = Reading(recipe_page(SHEET)).text
    assert "±2" not in text and "±1\u202f%" not in text
    assert "±4\u202f%" in text


def test_hostile_text_is_shown_as_text_everywhere() -> None:
    page = recipe_page(hostile(), allergens=(HOSTILE,), author=HOSTILE, keywords=(HOSTILE,))
    reading = Reading(page)
    assert reading.open_ == []
    assert reading.tags.count("script") == 1
    assert "img" not in reading.tags
    assert not [a for a in reading.attributes if a[1].startswith("on")]
    assert "\x07" not in page
    assert reading.text.count(plain(HOSTILE)) >= 12


def test_parts_that_are_not_there_leave_no_empty_heading() -> None:
    bare = replace(
        SHEET, cut_outs=(), shopping=(), slips=(), walls=(), assembly=(), fill_steps=(), author=""
    )
    text = Reading(recipe_page(bare)).text
    for heading in ("Cut out", "To buy", "Corrections", "Fill the mould", "Put together"):
        assert heading not in text


def test_allergens_are_said_where_there_are_any() -> None:
    page = recipe_page(SHEET, allergens=("milk", "gluten (wheat)"))
    assert "Contains milk, gluten (wheat)." in Reading(page).text
    assert "Contains" not in Reading(recipe_page(SHEET)).text


def test_a_page_without_cautions_still_defers_to_the_rules_of_the_place() -> None:
    text = Reading(recipe_page(replace(SHEET, cautions=()))).text
    assert "the food rules of your place decide" in text


def test_a_frame_is_shown_whole_and_its_size_is_said_once() -> None:
    mould = replace(SHEET.mould, name="Frame 40 x 30 cm", size="400 x 300 mm", pieces_per_cavity=36)
    text = Reading(recipe_page(replace(SHEET, mould=mould))).text
    assert "The whole, before it is cut into 36, to scale." in text
    assert "Frame 40 × 30\u00a0cm" in text
    assert "400 × 300\u00a0mm Blackcurrant" not in text
