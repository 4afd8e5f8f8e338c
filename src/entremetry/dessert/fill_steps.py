"""How to fill one cavity, step by step, in grams and millimetres below the rim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from entremetry.dessert.batch_sheet import FillStep
from entremetry.dessert.fill_words import (
    brushed,
    covered,
    filled,
    laid_on,
    laid_on_bottom,
    pressed_in,
    pressed_level,
)
from entremetry.dessert.fit import TOUCHING
from entremetry.dessert.placed import Filled, Inclusion, Placed

AT_THE_RIM = 0.0005  # m
LEAST_POUR = 1e-8  # m3


@dataclass(frozen=True, slots=True, kw_only=True)
class Soak:
    """What is brushed on one base, and how much. [kg]"""

    component: str
    name: str
    mass: float


def fill_steps(
    placed: Placed,
    *,
    kinds: Mapping[str, str],
    density: Mapping[str, float],
    soaks: Mapping[str, Soak],
    upright: bool,
    one: str,
) -> tuple[FillStep, ...]:
    """Fill from the closed end: pour, press in, cover, close.

    `one` is what is filled: `fill_words.MOULD`, `CAVITY`, `GLASS` or `VESSEL`.
    """
    filling = _Filling(placed, kinds, density, soaks, upright, one)
    for part in placed.filled:
        filling.fill(part)
    for inclusion in filling.waiting:
        filling.put_in(inclusion)
    return tuple(filling.steps)


class _Filling:
    """A cavity as it is being filled; used once."""

    def __init__(
        self,
        placed: Placed,
        kinds: Mapping[str, str],
        density: Mapping[str, float],
        soaks: Mapping[str, Soak],
        upright: bool,
        one: str,
    ) -> None:
        self.placed = placed
        self.kinds = kinds
        self.density = density
        self.soaks = soaks
        self.upright = upright
        self.one = one
        self.rim = placed.cavity.height
        self.waiting = list(placed.inclusions)
        self.present: list[Inclusion] = []
        self.poured: set[str] = set()
        self.steps: list[FillStep] = []

    def fill(self, part: Filled) -> None:
        """Pour one component, putting in what lies in it when its turn comes."""
        level = part.low
        for group in _groups([i for i in self.waiting if _lies_in(i, part)]):
            if group[0].low > part.low + TOUCHING:
                top = min(max(inclusion.high for inclusion in group), part.high)
                self._pour(part, level, top, coming=group)
                level = top
            for inclusion in group:
                self.put_in(inclusion)
        self._pour(part, level, part.high, coming=())

    def put_in(self, inclusion: Inclusion) -> None:
        """Lay or press in an insert or a base."""
        self.waiting = [other for other in self.waiting if other is not inclusion]
        self.present.append(inclusion)
        below = self.rim - inclusion.high
        if inclusion.component in self.soaks and not self.upright:
            self._brush(inclusion)
        self.steps.append(
            FillStep(
                component=inclusion.component,
                text=self._put_in_text(inclusion, below),
                below_rim=max(0.0, below),
            )
        )
        if inclusion.component in self.soaks and self.upright:
            self._brush(inclusion)

    def _brush(self, base: Inclusion) -> None:
        soak = self.soaks[base.component]
        text = brushed(base.name, soak.name, soak.mass)
        self.steps.append(FillStep(component=soak.component, text=text, mass=soak.mass))

    def _pour(self, part: Filled, low: float, high: float, *, coming: Sequence[Inclusion]) -> None:
        volume = self.placed.fluid_between(low, high)
        if volume < LEAST_POUR:
            return
        level = self._level_after(low, high, volume) if coming else high
        mass = volume * self.density[part.component]
        below = self.rim - level
        self.steps.append(
            FillStep(
                component=part.component,
                text=self._pour_text(part, mass, below, closing=not coming),
                mass=mass,
                below_rim=max(0.0, below),
            )
        )
        self.poured.add(part.component)

    def _level_after(self, low: float, high: float, volume: float) -> float:
        """Level the pour reaches before what comes next is pressed in. [m]"""
        near, far = low, high
        for _ in range(60):
            middle = (near + far) / 2.0
            if self.placed.fluid_between(low, middle, self.present) < volume:
                near = middle
            else:
                far = middle
        return far

    def _pour_text(self, part: Filled, mass: float, below: float, *, closing: bool) -> str:
        depth = 0.0 if below < AT_THE_RIM else below
        if part.component in self.poured:
            return covered(part.name, mass, depth, closing=closing)
        kind, first = self.kinds[part.component], not self.steps
        return filled(kind, self.one, part.name, mass, depth, closing=closing, first=first)

    def _put_in_text(self, inclusion: Inclusion, below: float) -> str:
        if below < AT_THE_RIM:
            return pressed_level(inclusion.name)
        if inclusion.low < TOUCHING:
            return laid_on_bottom(inclusion.name, self.one)
        if inclusion.is_base:
            return laid_on(inclusion.name, below)
        return pressed_in(inclusion.name, below, flat_down=inclusion.turned != self.upright)


def _groups(inclusions: Sequence[Inclusion]) -> list[list[Inclusion]]:
    """Inclusions that stand beside one another go in together."""
    groups: list[list[Inclusion]] = []
    for inclusion in inclusions:
        if groups and inclusion.low < max(other.high for other in groups[-1]) - TOUCHING:
            groups[-1].append(inclusion)
        else:
            groups.append([inclusion])
    return groups


def _lies_in(inclusion: Inclusion, part: Filled) -> bool:
    return part.low - TOUCHING <= inclusion.low < part.high - TOUCHING
