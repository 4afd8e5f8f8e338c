"""What is in the bowl at a step, as far as the method tells."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.dessert.dessert import Component
from entremetry.dessert.made_components import portions
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.mix import Mix, mixed
from entremetry.formula.scaling import scaled
from entremetry.method.portion import Portion
from entremetry.method.route import route
from entremetry.method.step import AnyStep


@dataclass(frozen=True, slots=True, kw_only=True)
class BowlContent:
    """Lines that were in the bowl before a step, and lines that enter at it."""

    before: tuple[str, ...]
    entering: tuple[str, ...]

    @property
    def all(self) -> tuple[str, ...]:
        """Both."""
        return (*self.before, *self.entering)


def bowl_content(component: Component, index: int) -> BowlContent:
    """Follow the lines of a formula to the bowl of the step at `index`, counted from 0."""
    names = [line.name for line in component.lines]
    stops = route(names, component.steps, component=component.id).stops
    bowls: dict[str, tuple[str, ...]] = {}
    for number, stop in enumerate(stops):
        poured = (name for bowl in stop.bowls for name in bowls.pop(bowl, ()))
        entering = (*stop.lines, *stop.soaked, *poured)
        before = bowls.get(stop.bowl, ())
        if number == index:
            return BowlContent(before=before, entering=entering)
        bowls[stop.bowl] = tuple(dict.fromkeys((*before, *entering)))
    return BowlContent(before=(), entering=())


def steps_before(component: Component, index: int) -> tuple[AnyStep, ...]:
    """Steps that what is in the bowl has been through when the step at `index` begins.

    What stands in another bowl, such as a syrup on the stove, has a warmth of its own.
    """
    names = [line.name for line in component.lines]
    stops = route(names, component.steps, component=component.id).stops
    passed: dict[str, tuple[AnyStep, ...]] = {}
    for stop, step in zip(stops[:index], component.steps[:index], strict=True):
        poured = next((passed.pop(bowl) for bowl in stop.bowls if bowl in passed), ())
        passed[stop.bowl] = (*passed.get(stop.bowl, poured), step)
    return passed.get(stops[index].bowl, ()) if index < len(stops) else ()


def mix_of(reckoning: Reckoning, component: Component, names: Sequence[str]) -> Mix:
    """These lines of a component as they are weighed for the batch of the document."""
    lines = portions(component, reckoning.makings, reckoning.dessert)
    pieces = reckoning.dessert.document.pieces
    factor = reckoning.requirements(pieces)[component.id].factor
    return scaled(mixed(*(_mix(lines[name]) for name in names)), factor)


def tags_of(reckoning: Reckoning, component: Component, names: Sequence[str]) -> frozenset[str]:
    """Tags of all these lines."""
    lines = portions(component, reckoning.makings, reckoning.dessert)
    return frozenset(tag for name in names for tag in lines[name].tags)


def _mix(portion: Portion) -> Mix:
    return Mix(constituents=portion.constituents)
