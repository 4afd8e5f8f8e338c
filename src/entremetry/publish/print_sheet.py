"""The recipe on paper, for the reader: everything the page says, as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch, CutOuts, IngredientAmount
from entremetry.publish.description import description
from entremetry.publish.description_text import LONGEST_NAME, cut
from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import fill_heading, recipe_yield, stretches
from entremetry.publish.recipe_page import accent
from entremetry.publish.typesetting import SERIF, Paper, line, printed, set_in_type
from entremetry.publish.typography import grams, hours, millilitres, millimetres, per_cent

TITLE_SIZES = ((34, 27.0), (70, 22.0), (200, 15.0))
"""Size of a title of at most so many letters [pt]; longer ones are set in the last."""
SMALLEST_TITLE = 10.0
NO_VOLUME = frozenset({"soak", "garnish", "base", "crumble"})
WORTH_SAYING = 0.03
NOTHING_FOUND = (
    "Nothing was found to warn of in what is written here, which promises nothing: your "
    "thermometer and the food rules of your place decide, and what is doubtful is thrown away."
)
GRAMS_LEAD = (
    "Grams are the measure; cups, spoons and pieces are rounded to what a hand can measure, and "
    "± says by how much where that is 3 % or more."
)


def print_sheet(
    sheet: BatchSheet,
    *,
    paper: Paper = Paper.A4,
    allergens: Sequence[str] = (),
    date_published: date | None = None,
) -> bytes:
    """The recipe as a PDF that can be read aloud, searched and copied from."""
    words = contents(sheet, allergens=allergens, date_published=date_published)
    return set_in_type("print_sheet.typ", {**words, "paper": PAPERS[paper]}, on=date_published)


PAPERS = {Paper.A4: "a4", Paper.LETTER: "us-letter"}


def contents(
    sheet: BatchSheet, *, allergens: Sequence[str], date_published: date | None
) -> dict[str, Any]:
    """All that is printed, in words."""
    made = [component for component in sheet.components if component.method]
    day = f"{date_published.day} {date_published:%B %Y}" if date_published else ""
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
                or (f"{grams(item.left_over)} left over" if item.left_over >= 0.001 else ""),
            }
            for item in sheet.shopping
        ],
        "slips": [
            printed(f"{slip.place}: “{slip.found}” should be “{slip.right}”.")
            for slip in sheet.slips
        ],
        "cautions": [printed(caution) for caution in sheet.cautions or (NOTHING_FOUND,)],
        "numbers": numbers(sheet),
    }


def head(sheet: BatchSheet) -> dict[str, Any]:
    """Title, drawing and colour, which every sheet of paper has."""
    title = printed(sheet.name) or "Dessert"
    name = printed(cut(sheet.name, LONGEST_NAME))
    size = next((size for most, size in TITLE_SIZES if len(title) <= most), SMALLEST_TITLE)
    return {
        "title": title,
        "title-size": size,
        "author": line(sheet.author),
        "kicker": mould_words(sheet),
        "foot": f"{name} · {recipe_yield(sheet)} · computed with Entremetry",
        "accent": accent(sheet.name)["light"],
        "drawing": section_svg(sheet.section, title="Section", standalone=False, font=SERIF),
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
    vessel = "One glass" if mould.is_vessel else "One cavity"
    holder = "The mould" if not mould.is_vessel and mould.cavities_per_tray == 1 else vessel
    words = {
        "Makes": "1 piece" if sheet.pieces == 1 else f"{sheet.pieces} pieces",
        "Serves": str(sheet.pieces * sheet.serves) if sheet.serves != 1 else "",
        "One piece": grams(sheet.piece_mass.value),
        f"{holder} holds": millilitres(mould.cavity_volume.value),
        "At the bench": hours(sheet.hands_on) if sheet.hands_on > 0 else "",
        "From start to serving": hours(sheet.time) if sheet.time > 0 else "",
    }
    return [{"name": name, "value": value} for name, value in words.items() if value]


def caption(sheet: BatchSheet) -> str:
    """What is drawn, and how thick the walls are."""
    cut = sheet.mould.pieces_per_cavity
    first = (
        f"The whole, before it is cut into {cut}, to scale."
        if cut > 1
        else "One piece cut through the middle, to scale."
    )
    walls = (
        f"{wall.around} is at least {millimetres(wall.thinnest)} thick around {wall.insert}."
        for wall in sheet.walls
    )
    return printed(" ".join([first, *walls]))


def component_words(component: ComponentBatch) -> dict[str, Any]:
    """One component: what it weighs, what goes in, what is done."""
    amounts = [
        f"{grams(component.mass.value)} to make",
        f"{grams(component.ready_mass)} for use",
        f"{grams(component.per_piece.value)} a piece",
    ]
    if component.kind not in NO_VOLUME and component.volume.value > 0:
        amounts.append(millilitres(component.volume.value))
    return {
        "name": printed(component.name),
        "amount": " · ".join(amounts),
        "lines": [
            {
                "mass": grams(each.mass),
                "name": printed(each.name) + (" (own figures)" if each.own else ""),
                "note": printed(each.note),
                "measure": measure(each),
            }
            for each in component.lines
        ],
        "steps": [printed(sentence) for sentence in component.method],
    }


def measure(each: IngredientAmount) -> str:
    """Household measure, with its error where that is worth saying and not said already."""
    error = each.household_error
    told = not each.household or error is None or "%" in each.household
    if told or abs(error or 0.0) < WORTH_SAYING:
        return printed(each.household)
    return f"{printed(each.household)} ±{per_cent(abs(error or 0.0))}"


def cavities(sheet: BatchSheet) -> str:
    """How many are filled, where it is more than one."""
    mould = sheet.mould
    if mould.cavities <= 1:
        return ""
    holders = "glasses" if mould.is_vessel else "cavities"
    goes = f", in {mould.fillings} fillings of the mould" if mould.fillings > 1 else ""
    return f"{mould.cavities} {holders}{goes}; the masses are for one."


def cut_out(cut: CutOuts) -> str:
    """How one base comes out of its sheets."""
    sheets = "1 sheet" if cut.sheets == 1 else f"{cut.sheets} sheets"
    pattern = f", {cut.pattern}" if cut.pattern else ""
    offcuts = f" ({cut.offcuts})" if cut.offcuts else ""
    return printed(
        f"{cut.count} of {cut.size}, {cut.per_sheet} from a sheet of {cut.sheet}: "
        f"{sheets}{pattern}. "
        f"{grams(cut.rolled_mass)} to spread or roll, {grams(cut.offcut_mass)} of offcuts{offcuts}."
    )


def numbers(sheet: BatchSheet) -> list[str]:
    """Assumptions, losses and whose figures were taken."""
    losses = [
        f"{component.name}: "
        + "; ".join(
            f"{change.reason} {'+' if change.mass > 0 else ''}{grams(change.mass)}"
            for change in component.changes
        )
        + "."
        for component in sheet.components
        if component.changes
    ]
    own = [
        f"{each.name} has the author’s own figures"
        + (f" for {', '.join(sorted(each.overridden))}." if each.overridden else ".")
        for each in sheet.own_ingredients
    ]
    return [printed(words) for words in (*sheet.assumptions, GRAMS_LEAD, *losses, *own)]
