"""The text below a video or a post: both measures, within so many letters, safety always kept."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch
from entremetry.errors import QuantityError
from entremetry.publish.json_ld import recipe_yield, said, stretches
from entremetry.publish.typesetting import line
from entremetry.publish.typography import grams, hours
from entremetry.words import say, say_later

LIMIT = 5000
"""Letters that the text below a video may have on most sites; common practice, no source."""
LONGEST_NAME = 90
LEFT_OUT = say_later("There is more to it: see the recipe page.")
SAFETY = say_later(
    "The food rules of your place, your thermometer and your senses decide; when in doubt, "
    "throw it away."
)
LAST_WORD = re.compile(r"\s*\S*\Z")
OPEN_NUMBER = re.compile(r"[\s\d.,½¼¾⅓⅔⅛⅜⅝⅞/−-]*\Z")


class Place(IntEnum):
    """Where a part stands in the text, from the top."""

    NAME = 0
    ABOUT = 1
    FACTS = 2
    AMOUNTS = 3
    STEPS = 4
    CAUTIONS = 5
    MORE = 6
    SAFETY = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Lines that are kept or left out together."""

    place: Place
    text: str


def description_text(
    sheet: BatchSheet, *, allergens: Sequence[str] = (), limit: int = LIMIT
) -> str:
    """Text of at most `limit` letters.

    Parts go in whole, in this order of importance, until one finds no room: name and the safety
    line, which are always there; facts; cautions; amounts, component by component; the steps, one
    stretch of work after the other; what the dessert is like. What is left out is told.

    Raises
    ------
    QuantityError
        If the limit is too small for name and safety line.
    """
    kept = [
        Part(
            place=Place.NAME,
            text=said(
                say(
                    "{name}: {pieces}",
                    name=cut(sheet.name, LONGEST_NAME) or say("Dessert"),
                    pieces=recipe_yield(sheet),
                )
            ),
        ),
        Part(place=Place.SAFETY, text=safety(allergens)),
    ]
    more = Part(place=Place.MORE, text=said(say(LEFT_OUT)))
    least = len(joined([*kept, more]))
    if limit < least:
        raise QuantityError(
            say("a limit of {limit} letters", limit=limit),
            say("{least} or more for this dessert", least=least),
        )
    wishes = list(parts(sheet))
    for wish in wishes:
        if len(joined([*kept, wish, more])) > limit:
            return joined([*kept, more])
        kept.append(wish)
    return joined(kept)


def parts(sheet: BatchSheet) -> Iterator[Part]:
    """All parts but name and safety, from the most to the least important."""
    yield Part(place=Place.FACTS, text=facts(sheet))
    for caution in sheet.cautions:
        yield Part(place=Place.CAUTIONS, text=f"• {said(line(caution))}")
    for component in sheet.components:
        yield Part(place=Place.AMOUNTS, text=amounts(component))
    for name, sentences in stretches(sheet):
        steps = (f"{k}. {said(line(sentence))}" for k, sentence in enumerate(sentences, start=1))
        yield Part(place=Place.STEPS, text="\n".join([said(line(name)), *steps]))
    if sheet.about:
        yield Part(place=Place.ABOUT, text=said(line(sheet.about)))


def joined(kept: Sequence[Part]) -> str:
    """Parts in the order in which they are read, cautions without a gap between them."""
    ordered = sorted(kept, key=lambda part: part.place)
    words = ""
    for before, part in zip([None, *ordered], ordered, strict=False):
        listed = before is not None and before.place is part.place is Place.CAUTIONS
        words += ("\n" if listed else "\n\n" if before else "") + part.text
    return f"{words}\n"


def cut(text: str, most: int) -> str:
    """One line, and of a long one its beginning: whole words, no broken number."""
    whole = line(text)
    if len(whole) <= most:
        return whole
    start = whole[:most]
    words = LAST_WORD.sub("", start) or start
    return f"{OPEN_NUMBER.sub('', words)}…"


def safety(allergens: Sequence[str]) -> str:
    """Whom it may harm, and who decides."""
    who_decides = said(say(SAFETY))
    if not allergens:
        return who_decides
    contained = said(say("Contains {allergens}.", allergens=", ".join(allergens)))
    return f"{contained} {who_decides}"


def facts(sheet: BatchSheet) -> str:
    """Mould, weight and times in one line."""
    words = [
        say("Mould: {mould}", mould=line(sheet.mould.name)),
        say("{mass} a piece", mass=grams(sheet.piece_mass.value)),
        say("{time} at the bench", time=hours(sheet.hands_on)) if sheet.hands_on > 0 else "",
        say("{time} from start to serving", time=hours(sheet.time)) if sheet.time > 0 else "",
    ]
    return said(" · ".join(word for word in words if word))


def amounts(component: ComponentBatch) -> str:
    """What goes into a component, in grams and as a hand measures it."""
    lines = []
    for each in component.lines:
        household = f" ({line(by_hand(each.household))})" if by_hand(each.household) else ""
        lines.append(said(f"{grams(each.mass)}{household} {line(each.name)}"))
    head = said(line(f"{component.name}, {grams(component.mass.value)}"))
    return "\n".join([head, *lines])


def by_hand(household: str) -> str:
    """A household measure without the mass that some repeat: '2 sheets (weigh: 4.0 g)'."""
    head = say("weigh: {mass}", mass="").rstrip()
    return re.sub(rf" ?\(?{re.escape(head)} [^()]*\)?\Z", "", household)
