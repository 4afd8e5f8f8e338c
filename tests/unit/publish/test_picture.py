"""Drawings as dots."""

from __future__ import annotations

import re
import struct
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from entremetry.publish.picture import CARD, PAGE_WIDTH, card_png, card_svg, png, section_png
from unit.publish.foreign import TEXTS, foreign
from unit.publish.sections import dome, glass
from unit.publish.sheets import SHEET

RED = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" viewBox="0 0 20 10">'
    '<rect width="20" height="10" fill="#c00"/></svg>'
)


def test_a_picture_is_as_wide_as_asked_and_keeps_its_proportions() -> None:
    picture = png(RED, 300)
    assert picture.startswith(b"\x89PNG")
    assert struct.unpack(">II", picture[16:24]) == (300, 150)


def size(picture: bytes) -> tuple[int, ...]:
    """Width and height that a picture of dots says it has. [px]"""
    return struct.unpack(">II", picture[16:24])


def test_a_card_has_the_size_that_sites_show_and_a_drawing_for_a_page_its_width() -> None:
    assert size(card_png(SHEET)) == CARD == (1200, 630)
    for section in (dome(), glass()):
        wide, high = size(section_png(section))
        assert wide == PAGE_WIDTH == 1600
        assert 500 < high < 3000


def test_a_card_is_a_vector_drawing_that_asks_for_no_font_and_no_other_file() -> None:
    drawing = card_svg(SHEET).decode()
    root = ElementTree.fromstring(drawing)
    assert root.get("viewBox") == "0 0 1200 630"
    assert not list(root.iter("{http://www.w3.org/2000/svg}text"))
    assert not re.search(r'href="(?!#|data:image/svg)', drawing)


def test_the_same_sheet_gives_the_same_pictures() -> None:
    assert card_png(SHEET) == card_png(SHEET) and card_svg(SHEET) == card_svg(SHEET)
    assert card_png(SHEET) != card_png(replace(SHEET, name="Another"))


@pytest.mark.parametrize("name", TEXTS)
def test_a_card_of_hostile_words_is_still_a_card(name: str) -> None:
    assert size(card_png(foreign(TEXTS[name]))) == CARD
