"""'Does it contain that?': an allergen or an ingredient, and which lines bring it."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.errors import UnknownName
from entremetry.labels.english_names import allergen_word
from entremetry.larder.allergens import ALLERGENS
from entremetry.larder.spoken_name import ingredient_name
from entremetry.questions import said
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.words import say, say_as

KIND = "contains"
LABEL = "eu_1169_2011"


def contained(dessert: Dessert, name: str) -> Answer:
    """Whether an allergen or an ingredient is in any line of a dessert.

    Raises
    ------
    UnknownName
        With the nearest names, if it is neither an allergen nor an ingredient of the larder.
    """
    word, shown, codes = _meant(dessert, name)
    brought = [
        (component, line)
        for component, line in _lines(dessert)
        if line.ingredient is not None
        and (
            codes & (line.ingredient.allergens_eu | line.ingredient.allergens_us)
            if codes
            else word in (line.ingredient.id, line.ingredient.name)
        )
    ]
    return Answer(
        kind=KIND,
        question=say("Does it contain {what}?", what=shown),
        reply=Reply.YES if brought else Reply.NO,
        says=_says(bool(brought), bool(codes)),
        facts=(*(_fact(component, line) for component, line in brought), *_care(bool(codes))),
    )


def allergen_names() -> dict[str, frozenset[str]]:
    """Codes of every allergen by the words one asks with: 'milk', 'nuts', 'hazelnut', 'gluten'."""
    found: dict[str, set[str]] = {}
    for word, declared in ALLERGENS.items():
        codes = {code for code in (declared.eu, declared.us) if code}
        groups = {code.partition(":")[0].replace("-", " ") for code in codes}
        for each in {word, *groups, *(allergen_word(code) for code in codes)}:
            found.setdefault(each, set()).update(codes)
    return {word: frozenset(codes) for word, codes in sorted(found.items())}


def _meant(dessert: Dessert, name: str) -> tuple[str, str, frozenset[str]]:
    """What is asked for, how it is said, and its codes if it is an allergen."""
    allergens = allergen_names()
    word = name.strip().casefold().removesuffix(" allergen")
    if word in allergens:
        return word, say_as("allergen", word), allergens[word]
    known = dessert.larder.known(name)
    if known is not None:
        return known.name, ingredient_name(known), frozenset()
    names = {line.ingredient.name for _, line in _lines(dessert) if line.ingredient is not None}
    raise UnknownName("allergen or ingredient", name, {*allergens, *names})


def _lines(dessert: Dessert) -> Iterator[tuple[Component, Line]]:
    for component in dessert.components:
        for line in component.lines:
            yield component, line


def _says(brought: bool, allergen: bool) -> str:
    if brought:
        return say("Yes.")
    if allergen:
        return say("No line of this dessert brings it; traces are another matter.")
    return say("No line of this dessert is that.")


def _fact(component: Component, line: Line) -> Fact:
    return Fact(
        text=say(
            "{component}: {mass} of {line}",
            component=component.name,
            mass=said.mass(line.mass),
            line=ingredient_name(line.ingredient) if line.ingredient else line.name,
        )
    )


def _care(allergen: bool) -> tuple[Fact, ...]:
    if not allergen:
        return ()
    return (
        Fact(
            text=say(
                "Read the packets in your hand, traces included: they decide, and so do the rules "
                "of your place."
            ),
            because=say("the larder knows what is usual in an ingredient, not what was bought"),
            source=LABEL,
        ),
    )
