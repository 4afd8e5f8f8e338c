"""How much a pasted line means, or the question how much."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from entremetry.dessert.draft_question import Question
from entremetry.dessert.pasted_line import PastedLine
from entremetry.dessert.weighing import mass_of_amount
from entremetry.errors import QuantityError, UnknownName
from entremetry.larder.generic import generic_for
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.quantities import Kind, find_slips, format_mass, parse_volume
from entremetry.quantities.amount import singular
from entremetry.quantities.number import number
from entremetry.quantities.things import things
from entremetry.words import say

MOST_CHOICES = 9


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """One line whose amount is to be settled: its ingredient is known."""

    pasted: PastedLine
    key: str
    ingredient: Ingredient
    measures: str | None

    def ask(
        self, text: str, choices: tuple[tuple[str, str], ...] = (), refused: str = ""
    ) -> Question:
        """Make the question about the amount."""
        said = say("'{amount}' cannot be weighed.", amount=refused)
        return Question(
            key=f"{self.key}-amount",
            about=self.pasted.written,
            text=f"{said} {text}" if refused else text,
            choices=choices,
            example="30 g",
            refused=refused,
        )


def amount_of(wanted: Wanted, answer: str | None) -> str | Question:
    """The amount as a document writes it, or what to ask."""
    if answer is not None:
        return answer if _weighs(wanted, answer) else _ask(wanted, refused=answer)
    pasted = wanted.pasted
    if pasted.needs_country and wanted.measures is None:
        return pasted.amount  # whose spoon is meant is asked once, for all lines
    if not pasted.number or _comes_in_sizes(wanted):
        return _ask(wanted)
    amount = _counted(wanted) or pasted.amount
    if not _weighs(wanted, amount):
        return _ask(wanted)
    return _ask_of_pair(wanted) or amount


def _ask_of_pair(wanted: Wanted) -> Question | None:
    """What to ask where a line states its amount twice, and the two do not agree."""
    slips = find_slips(
        wanted.pasted.written,
        mass_per_volume=lambda _: _mass_per_volume(wanted),
        measures=wanted.measures,
    )
    if not slips:
        return None
    either = (wanted.pasted.amount, slips[0].found)
    text = say("The two amounts do not agree: {reason}. Which is right?", reason=slips[0].because)
    return wanted.ask(text, tuple((amount, amount) for amount in either))


def _mass_per_volume(wanted: Wanted) -> float | None:
    """Mass of a cup of it over the volume of the cup, as the household weighs it. [kg/m³]"""
    try:
        return mass_of_amount("1 us cup", wanted.ingredient, measures=None) / parse_volume(
            "1 us cup"
        )
    except (QuantityError, UnknownName):
        return None


def _weighs(wanted: Wanted, amount: str) -> bool:
    try:
        mass_of_amount(amount, wanted.ingredient, measures=wanted.measures)
    except (QuantityError, UnknownName):
        return False
    return True


def _counted(wanted: Wanted) -> str | None:
    """Read '1 vanilla pod' as one pod: the thing counted stands in the name."""
    pasted = wanted.pasted
    if pasted.unit:
        return None
    known = {singular(weight.measure) for weight in wanted.ingredient.household}
    for word in reversed(pasted.name.split()):
        if singular(word) in known:
            return f"{pasted.number} {word}"
    return None


def _comes_in_sizes(wanted: Wanted) -> bool:
    """Tell whether what is counted weighs this or that, by its size."""
    return wanted.pasted.kind in (None, Kind.COUNT) and _sizes(wanted) is not None


def _sizes(wanted: Wanted) -> tuple[str, tuple[str, ...]] | None:
    """What to ask and the sizes to choose from; the words of the line, 'large', rule some out."""
    words = wanted.pasted.name.split()
    for start in range(len(words)):
        generic = generic_for(" ".join(words[start:]))
        if generic is not None and generic.measures:
            size = " ".join(words[:start]).casefold()
            fitting = tuple(m for m in generic.measures if m.startswith(size))
            return say(generic.question), fitting or generic.measures
    return None


def _ask(wanted: Wanted, refused: str = "") -> Question:
    pasted, name = wanted.pasted, ingredient_name(wanted.ingredient)
    if pasted.either:
        first, last = pasted.either
        text = say(
            "{first} or {last} of {name}? The line leaves it open.",
            first=first,
            last=last,
            name=name,
        )
        return wanted.ask(text, tuple((amount, amount) for amount in pasted.either), refused)
    if not pasted.number:
        text = say("How much {name}? The line does not say.", name=name)
        return wanted.ask(text, (), refused)
    if sizes := _sizes(wanted):
        question, measures = sizes
        return wanted.ask(say(question), _so_many(pasted.number, measures), refused)
    text = say("How many grams are '{amount}' of {name}?", amount=pasted.amount, name=name)
    return wanted.ask(text, _packs(wanted) + _things(wanted), refused)


def _packs(wanted: Wanted) -> tuple[tuple[str, str], ...]:
    """What a tin or a stick of it usually holds, as a mass."""
    count = _number(wanted.pasted.number)
    return tuple(
        (
            format_mass(count * pack.mass),
            say(
                "{number} × {pack} as usually sold",
                number=wanted.pasted.number,
                pack=things(pack.name),
            ),
        )
        for pack in wanted.ingredient.packs
        if not pack.whole and 0.0 < count * pack.mass < 100.0
    )


def _things(wanted: Wanted) -> tuple[tuple[str, str], ...]:
    """Counted things the larder knows the weight of, if the line counts but does not say what."""
    if wanted.pasted.unit:
        return ()
    counted = [w.measure for w in wanted.ingredient.household if not w.measure.startswith("us ")]
    choices = _so_many(wanted.pasted.number, counted)
    return tuple(choice for choice in choices if _weighs(wanted, choice[0]))[:MOST_CHOICES]


def _so_many(count: str, measures: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """So many of each of these things: as a document writes it, and as it is said."""
    said = ((measure, things(measure, _number(count))) for measure in measures)
    return tuple((f"{count} {measure}", f"{count} {thing}") for measure, thing in said)


def _number(text: str) -> float:
    try:
        return number(text)
    except QuantityError:
        return 0.0
