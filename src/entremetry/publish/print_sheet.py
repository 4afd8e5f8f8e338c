"""The recipe on paper, for the reader: everything the page says, as PDF."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from entremetry.dessert.batch_sheet import (
    BatchSheet,
    ComponentBatch,
    CutOuts,
    IngredientAmount,
    MouldUse,
)
from entremetry.publish.description import description
from entremetry.publish.description_text import LONGEST_NAME, cut
from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import fill_heading, recipe_yield, stretches
from entremetry.publish.recipe_page import accent
from entremetry.publish.typesetting import SERIF, Paper, line, printed, set_in_type
from entremetry.publish.typography import grams, hours, millilitres, millimetres, per_cent
from entremetry.words import full_date, say, say_as, say_count, say_later

TITLE_SIZES = ((34, 27.0), (70, 22.0), (200, 15.0))
"""Size of a title of at most so many letters [pt]; longer ones are set in the last."""
SMALLEST_TITLE = 10.0
NO_VOLUME = frozenset({"soak", "garnish", "base", "crumble"})
WORTH_SAYING = 0.03
LEAST_LEFT_OVER = 0.001  # kg
NOTHING_FOUND = say_later(
    "Nothing was found to warn of in what is written here, which promises nothing: your "
    "thermometer and the food rules of your place decide, and what is doubtful is thrown away."
)
GRAMS_LEAD = say_later(
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


def component_words(component: ComponentBatch) -> dict[str, Any]:
    """One component: what it weighs, what goes in, what is done."""
    amounts = [
        say("{mass} to make", mass=grams(component.mass.value)),
        say("{mass} for use", mass=grams(component.ready_mass)),
        say("{mass} a piece", mass=grams(component.per_piece.value)),
    ]
    if component.kind not in NO_VOLUME and component.volume.value > 0:
        amounts.append(millilitres(component.volume.value))
    return {
        "name": printed(component.name),
        "amount": " · ".join(amounts),
        "lines": [
            {
                "mass": grams(each.mass),
                "name": printed(
                    say("{name} (own figures)", name=each.name) if each.own else each.name
                ),
                "note": printed(each.note),
                "measure": measure(each),
            }
            for each in component.lines
        ],
        "steps": [printed(sentence) for sentence in component.method],
    }


def own_name(each: IngredientAmount) -> str:
    """Name of an ingredient, with a word where its figures are the author's."""
    return say("{name} (own figures)", name=each.name) if each.own else each.name


def left_over(mass: float) -> str:
    """What remains of what was bought, where a scale shows it; mass in kg."""
    return say("{mass} left over", mass=grams(mass)) if mass >= LEAST_LEFT_OVER else ""


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
    masses = (
        say("{number} glasses", number=mould.cavities)
        if mould.is_vessel
        else say("{number} cavities", number=mould.cavities)
    )
    if mould.fillings <= 1:
        return printed(say("{cavities}; the masses are for one.", cavities=masses))
    return printed(
        say(
            "{cavities}, in {number} fillings of the mould; the masses are for one.",
            cavities=masses,
            number=mould.fillings,
        )
    )


OFFCUTS = (say_later("re-rolled"), say_later("kept"))


def cut_out(cut: CutOuts) -> str:
    """How one base comes out of its sheets."""
    sheets = say_count("{number} sheet", "{number} sheets", cut.sheets)
    found = say(
        "{count} of {size}, {per_sheet} from a sheet of {sheet}: {sheets}.",
        count=cut.count,
        size=cut.size,
        per_sheet=cut.per_sheet,
        sheet=cut.sheet,
        sheets=", ".join(part for part in (sheets, cut.pattern) if part),
    )
    masses = say(
        "{rolled} to spread or roll, {offcuts} of offcuts",
        rolled=grams(cut.rolled_mass),
        offcuts=grams(cut.offcut_mass),
    )
    kept = f" ({say(cut.offcuts)})" if cut.offcuts else ""
    return printed(f"{found} {masses}{kept}.")


def numbers(sheet: BatchSheet) -> list[str]:
    """Assumptions, losses and whose figures were taken."""
    losses = [
        say("{component}: {changes}.", component=component.name, changes=changes(component))
        for component in sheet.components
        if component.changes
    ]
    own = [
        say(
            "{name} has the author’s own figures for {fields}.",
            name=each.name,
            fields=", ".join(sorted(each.overridden)),
        )
        if each.overridden
        else say("{name} has the author’s own figures.", name=each.name)
        for each in sheet.own_ingredients
    ]
    return [printed(words) for words in (*sheet.assumptions, say(GRAMS_LEAD), *losses, *own)]


def changes(component: ComponentBatch) -> str:
    """What a component lost and took up while it was made."""
    return "; ".join(
        f"{change.reason} {'+' if change.mass > 0 else ''}{grams(change.mass)}"
        for change in component.changes
    )
