"""Pairs of measures in the author's own words that disagree."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.batch_sheet import Slip
from entremetry.dessert.document import DessertDocument
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.method.step import AnyStep
from entremetry.quantities import find_slips, unit_named
from entremetry.words import say

CUP = unit_named("us cup")


def slips(document: DessertDocument, larder: Larder) -> tuple[Slip, ...]:
    """Find them in every note of a document, with the right value."""

    def mass_per_volume(words: str) -> float | None:
        return _density_of(words, larder)

    return tuple(
        Slip(place=place, found=slip.found, right=slip.right)
        for place, text in _texts(document)
        for slip in find_slips(text, mass_per_volume=mass_per_volume, measures=document.measures)
    )


def _texts(document: DessertDocument) -> Iterator[tuple[str, str]]:
    yield say("about"), document.about
    yield say("note"), document.note
    for component_id, component in document.components.items():
        yield say("{component}, note", component=component_id), component.note
        for name, line in component.formula.items():
            yield f"{component_id}, {name}", line.note
        yield from _notes(component_id, component.method)
    yield from _notes(say("assembly"), document.assembly)


def _notes(place: str, steps: list[AnyStep]) -> Iterator[tuple[str, str]]:
    for index, step in enumerate(steps):
        yield say("{place}, step {number}", place=place, number=index + 1), step.note or ""


def _density_of(words: str, larder: Larder) -> float | None:
    """Mass of a litre of what stands in the words [kg/m3], by its longest name; None if nothing."""
    names = [word.strip(".,;:!?()'\"") for word in words.split()]
    for length in range(len(names), 0, -1):
        for start in range(len(names) - length + 1):
            found = larder.known(" ".join(names[start : start + length]))
            if found is not None:
                return _by_the_cup(found)
    return None


def _by_the_cup(ingredient: Ingredient) -> float:
    """Density as a cup holds it, where the larder knows what a cup of it weighs."""
    for weight in ingredient.household:
        if weight.measure == CUP.name:
            return weight.one / CUP.factor
    return ingredient.density
