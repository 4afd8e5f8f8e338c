"""How to fill one cavity, step by step, in grams and millimetres below the rim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from entremetry.dessert.batch_sheet import FillStep
from entremetry.dessert.fit import TOUCHING
from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.quantities import format_length, format_mass

AT_THE_RIM = 0.0005  # m
LEAST_POUR = 1e-8  # m3
VERBS = {"mousse": "Pipe", "crumble": "Scatter", "garnish": "Scatter", "base": "Spread"}


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
    """Fill from the closed end: pour, press in, cover, close. `one` is 'each cavity' or so."""
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
        text = (
            f"Brush the {_lower_first(base.name)} with {format_mass(soak.mass)} "
            f"of the {_lower_first(soak.name)}."
        )
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
        name = _lower_first(part.name)
        again = part.component in self.poured
        where = "to the rim" if below < AT_THE_RIM else f"to {_mm(below)} below the rim"
        level = "; level it" if closing else ""
        if again:
            return f"Cover with {format_mass(mass)} more of the {name}, {where}{level}."
        verb = VERBS.get(self.kinds[part.component], "Pour")
        into = "onto" if verb == "Scatter" and self.steps else "into"
        return f"{verb} {format_mass(mass)} of the {name} {into} {self.one}, {where}{level}."

    def _put_in_text(self, inclusion: Inclusion, below: float) -> str:
        name = _lower_first(inclusion.name)
        if below < AT_THE_RIM:
            return f"Press the {name} in until it is level with the rim."
        if inclusion.low < TOUCHING:
            return f"Lay the {name} on the bottom of {self.one}."
        if inclusion.is_base:
            return f"Lay the {name} on; its top is {_mm(below)} below the rim."
        side = "flat side down" if inclusion.turned != self.upright else "flat side up"
        return f"Press in the {name}, {side}, until its top is {_mm(below)} below the rim."


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


def _mm(length: float) -> str:
    return format_length(round(length * 1e3) / 1e3)


def _lower_first(name: str) -> str:
    return name[:1].lower() + name[1:]
