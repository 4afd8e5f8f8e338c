"""Which ingredient a pasted line means, or the question which of several."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from entremetry.dessert.draft_question import Question
from entremetry.dessert.pasted_line import PastedLine
from entremetry.errors import UnknownName
from entremetry.larder.generic import Generic, generic_for
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.quantities import Kind
from entremetry.quantities.amount import singular
from entremetry.words import say

LEAVE_OUT = "leave-out"
_LEAVE_OUT_CHOICE = (LEAVE_OUT, "It is no ingredient: leave the line out")
SIZES = re.compile(r"^(?:small|medium|large|extra large|jumbo) (?=\w)")
_WORD = re.compile(r"[^\W\d_]+")
_STRENGTH = re.compile(r"\b(\d+)\s*(?:%|bloom)")


def ingredient_of(
    pasted: PastedLine, key: str, answer: str | None, larder: Larder
) -> Ingredient | Question:
    """The ingredient if the words, or the answer, mean one alone; else what to ask."""
    if answer is not None:
        return _answered(pasted, key, answer, larder)
    nearest: tuple[str, ...] = ()
    for name in _names(pasted):
        try:
            found = larder.resolve(name)
        except UnknownName as unknown:
            nearest = unknown.nearest
            continue
        return _which(pasted, key, found, larder) if isinstance(found, Generic) else found
    certain = _by_strength(pasted, larder)
    return certain or _unknown(pasted, key, nearest, larder)


def _names(pasted: PastedLine) -> Iterator[str]:
    """Names to try, the fullest first: 'leaves gelatine' says more than 'gelatine'."""
    if pasted.kind is Kind.COUNT and pasted.unit:
        yield f"{pasted.unit} {pasted.name}"
    yield pasted.name
    yield singular(pasted.name)
    sized = SIZES.sub("", pasted.name.casefold())
    generic = generic_for(sized)
    if generic is not None and generic.measures:
        yield sized


def _answered(pasted: PastedLine, key: str, answer: str, larder: Larder) -> Ingredient | Question:
    try:
        found = larder.resolve(answer)
    except UnknownName as unknown:
        return _refused(pasted, key, answer, unknown.nearest, larder)
    return _which(pasted, key, found, larder) if isinstance(found, Generic) else found


def _refused(
    pasted: PastedLine, key: str, answer: str, nearest: tuple[str, ...], larder: Larder
) -> Question:
    """Ask again what was asked, and say which answer cannot be taken."""
    asked = ingredient_of(pasted, key, None, larder)
    if not isinstance(asked, Question):
        asked = _unknown(pasted, key, nearest, larder)
    return replace(asked, text=f"The larder knows no '{answer}'. {asked.text}", refused=answer)


def _which(pasted: PastedLine, key: str, generic: Generic, larder: Larder) -> Ingredient | Question:
    """Ask which of several, unless the line itself states the strength of just one of them."""
    stated = _stated(f"{pasted.name} {pasted.note}")
    if certain := _only_choice(generic, stated, larder):
        return certain
    return Question(
        key=f"{key}-ingredient",
        about=pasted.written,
        text=say(generic.question),
        choices=tuple((choice, larder.find(choice).name) for choice in generic.choices),
    )


def _by_strength(pasted: PastedLine, larder: Larder) -> Ingredient | None:
    """Read 'gold leaves gelatine': a word for the strength within a name that is known."""
    words = pasted.name.split()
    for length in (1, 2):
        for start in range(len(words) - length + 1):
            generic = generic_for(" ".join((*words[:start], *words[start + length :])))
            stated = _stated(" ".join(words[start : start + length]))
            if generic and (certain := _only_choice(generic, stated, larder)):
                return certain
    return None


def _stated(text: str) -> frozenset[str]:
    """Words of a text, and those of its numbers that are a percentage or a Bloom strength."""
    folded = text.casefold()
    return frozenset(_WORD.findall(folded)) | frozenset(_STRENGTH.findall(folded))


def _only_choice(generic: Generic, stated: frozenset[str], larder: Larder) -> Ingredient | None:
    """The one choice whose id bears a strength or grade that is stated; None if not just one."""
    common = frozenset.intersection(*(frozenset(c.split("-")) for c in generic.choices))
    fitting = [c for c in generic.choices if stated & (frozenset(c.split("-")) - common)]
    return larder.find(fitting[0]) if len(fitting) == 1 and len(generic.choices) > 1 else None


def _unknown(pasted: PastedLine, key: str, nearest: tuple[str, ...], larder: Larder) -> Question:
    found = {larder.find(name).id: larder.find(name).name for name in nearest}
    return Question(
        key=f"{key}-ingredient",
        about=pasted.written,
        text=f"Which ingredient is '{pasted.name or pasted.written}'? "
        "The larder does not know it by this name.",
        choices=(*found.items(), _LEAVE_OUT_CHOICE),
        example="caster sugar",
    )
