"""One pasted line as a line of a formula, or the questions it raises."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.dessert.draft_question import Question
from entremetry.dessert.pasted_line import PastedLine
from entremetry.dessert.weighing import mass_of_amount
from entremetry.errors import QuantityError, UnknownName
from entremetry.larder.generic import Generic, generic_for
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.quantities import Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftedLine:
    """Key and value of a formula line."""

    key: str
    value: str | dict[str, Any]


def identifier(name: str) -> str:
    """Lower-case words joined by hyphens, without accents."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    words = re.findall(r"[a-z0-9]+", plain.casefold())
    return "-".join(words)[:80].strip("-") or "unnamed"


def drafted_line(
    pasted: PastedLine,
    key: str,
    answers: Mapping[str, str],
    larder: Larder,
    measures: str | None,
) -> tuple[DraftedLine, tuple[Question, ...]]:
    """The line as far as it is clear, and what must be asked about it."""
    found = _ingredient(pasted, key, answers.get("ingredient"), larder)
    if isinstance(found, Question):
        value = {"amount": answers.get("amount") or pasted.amount or "1 g", "ask": found.text}
        return DraftedLine(key=identifier(pasted.name), value=value), (found,)
    amount = answers.get("amount") or pasted.amount
    question = _amount_question(pasted, key, amount, found, measures)
    if question is not None:
        value = {"amount": amount or "1 g", "ask": question.text}
        return DraftedLine(key=found.id, value=value), (question,)
    if pasted.note:
        return DraftedLine(key=found.id, value={"amount": amount, "note": pasted.note}), ()
    return DraftedLine(key=found.id, value=amount), ()


def _ingredient(
    pasted: PastedLine, key: str, answer: str | None, larder: Larder
) -> Ingredient | Question:
    for name in (answer, f"{pasted.unit} {pasted.name}", pasted.name):
        if not name or (name != answer and pasted.kind is not Kind.COUNT and name != pasted.name):
            continue
        try:
            found = larder.resolve(name)
        except UnknownName as unknown:
            nearest = unknown.nearest
            continue
        if isinstance(found, Generic):
            return _which(pasted, key, found, larder)
        return found
    return Question(
        key=f"{key}-ingredient",
        about=pasted.written,
        text=f"What is '{pasted.name or pasted.written}'? The larder does not know it.",
        choices=tuple((larder.find(name).id, larder.find(name).name) for name in nearest),
        example="the id or name of an ingredient",
    )


def _which(pasted: PastedLine, key: str, generic: Generic, larder: Larder) -> Question:
    return Question(
        key=f"{key}-ingredient",
        about=pasted.written,
        text=generic.question,
        choices=tuple((choice, larder.find(choice).name) for choice in generic.choices),
    )


def _amount_question(
    pasted: PastedLine, key: str, amount: str, ingredient: Ingredient, measures: str | None
) -> Question | None:
    """Nothing if the amount can be weighed; what to ask if it cannot."""
    if pasted.needs_country and measures is None and amount == pasted.amount:
        return None
    if not amount:
        text = f"How much {ingredient.name}?"
        return Question(key=f"{key}-amount", about=pasted.written, text=text, example="2 g")
    sized = _sizes(pasted, amount, ingredient)
    if sized is not None:
        return _of_size(pasted, key, *sized)
    try:
        mass_of_amount(amount, ingredient, measures=measures)
    except (QuantityError, UnknownName) as error:
        return Question(
            key=f"{key}-amount",
            about=pasted.written,
            text=f"How much does '{amount}' of {ingredient.name} weigh? ({error})",
            choices=tuple(
                (f"{pasted.number} {weight.measure}", f"{pasted.number} {weight.measure}")
                for weight in ingredient.household
                if pasted.number and "us " not in weight.measure
            )[:8],
            example="30 g",
        )
    return None


def _sizes(
    pasted: PastedLine, amount: str, ingredient: Ingredient
) -> tuple[str, tuple[str, ...]] | None:
    """Sizes to choose from, where a counted thing comes in several."""
    generic = generic_for(pasted.name)
    if amount != pasted.amount or generic is None or not generic.measures:
        return None
    return (generic.question, generic.measures) if pasted.kind in (None, Kind.COUNT) else None


def _of_size(pasted: PastedLine, key: str, question: str, measures: tuple[str, ...]) -> Question:
    return Question(
        key=f"{key}-amount",
        about=pasted.written,
        text=question,
        choices=tuple((f"{pasted.number} {measure}", measure) for measure in measures),
    )
