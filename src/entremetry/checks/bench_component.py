"""A component as the rules see it: its shares, its lines, its temperatures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from entremetry.checks.warmth import Moment, moments
from entremetry.dessert.dessert import Component, Line
from entremetry.dessert.made_components import portions
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.brix import brix
from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import Ingredient
from entremetry.method.cooking import Fold, Strain, Whip
from entremetry.method.made import Made
from entremetry.method.peak import peaks
from entremetry.method.portion import Portion
from entremetry.method.shaping import Bake, Roll
from entremetry.method.step import AnyStep
from entremetry.physics.liquidus import Liquidus
from entremetry.timings.component_food import freezing_curve

DRY_GELATINE = 0.87  # kg/kg, what is not water in powder and sheets: usda_sr28
USUAL_BLOOM = 200.0
GELATINE_WORDS = ("gelatine",)


@dataclass(frozen=True, kw_only=True)
class BenchComponent:
    """One component with everything worked out once that several rules ask for."""

    component: Component
    reckoning: Reckoning

    @property
    def id(self) -> str:
        """Its id."""
        return self.component.id

    @property
    def kind(self) -> str:
        """Its kind."""
        return self.component.kind

    @property
    def steps(self) -> tuple[AnyStep, ...]:
        """Steps of its method."""
        return self.component.steps

    @property
    def made(self) -> Made:
        """What its method makes of its formula."""
        return self.reckoning.makings[self.id]

    @cached_property
    def share(self) -> Constituents:
        """Mass fractions of the finished component."""
        return self.made.mix.constituents * (1.0 / self.made.mix.mass)

    @cached_property
    def brix(self) -> float:
        """Degrees Brix of its liquid."""
        return brix(self.made.mix)

    @cached_property
    def curve(self) -> Liquidus | None:
        """How its water freezes out, if it does."""
        return freezing_curve(self.share)

    @cached_property
    def lines(self) -> Mapping[str, Portion]:
        """What each line brings along."""
        return portions(self.component, self.reckoning.makings, self.reckoning.dessert)

    @cached_property
    def moments(self) -> tuple[Moment, ...]:
        """How warm it is at each step."""
        return moments(self.lines, self.steps, self.id)

    @cached_property
    def peaks(self) -> Mapping[str, float]:
        """Highest stated temperature of each line. [K]"""
        return peaks(tuple(self.lines), self.steps, component=self.id)

    @property
    def is_baked(self) -> bool:
        """Whether it goes into the oven."""
        return any(isinstance(step, Bake) for step in self.steps)

    @property
    def is_whipped(self) -> bool:
        """Whether air is whipped or folded in."""
        return any(isinstance(step, Whip | Fold) for step in self.steps)

    @property
    def is_crisp(self) -> bool:
        """Whether it is a biscuit that should stay crisp: baked, and rolled or a crumble."""
        rolled = any(isinstance(step, Roll) for step in self.steps)
        return self.is_baked and not self.is_whipped and (rolled or self.kind == "crumble")

    @property
    def is_moist(self) -> bool:
        """Whether it is neither baked nor dry."""
        return not self.is_baked and self.share.water > 0.08

    def ice_share(self, temperature: float) -> float:
        """Part of its water that is ice at a temperature [K]."""
        if self.curve is None:
            return 0.0
        return 1.0 - float(self.curve.liquid_fraction(temperature))

    def tagged(self, *tags: str) -> tuple[str, ...]:
        """Names of the lines that bear all these tags."""
        return tuple(name for name, line in self.lines.items() if set(tags) <= line.tags)

    def highest(self, name: str) -> float:
        """Highest temperature of the bowls a line is in from where it enters, mixing counted."""
        found = [moment.warmest for moment in self.moments if name in moment.inside]
        return max(found, default=293.15)

    @cached_property
    def gelatine(self) -> float:
        """Gelatine of 200 Bloom, by the linear rule, as a part of the finished component."""
        return self.agent(is_gelatine, gelatine_at_200)

    def agent(
        self, wanted: Callable[[Ingredient], bool], mass: Callable[[Line], float] | None = None
    ) -> float:
        """Part of the finished component that ingredients of a kind make up."""
        found = _mass_of(self.component, self.reckoning, wanted, mass or _mass)
        return found * self._kept / self.made.mix.mass

    @cached_property
    def _kept(self) -> float:
        """Part of what does not boil away that is still there at the end."""
        removed = {name for step in self.steps if isinstance(step, Strain) for name in step.removes}
        solids = sum(
            line.constituents.dry_solids for name, line in self.lines.items() if name not in removed
        )
        left = self.made.mix.constituents.dry_solids
        return min(1.0, left / solids) if solids > 0.0 else 1.0

    def ingredients(self) -> Iterator[Ingredient]:
        """Every ingredient in it, those of components it is made of included."""
        yield from _ingredients(self.component, self.reckoning)


def is_gelatine(ingredient: Ingredient) -> bool:
    """Whether an ingredient is gelatine: alone among gelling agents it comes from an animal."""
    return {"gelling", "animal"} <= ingredient.tags or (
        "gelling" in ingredient.tags and ingredient.bloom is not None
    )


def gelatine_at_200(line: Line) -> float:
    """Mass of 200 Bloom gelatine that a line of gelatine stands for. [kg]"""
    ingredient = line.ingredient
    assert ingredient is not None
    dry = line.mass * (1.0 - ingredient.composition.water) / DRY_GELATINE
    return dry * (ingredient.bloom or USUAL_BLOOM) / 200.0


def _mass(line: Line) -> float:
    return line.mass


def _mass_of(
    component: Component,
    reckoning: Reckoning,
    wanted: Callable[[Ingredient], bool],
    mass: Callable[[Line], float],
) -> float:
    total = 0.0
    for line in component.lines:
        if line.ingredient is not None:
            total += mass(line) if wanted(line.ingredient) else 0.0
            continue
        part = next(c for c in reckoning.dessert.components if c.id == line.component)
        inside = BenchComponent(component=part, reckoning=reckoning)
        total += line.mass * inside.agent(wanted, mass)
    return total


def _ingredients(component: Component, reckoning: Reckoning) -> Iterator[Ingredient]:
    for line in component.lines:
        if line.ingredient is not None:
            yield line.ingredient
        else:
            part = next(c for c in reckoning.dessert.components if c.id == line.component)
            yield from _ingredients(part, reckoning)
