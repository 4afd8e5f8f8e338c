"""The list of ingredients: in descending order of what was weighed for what is in the piece."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from entremetry.labels import english
from entremetry.labels.content import Content
from entremetry.labels.emphasis import Span, named, spans
from entremetry.labels.naming import (
    Rules,
    codes_of,
    english_name,
    is_compound,
    listed_name,
    made_of,
)
from entremetry.labels.quantity_due import IN_NAME, due_words, has_word
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.larder.spoken_name import ingredient_name
from entremetry.quantities import unit_named
from entremetry.quantities.rounding import trimmed
from entremetry.words import decimal, say, say_as

WATER_LEFT_OUT = 0.05
"""Added water may be left out up to this share of the finished food: annex VII, eu_1169_2011."""
SMALL = 0.02
"""Below this share the order is free (EU) or a group of its own (US, cfr_21_101_4)."""
FLAVOURING_GROUPS = frozenset({"spice and flavouring"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """One entry: its share of the finished food, its words, and the quantity if that is due.

    `quantity` is the mass as weighed over the mass of the finished food, which can be above one.
    `unknown_parts` tells that it is a compound whose own list only its packet has.
    """

    ids: tuple[str, ...]
    name: str
    text: str
    mass: float
    share: float
    spans: tuple[Span, ...]
    quantity: float | None = None
    quantity_because: str = ""
    taken_out: bool = False
    unknown_parts: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class IngredientList:
    """The entries in their order; those from `small_from` on are below two per cent."""

    heading: str
    entries: tuple[Listed, ...]
    small_from: int
    water_left_out: float | None
    notes: tuple[str, ...]


def ingredient_list(
    piece: Content,
    parts: Sequence[Content],
    *,
    name: str,
    keywords: Sequence[str],
    rules: Rules,
    larder: Larder,
) -> IngredientList:
    """The list of what is in a piece; `name` and `keywords` say whose quantity is due."""
    due = due_words(name, keywords) if rules is Rules.EU else {}
    entries = [
        _entry(ids, mass, piece, rules, larder, due)
        for ids, mass in _grouped(piece, rules, larder).items()
    ]
    water, left_out = piece.added_water, None
    if rules is Rules.EU and water <= WATER_LEFT_OUT * piece.mass:
        left_out = water if water > 0.0 else None
    elif water > 0.0:
        entries.append(_water(water, piece.mass))
    entries.sort(key=lambda entry: -entry.mass)
    small = sum(entry.share >= SMALL for entry in entries)
    infused = [each for each in piece.taken_out if each not in piece.held]
    entries += [_infused(each, piece, rules, due) for each in infused]
    return IngredientList(
        heading=say(english.INGREDIENTS),
        entries=tuple(entries),
        small_from=small,
        water_left_out=left_out,
        notes=tuple(_notes(entries, parts, piece, due)),
    )


def _grouped(
    piece: Content, rules: Rules, larder: Larder
) -> Mapping[tuple[Ingredient, ...], float]:
    """Masses of what bears one name and is made of the same: all sugar is sugar."""
    groups: dict[tuple[str, str], list[Ingredient]] = {}
    for ingredient in (piece.ingredients[i] for i in piece.held):
        key = (listed_name(ingredient, rules), made_of(ingredient, rules, larder))
        groups.setdefault(key, []).append(ingredient)
    return {tuple(each): sum(piece.held[i.id] for i in each) for each in groups.values()}


def _entry(
    group: tuple[Ingredient, ...],
    mass: float,
    piece: Content,
    rules: Rules,
    larder: Larder,
    due: Mapping[str, str],
) -> Listed:
    first = group[0]
    name, inner = listed_name(first, rules), made_of(first, rules, larder)
    codes = _codes(group, rules)
    share = mass / piece.mass
    because = _because(name, group, share, due)
    quantity = f" {quantity_text(share)}" if because else ""
    body = f"{name}{quantity} ({inner})" if inner else f"{name}{quantity}"
    if rules is Rules.EU:
        body = named(body, codes)
    return Listed(
        ids=tuple(each.id for each in group),
        name=name,
        text=body,
        mass=mass,
        share=share,
        spans=spans(body, codes),
        quantity=share if because else None,
        quantity_because=because,
        unknown_parts=is_compound(first) and not inner,
    )


def _water(mass: float, whole: float) -> Listed:
    name = say_as("list", "water")
    return Listed(
        ids=("water",),
        name=name,
        text=name,
        mass=mass,
        share=mass / whole,
        spans=(Span(text=name),),
    )


def _infused(ingredient_id: str, piece: Content, rules: Rules, due: Mapping[str, str]) -> Listed:
    """An ingredient that was strained out: it has left its flavour, and maybe its allergen."""
    ingredient = piece.ingredients[ingredient_id]
    codes = _codes((ingredient,), rules)
    name = say(english.INFUSED, ingredient=listed_name(ingredient, rules))
    share = piece.taken_out[ingredient_id] / piece.mass
    because = _because(name, (ingredient,), share, due)
    text = named(f"{name} {quantity_text(share)}" if because else name, codes)
    return Listed(
        ids=(ingredient_id,),
        name=name,
        text=text,
        mass=0.0,
        share=0.0,
        spans=spans(text, codes),
        quantity=share if because else None,
        quantity_because=because,
        taken_out=True,
    )


def _codes(group: Sequence[Ingredient], rules: Rules) -> frozenset[str]:
    return frozenset[str]().union(*(codes_of(each, rules) for each in group))


def _because(name: str, group: Sequence[Ingredient], share: float, due: Mapping[str, str]) -> str:
    """Why the quantity of an ingredient is due; nothing if it is not."""
    if share < SMALL and any(each.group in FLAVOURING_GROUPS for each in group):
        return ""
    texts = (name, *(text for i in group for text in (i.name, ingredient_name(i))))
    for word, why in due.items():
        if any(has_word(text, word) for text in texts):
            return say(why, word=word)
    return ""


def quantity_text(share: float) -> str:
    """A quantity as a list prints it: per cent, or grams in 100 g where more went in."""
    if share > 1.0:
        return say("({grams} g in 100 g)", grams=f"{share * 100:.0f}")
    number = trimmed(unit_named("%").from_si(share), 1 if share < 0.0995 else 0)
    return say("{number} %", number=decimal(number))


def _bears(entry: Listed, word: str, piece: Content) -> bool:
    """Whether a word stands in the name of an entry, in the language of the list or in English."""
    known = (piece.ingredients[i] for i in entry.ids if i in piece.ingredients)
    return any(has_word(name, word) for name in (entry.name, *map(english_name, known)))


def _notes(
    entries: Sequence[Listed], parts: Sequence[Content], piece: Content, due: Mapping[str, str]
) -> list[str]:
    unknown = [entry.name for entry in entries if entry.unknown_parts]
    notes = [
        say("{name}: add its own list of ingredients from the packet.", name=name)
        for name in unknown
    ]
    for word, why in due.items():
        if why != IN_NAME or any(_bears(entry, word, piece) for entry in entries):
            continue
        notes += [
            say(
                "'{word}' stands in the name, and no ingredient bears it: {part} is {quantity} of "
                "the piece, if its quantity is due.",
                word=word,
                part=part.name,
                quantity=quantity_text(part.mass / piece.mass),
            )
            for part in parts
            if has_word(part.name, word)
        ]
    return notes
