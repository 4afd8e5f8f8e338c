"""Which allergens a label has to name, by jurisdiction, and which ingredients bring them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from entremetry.labels.content import Content
from entremetry.labels.language_words import allergen_group, allergen_word
from entremetry.labels.naming import Rules, codes_of
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenEntry:
    """One allergen: its code, the word that names it, its group, and what brings it."""

    code: str
    word: str
    group: str
    because: tuple[str, ...]


def allergens(piece: Content, rules: Rules) -> tuple[AllergenEntry, ...]:
    """Allergens of everything that is in a piece or was strained out of it."""
    return allergens_of((*_found(piece),), rules)


def allergens_of(ingredients: Iterable[Ingredient], rules: Rules) -> tuple[AllergenEntry, ...]:
    """Allergens of some ingredients."""
    brought: dict[str, list[str]] = {}
    for ingredient in ingredients:
        for code in codes_of(ingredient, rules):
            brought.setdefault(code, []).append(ingredient_name(ingredient))
    return tuple(
        AllergenEntry(
            code=code,
            word=allergen_word(code, american=rules is Rules.US),
            group=allergen_group(code),
            because=tuple(dict.fromkeys(names)),
        )
        for code, names in sorted(brought.items())
    )


def contains_statement(found: Iterable[AllergenEntry]) -> str:
    """The American statement, with tree nuts named after their group; empty if there is none."""
    plain: list[str] = []
    grouped: dict[str, list[str]] = {}
    for entry in found:
        if entry.group:
            grouped.setdefault(entry.group, []).append(entry.word)
        else:
            plain.append(entry.word)
    plain += [f"{group} ({', '.join(words)})" for group, words in grouped.items()]
    return f"Contains: {', '.join(plain)}." if plain else ""


def _found(piece: Content) -> Iterable[Ingredient]:
    return (piece.ingredients[name] for name in {**piece.held, **piece.taken_out})
