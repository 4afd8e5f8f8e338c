"""One ingredient for another, or for several, written into the text of a dessert document."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, count

from entremetry.adapt.line_editing import (
    enter_together,
    line_added,
    line_renamed,
    line_with_mass,
    line_without,
)
from entremetry.adapt.weighable import FINE, weighable
from entremetry.dessert.dessert import Component, Dessert, Line
from entremetry.errors import QuantityError, UnknownName
from entremetry.formula.swap_mass import starting_masses
from entremetry.larder.generic import Generic
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.physics.gelatine import BloomRule
from entremetry.words import quoted, say, say_later

ACCEPTED = say_later("OLD=NEW or OLD=NEW+ANOTHER, ids or names of ingredients")


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """What goes out, a line or an ingredient, and what comes in."""

    old: str
    new: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """One line that was swapped: ingredients, and the masses to start from. [kg]"""

    component: str
    line: str
    old: Ingredient
    old_mass: float
    new: tuple[Ingredient, ...]
    lines: tuple[str, ...]
    masses: tuple[float, ...]


def read_swap(text: str) -> Swap:
    """Read 'couverture-dark-70=couverture-dark-55' or 'cream-35=cream-48+whole-milk'.

    Raises
    ------
    QuantityError
        If it is no swap.
    """
    old, equals, new = text.partition("=")
    names = tuple(name.strip() for name in new.split("+"))
    if not (equals and old.strip() and all(names)):
        raise QuantityError(quoted(text), say(ACCEPTED))
    return Swap(old=old.strip(), new=names)


def swapped_lines(
    component: Component, swap: Swap, larder: Larder, *, water: float, rule: BloomRule
) -> tuple[Swapped, ...]:
    """What a swap does to the lines of a component; `water` is that of the finished one. [kg]

    Raises
    ------
    UnknownName
        If a new ingredient is not in the larder.
    QuantityError
        If a new name could be several ingredients.
    """
    new = tuple(_one(name, larder) for name in swap.new)
    return tuple(
        _swapped(component.id, line, line.ingredient, new, water, rule)
        for line in component.lines
        if line.ingredient is not None and _is_meant(line, line.ingredient, swap.old, larder)
    )


def require_somewhere(dessert: Dessert, swap: Swap, found: Sequence[object]) -> None:
    """Raise UnknownName if what shall go out is in no formula that was looked at."""
    if not found:
        names = {name for component in dessert.components for name in _names(component)}
        raise UnknownName("line or ingredient of this dessert", swap.old, names)


def with_swap(text: str, swapped: Swapped, component: Component) -> tuple[str, Swapped]:
    """Text with the line swapped, and the names its new lines got.

    The method names what came in where the old line stood. A line joins one of its name that
    enters with it; beside one that enters elsewhere it gets a number.
    """
    names = [
        name
        if name == swapped.line or _may_join(text, component, swapped.line, name)
        else _free_name(name, {line.name for line in component.lines})
        for name in swapped.lines
    ]
    for index in reversed(range(len(names))):
        text = _with_line(text, swapped, component, index, names[index])
    return text, replace(swapped, lines=tuple(names))


def _with_line(text: str, swapped: Swapped, component: Component, index: int, name: str) -> str:
    """Text with one of the new lines; the first of them takes the place of the old."""
    there = {line.name: line.mass for line in component.lines}
    ingredient, mass, old = swapped.new[index].id, swapped.masses[index], swapped.line
    if name in there and name != old:
        text = line_with_mass(text, component.id, name, there[name] + mass)
        return text if index else line_without(text, component.id, old)
    if index:
        return line_added(text, component.id, name, ingredient, mass, beside=old)
    text = line_with_mass(text, component.id, old, mass)
    return line_renamed(text, component.id, old, name, ingredient)


def _may_join(text: str, component: Component, line: str, name: str) -> bool:
    """Tell whether a line of that name is there and enters the method where the old one does."""
    there = {each.name for each in component.lines}
    return name in there and enter_together(text, component.id, line, name)


def _free_name(name: str, taken: Collection[str]) -> str:
    """The name, or the name with the first number that makes it free."""
    names = chain([name], (f"{name}-{number}" for number in count(2)))
    return next(each for each in names if each not in taken)


def _one(name: str, larder: Larder) -> Ingredient:
    found = larder.resolve(name)
    if isinstance(found, Generic):
        accepted = say(
            "{question} one of: {names}",
            question=say(found.question),
            names=", ".join(found.choices),
        )
        raise QuantityError(quoted(name), accepted)
    return found


def _is_meant(line: Line, ingredient: Ingredient, old: str, larder: Larder) -> bool:
    if old in (line.name, ingredient.id):
        return True
    known = larder.known(old)
    return known is not None and known.id == ingredient.id


def _swapped(
    component: str,
    line: Line,
    old: Ingredient,
    new: tuple[Ingredient, ...],
    water: float,
    rule: BloomRule,
) -> Swapped:
    keeps_its_name = line.name != old.id
    masses = starting_masses(old, line.mass, new, water=water, rule=rule)
    first = line.name if keeps_its_name else new[0].id
    return Swapped(
        component=component,
        line=line.name,
        old=old,
        old_mass=line.mass,
        new=new,
        lines=(first, *(each.id for each in new[1:])),
        masses=tuple(weighable(each, FINE) for each in masses),
    )


def _names(component: Component) -> Iterator[str]:
    for line in component.lines:
        yield line.name
        if line.ingredient is not None:
            yield line.ingredient.id
