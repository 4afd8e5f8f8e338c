"""The recipe as structured data (schema_org_30)."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any

from entremetry.dessert.batch_sheet import BatchSheet, IngredientAmount
from entremetry.publish.markup import plain
from entremetry.publish.typography import NARROW, NO_BREAK, grams, typeset
from entremetry.words import current, say, say_count

CONTEXT = "https://schema.org"
DANGEROUS = {
    "<": "\\u003c",
    ">": "\\u003e",
    "&": "\\u0026",
    "\u2028": "\\u2028",
    "\u2029": "\\u2029",
}


def recipe_json_ld(
    sheet: BatchSheet,
    *,
    image: str = "section.svg",
    author: str = "",
    date_published: date | None = None,
    keywords: Sequence[str] = (),
) -> dict[str, Any]:
    """A Recipe with one HowToSection for every stretch of the work.

    `image` is an address, relative to the page unless absolute. There is no cookTime: what takes
    long is the freezer, and that stands in totalTime. Nutrition is left out until it is computed.
    """
    writer = plain(author or sheet.author)
    words = {
        "@context": CONTEXT,
        "@type": "Recipe",
        "name": plain(sheet.name),
        "inLanguage": current().tag,
        "description": plain(sheet.about),
        "image": [image] if image else None,
        "author": {"@type": "Person", "name": writer} if writer else None,
        "datePublished": date_published.isoformat() if date_published else None,
        "keywords": ", ".join(plain(word) for word in keywords),
        "recipeCategory": say("Dessert"),
        "recipeYield": recipe_yield(sheet),
        "prepTime": duration(sheet.hands_on) if sheet.hands_on > 0 else None,
        "totalTime": duration(sheet.time) if sheet.time > 0 else None,
        "recipeIngredient": [
            ingredient(line, component.name)
            for component in sheet.components
            for line in component.lines
        ],
        "recipeInstructions": instructions(sheet),
    }
    return {key: value for key, value in words.items() if value}


def recipe_yield(sheet: BatchSheet) -> str:
    """How many pieces, and how many people where that differs."""
    pieces = say_count("{number} piece", "{number} pieces", sheet.pieces)
    people = sheet.pieces * sheet.serves
    if sheet.serves == 1:
        return pieces
    return say("{pieces}, {number} servings", pieces=pieces, number=people)


def duration(seconds: float) -> str:
    """Duration in hours, minutes and seconds (iso_8601), never in days: not all have 24 hours."""
    whole, rest = divmod(round(seconds), 3600)
    minutes, left = divmod(rest, 60)
    parts = f"{whole}H" * bool(whole) + f"{minutes}M" * bool(minutes) + f"{left}S" * bool(left)
    return f"PT{parts or '0S'}"


def ingredient(line: IngredientAmount, component: str) -> str:
    """Amount, name and household measure of one line, and what it is for."""
    household = f" ({line.household})" if line.household else ""
    return said(
        say(
            "{amount} {ingredient}, for {component}",
            amount=grams(line.mass),
            ingredient=f"{line.name}{household}",
            component=component,
        )
    )


def said(text: str) -> str:
    """Text with the signs of print but ordinary spaces, which readers of amounts expect."""
    return plain(typeset(text)).replace(NO_BREAK, " ").replace(NARROW, " ")


def instructions(sheet: BatchSheet) -> list[dict[str, Any]]:
    """Sections in the order of the work: components, filling, putting together."""
    return [
        section(name, steps, position)
        for position, (name, steps) in enumerate(stretches(sheet), start=1)
    ]


def stretches(sheet: BatchSheet) -> list[tuple[str, tuple[str, ...]]]:
    """Name and sentences of every stretch of work that has any."""
    filling = tuple(step.text for step in sheet.fill_steps)
    told = set(filling) & set(sheet.assembly)
    every = [(component.name, component.method) for component in sheet.components]
    every.append((fill_heading(sheet), () if told else filling))
    every.append((say("Put together"), sheet.assembly))
    return [(name, steps) for name, steps in every if steps]


def fill_heading(sheet: BatchSheet) -> str:
    """What the filling is called."""
    return say("Fill the glass") if sheet.mould.is_vessel else say("Fill the mould")


def section(name: str, steps: Iterable[str], position: int) -> dict[str, Any]:
    """HowToSection with its steps."""
    return {
        "@type": "HowToSection",
        "name": plain(name),
        "position": position,
        "itemListElement": [
            {"@type": "HowToStep", "text": said(text), "position": number}
            for number, text in enumerate(steps, start=1)
        ],
    }


def script_text(document: dict[str, Any], *, indent: int | None = 1) -> str:
    """JSON that may stand inside a script element, whatever its texts hold."""
    separators = (",", ":") if indent is None else None
    text = json.dumps(document, ensure_ascii=False, indent=indent, separators=separators)
    for letter, escape in DANGEROUS.items():
        text = text.replace(letter, escape)
    return text
