"""What can be asked of one dessert: its lines, its parts, the symptoms."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from os.path import commonprefix

from entremetry.checks.symptoms import SYMPTOMS
from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.formula.gelatine_swap import agent
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.spoken_name import ingredient_name
from entremetry.questions.keeping import waitings
from entremetry.words import say

ALIKE = ("sweetener", "whippable", "chocolate")
FEW = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Something to ask about: what is sent for it, and its words."""

    value: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Replaceable(Choice):
    """A line that may be swapped, with ingredients that are alike."""

    alike: tuple[Choice, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What a dessert can be asked, each kind with the things to choose from."""

    instead: tuple[Replaceable, ...]
    without: tuple[Choice, ...]
    wait: tuple[Choice, ...]
    symptoms: tuple[Choice, ...]


def choices(dessert: Dessert) -> Choices:
    """Everything a dessert can be asked that does not depend on a size."""
    return Choices(
        instead=tuple(_instead(dessert)),
        without=tuple(_without(dessert)),
        wait=tuple(Choice(value=each.id, words=each.name) for each in waitings(dessert)),
        symptoms=tuple(Choice(value=each.id, words=say(each.name)) for each in SYMPTOMS),
    )


def _instead(dessert: Dessert) -> Iterator[Replaceable]:
    for component, line, ingredient in _lines(dessert):
        yield Replaceable(
            value=f"{component.id}/{line.name}",
            words=_words(component, ingredient),
            alike=alike(ingredient, dessert),
        )


def _without(dessert: Dessert) -> Iterator[Choice]:
    for component in dessert.components:
        yield Choice(value=component.id, words=say("{name}, all of it", name=component.name))
    there = Counter(line.name for _, line, _ in _lines(dessert))
    ids = {component.id for component in dessert.components}
    for component, line, ingredient in _lines(dessert):
        alone = there[line.name] == 1 and line.name not in ids
        value = line.name if alone else f"{component.id}/{line.name}"
        yield Choice(value=value, words=_words(component, ingredient))


def _lines(dessert: Dessert) -> Iterator[tuple[Component, Line, Ingredient]]:
    for component in dessert.components:
        for line in component.lines:
            if line.ingredient is not None:
                yield component, line, line.ingredient


def _words(component: Component, ingredient: Ingredient) -> str:
    return say("{line} in {component}", line=ingredient_name(ingredient), component=component.name)


def alike(ingredient: Ingredient, dessert: Dessert) -> tuple[Choice, ...]:
    """Ingredients of the same use or the same family of names, the nearest first."""
    stem = ingredient.id.partition("-")[0]
    found = [
        other
        for other in dessert.larder
        if other.id != ingredient.id and _is_alike(other, ingredient, stem)
    ]
    found.sort(key=lambda other: other.name)
    found.sort(key=lambda other: _likeness(other, ingredient), reverse=True)
    return tuple(Choice(value=other.id, words=ingredient_name(other)) for other in found[:FEW])


def _likeness(other: Ingredient, ingredient: Ingredient) -> tuple[bool, int]:
    """First what does the same, then what is called most like it."""
    shared = ingredient.tags & other.tags & set(ALIKE)
    return bool(shared), _common(other.id, ingredient.id)


def _common(one: str, other: str) -> int:
    """Letters that two ids begin or end alike with."""
    return max(len(commonprefix([one, other])), len(commonprefix([one[::-1], other[::-1]])))


def _is_alike(other: Ingredient, ingredient: Ingredient, stem: str) -> bool:
    if _sets(ingredient) or _sets(other):
        return _sets(ingredient) and _sets(other)
    shared = ingredient.tags & other.tags & set(ALIKE)
    same_name = other.id.startswith(f"{stem}-")
    return other.group == ingredient.group and (bool(shared) or same_name)


def _sets(ingredient: Ingredient) -> bool:
    """Whether it is a setting agent whose dose is known."""
    return ingredient.bloom is not None or agent(ingredient) is not None
