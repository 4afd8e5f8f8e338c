"""Drawings as pictures of dots, for what takes no vector drawing, and the card of a post."""

from __future__ import annotations

from entremetry.dessert.batch_sheet import BatchSheet, Section
from entremetry.publish.description import description
from entremetry.publish.description_text import cut
from entremetry.publish.drawing import PAPER, section_svg
from entremetry.publish.json_ld import recipe_yield
from entremetry.publish.recipe_page import accent
from entremetry.publish.typesetting import SERIF, line, printed, set_in_type
from entremetry.words import say

PAGE_WIDTH = 1600
"""Width of the drawing for a page. [px]"""
CARD = (1200, 630)
"""Width and height of a picture that sites show with a link; common practice. [px]"""
CARD_TITLES = ((24, 68.0), (48, 56.0))
SMALLEST_TITLE = 42.0
LONGEST_NAME, LONGEST_ABOUT = 90, 150


def png(svg: str, width_px: int) -> bytes:
    """Draw an SVG of its own, so many dots wide, in the fonts of this machine."""
    from resvg_py import svg_to_bytes

    return bytes(svg_to_bytes(svg_string=svg, width=width_px))


def section_png(section: Section, *, width_px: int = PAGE_WIDTH) -> bytes:
    """The labelled section on paper, so many dots wide, the same on every machine."""
    words = {
        "drawing": section_svg(section, title=say("Section"), standalone=True, font=SERIF),
        "alt": line(description(section)),
        "paper": PAPER,
        "accent": PAPER,
    }
    return set_in_type("plate.typ", words, form="png", ppi=width_px / 10.0)


def card_svg(sheet: BatchSheet) -> bytes:
    """Name and section side by side, as a vector drawing whose letters need no font."""
    return set_in_type("card.typ", _card(sheet), form="svg")


def card_png(sheet: BatchSheet) -> bytes:
    """The same as dots, 1200 by 630."""
    return set_in_type("card.typ", _card(sheet), form="png")


def _card(sheet: BatchSheet) -> dict[str, object]:
    name = printed(cut(sheet.name, LONGEST_NAME)) or say("Dessert")
    sizes = (size for most, size in CARD_TITLES if len(name) <= most)
    return {
        "name": name,
        "size": next(sizes, SMALLEST_TITLE),
        "about": printed(cut(sheet.about, LONGEST_ABOUT)),
        "makes": recipe_yield(sheet),
        "drawing": section_svg(sheet.section, title=say("Section"), labelled=False, font=SERIF),
        "alt": line(description(sheet.section)),
        "paper": PAPER,
        "accent": accent(sheet.name)["light"],
        "width": CARD[0],
        "height": CARD[1],
    }
