"""The recipe on paper, for the reader: everything the page says, as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from entremetry.dessert.batch_sheet import (
    BatchSheet,
    MouldUse,
)
from entremetry.publish.description import description
from entremetry.publish.description_text import LONGEST_NAME, cut
from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import fill_heading, recipe_yield, stretches
from entremetry.publish.print_parts import cavities, component_words, cut_out, numbers
from entremetry.publish.recipe_page import accent
from entremetry.publish.typesetting import SERIF, Paper, line, printed, set_in_type
from entremetry.publish.typography import grams, hours, millilitres, millimetres
from entremetry.words import full_date, say, say_as, say_count, say_later

TITLE_SIZES = ((34, 27.0), (70, 22.0), (200, 15.0))
"""Size of a title of at most so many letters [pt]; longer ones are set in the last."""
SMALLEST_TITLE = 10.0
NOTHING_FOUND = say_later(
    "Nothing was found to warn of in what is written here, which promises nothing: your "
    "thermometer and the food rules of your place decide, and what is doubtful is thrown away."
)


def print_sheet(
    sheet: BatchSheet,
    *,
    paper: Paper = Paper.A4,
    allergens: Sequence[str] = (),
    date_published: date | None = None,
) -> bytes:
    """The recipe as a PDF that can be read aloud, searched and copied from."""
    told = contents(sheet, allergens=allergens, date_published=date_published)
    return set_in_type("print_sheet.typ", {**told, "paper": PAPERS[paper]}, on=date_published)


PAPERS = {Paper.A4: "a4", Paper.LETTER: "us-letter"}


def contents(
    sheet: BatchSheet, *, allergens: Sequence[str], date_published: date | None
) -> dict[str, Any]:
    """All that is printed, in words."""
    made = [component for component in sheet.components if component.method]
    day = full_date(date_published) if date_published else ""
    return {
        **head(sheet),
        "about": printed(sheet.about),
        "keywords": [line(word) for word in sheet.keywords],
        "facts": facts(sheet),
        "by": printed(", ".join(part for part in (sheet.author, day) if part)),
        "caption": caption(sheet),
        "allergens": printed(", ".join(allergens)),
        "components": [component_words(component) for component in sheet.components],
        "stretches": [
            {
                "name": name,
                "note": cavities(sheet) if name == fill_heading(sheet) else "",
                "steps": [printed(sentence) for sentence in sentences],
            }
            for name, sentences in stretches(sheet)[len(made) :]
        ],
        "cut-outs": [cut_out(cut) for cut in sheet.cut_outs],
        "shopping": [
            {
                "name": printed(item.name),
                "buy": printed(item.buy or grams(item.mass)),
                "note": printed(item.effect)
                or (
                    say("{mass} left over", mass=grams(item.left_over))
                    if item.left_over >= 0.001
                    else ""
                ),
            }
            for item in sheet.shopping
        ],
        "slips": [
            printed(
                say(
                    "{place}: “{found}” should be “{right}”.",
                    place=slip.place,
                    found=slip.found,
                    right=slip.right,
                )
            )
            for slip in sheet.slips
        ],
        "cautions": [printed(caution) for caution in sheet.cautions or (say(NOTHING_FOUND),)],
        "numbers": numbers(sheet),
        "words": words(),
    }


def words() -> dict[str, str]:
    """Headings of the sheet."""
    return {
        "contains": printed(say_as("before a list of allergens", "Contains")),
        "cut-out": printed(say("Cut out")),
        "to-buy": printed(say("To buy")),
        "corrections": printed(say("Corrections")),
        "take-care": printed(say("Take care")),
        "numbers": printed(say("How the numbers were found")),
    }


def head(sheet: BatchSheet) -> dict[str, Any]:
    """Title, drawing and colour, which every sheet of paper has."""
    title = printed(sheet.name) or say("Dessert")
    name = printed(cut(sheet.name, LONGEST_NAME))
    size = next((size for most, size in TITLE_SIZES if len(title) <= most), SMALLEST_TITLE)
    return {
        "title": title,
        "title-size": size,
        "author": line(sheet.author),
        "kicker": mould_words(sheet),
        "foot": " · ".join([name, recipe_yield(sheet), say("computed with Entremetry")]),
        "accent": accent(sheet.name)["light"],
        "drawing": section_svg(sheet.section, title=say("Section"), standalone=False, font=SERIF),
        "drawing-alt": line(description(sheet.section)),
    }


def mould_words(sheet: BatchSheet) -> str:
    """The mould with its size, which is said once."""
    mould = sheet.mould
    named_by_size = any(letter.isdigit() for letter in mould.name)
    parts = (mould.name, "" if named_by_size else mould.size)
    return printed(" · ".join(part for part in parts if part))


def facts(sheet: BatchSheet) -> list[dict[str, str]]:
    """What stands beside the drawing."""
    mould = sheet.mould
    words = {
        say("Makes"): say_count("{number} piece", "{number} pieces", sheet.pieces),
        say("Serves"): str(sheet.pieces * sheet.serves) if sheet.serves != 1 else "",
        say("One piece"): grams(sheet.piece_mass.value),
        holder(mould): millilitres(mould.cavity_volume.value),
        say("At the bench"): hours(sheet.hands_on) if sheet.hands_on > 0 else "",
        say("From start to serving"): hours(sheet.time) if sheet.time > 0 else "",
    }
    return [{"name": printed(name), "value": value} for name, value in words.items() if value]


def holder(mould: MouldUse) -> str:
    """What is filled, in front of what it holds."""
    if mould.is_vessel:
        return say("One glass holds")
    return say("The mould holds") if mould.cavities_per_tray == 1 else say("One cavity holds")


def caption(sheet: BatchSheet) -> str:
    """What is drawn, and how thick the walls are."""
    cut = sheet.mould.pieces_per_cavity
    first = (
        say("The whole, before it is cut into {number}, to scale.", number=cut)
        if cut > 1
        else say("One piece cut through the middle, to scale.")
    )
    walls = (
        say(
            "{around} is at least {thickness} thick around {insert}.",
            around=wall.around,
            thickness=millimetres(wall.thinnest),
            insert=wall.insert,
        )
        for wall in sheet.walls
    )
    return printed(" ".join([first, *walls]))
