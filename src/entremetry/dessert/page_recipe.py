"""A recipe in the structured data of a page, written as the plain lines that pasting takes.

The author reads and mends those lines before anything is drafted from them, so that a page
is never believed unseen.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from html import unescape
from typing import Any

from entremetry.dessert.pasted_facts import fact_of
from entremetry.documents.saved_page import typed_nodes, types_of
from entremetry.errors import DocumentError, Fault
from entremetry.quantities import format_duration
from entremetry.words import say

RECIPE = "Recipe"
LONGEST_NAME = 120
MOST_LINES = 600
LONGEST_LINE = 1_000
TIMES = (
    ("prepTime", "Preparation time"),
    ("cookTime", "Cooking time"),
    ("totalTime", "Total time"),
)
_TAG = re.compile(r"</?[A-Za-z!][^<>]{0,500}>")
_BREAK = re.compile(r"<(?:br|/p|/li|/div)\b[^<>]{0,100}>", re.IGNORECASE)
_DURATION = re.compile(
    r"P(?:(\d{1,3})D)?(?:T(?:(\d{1,4})H)?(?:(\d{1,5})M)?(?:(\d{1,6})(?:\.\d+)?S)?)?", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PageRecipe:
    """Name of the recipe, its lines as pasted text, names of the page's other recipes.

    `pieces` is how many it makes, where the words count pieces and nothing else.
    """

    name: str
    text: str
    pieces: int | None = None
    others: tuple[str, ...] = ()


def page_recipe(text: str, *, file: str = "saved page") -> PageRecipe:
    """The first recipe of a saved page or of its JSON.

    Raises
    ------
    DocumentError
        If there is none, or none with lines, or the page cannot be read.
    """
    found = typed_nodes(text, wanted=RECIPE, file=file)
    with_lines = [node for node in found if _ingredients(node)]
    if not with_lines:
        said = (
            say("a recipe without ingredients")
            if found
            else say("no recipe in its structured data")
        )
        accepted = say("a page with a schema.org Recipe; or paste its lines and steps as text")
        raise _refused(file, said, accepted)
    first, *others = with_lines
    lines = [*_facts(first), "", *_ingredients(first), *_steps(first)]
    if len(lines) > MOST_LINES:
        said = say("a recipe of {number} lines", number=len(lines))
        raise _refused(file, said, say("up to {number} lines", number=MOST_LINES))
    return PageRecipe(
        name=next(_texts(first.get("name")), "")[:LONGEST_NAME],
        text="\n".join(lines).strip() + "\n",
        pieces=next((fact.pieces for line in lines if (fact := fact_of(line))), None),
        others=tuple(next(_texts(other.get("name")), "") for other in others),
    )


def shown_text(text: str) -> str:
    """Words of a page as plain text: no tags, no signs that turn or hide what follows."""
    bare = unescape(_TAG.sub(" ", _BREAK.sub("\n", unescape(text))))
    kept = "".join(
        sign if sign == "\n" or unicodedata.category(sign)[0] != "C" else " " * sign.isspace()
        for sign in bare
    )
    return "\n".join(" ".join(line.split()) for line in kept.split("\n"))


def _facts(recipe: dict[str, Any]) -> Iterator[str]:
    yields = [*_texts(recipe.get("recipeYield")), *_texts(recipe.get("yield"))]
    if yields:
        yield f"Makes: {max(yields, key=len)}"
    for name, words in TIMES:
        for text in _texts(recipe.get(name)):
            yield f"{words}: {_duration(text)}"


def _duration(text: str) -> str:
    """A duration of iso_8601 as people write it; anything else as it stands."""
    found = _DURATION.fullmatch(text.strip())
    if found is None or not any(found.groups()):
        return text
    days, hours, minutes, seconds = (int(part or 0) for part in found.groups())
    return format_duration(float(((days * 24 + hours) * 60 + minutes) * 60 + seconds))


def _ingredients(recipe: dict[str, Any]) -> list[str]:
    """Lines, and the headings among them: those that sections of ingredients bear."""
    lines: list[str] = []
    for said in (recipe.get("recipeIngredient") or recipe.get("ingredients"),):
        for value in said if isinstance(said, list) else [said]:
            lines.extend(_ingredient(value))
    return lines


def _ingredient(value: Any) -> Iterator[str]:
    if isinstance(value, dict) and isinstance(value.get("itemListElement"), list):
        yield from _headings(value)
        for inner in value["itemListElement"]:
            yield from _texts(inner)
    else:
        yield from _texts(value)


def _headings(value: dict[str, Any]) -> Iterator[str]:
    for name in _texts(value.get("name")):
        yield f"{name.rstrip(': ')}:"


def _steps(recipe: dict[str, Any]) -> list[str]:
    lines = list(_step(recipe.get("recipeInstructions")))
    return ["", "Method:", *lines] if lines else []


def _step(value: Any) -> Iterator[str]:
    """Sentences of instructions of any shape; depth has been bounded by the reader."""
    if isinstance(value, list):
        for inner in value:
            yield from _step(inner)
    elif isinstance(value, dict) and "itemListElement" in value:
        if "HowToSection" in types_of(value):
            yield from _headings(value)
        yield from _step(value["itemListElement"])
    elif isinstance(value, dict) and "item" in value:
        yield from _step(value["item"])
    else:
        yield from _texts(value)


def _texts(value: Any) -> Iterator[str]:
    """Lines of text in a value: a text, a number, an object with a text or a name, a list."""
    if isinstance(value, list):
        for inner in value:
            yield from _texts(inner)
    elif isinstance(value, dict):
        keys = ("text", "name", "value", "@value")
        yield from _texts(next((value[key] for key in keys if value.get(key)), None))
    elif isinstance(value, str | int | float) and not isinstance(value, bool):
        for line in shown_text(str(value)).split("\n"):
            if line:
                yield line if len(line) <= LONGEST_LINE else line[:LONGEST_LINE] + " …"


def _refused(file: str, found: str, accepted: str) -> DocumentError:
    field = say("saved page")
    return DocumentError([Fault(file=file, field=field, found=found, accepted=accepted)])
