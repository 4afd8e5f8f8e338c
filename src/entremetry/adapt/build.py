"""A dessert as it is built, read from the base upward whichever way its mould is filled."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from entremetry.adapt.form import Form, form_of
from entremetry.adapt.servings import Servings
from entremetry.dessert.dessert import Component
from entremetry.dessert.needs import coated_area
from entremetry.dessert.placement import (
    BasePlacement,
    CoatingPlacement,
    FillingPlacement,
    InsertPlacement,
    LayerPlacement,
    Placement,
)
from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.gelatine_swap import agent
from entremetry.method.shaping import Bake, Roll

LEAST_COCOA_BUTTER = 0.08  # of a mousse that chocolate alone holds up: common_practice
LEAST_WATER = 0.10  # of a glaze that gels; with less it is a spray of fat: common_practice
USUAL_GAP = 0.005  # m between insert and base where nothing says otherwise: common_practice


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One placement with what it is made of; `volume` is what one cavity takes of it. [m3]"""

    placement: Placement
    raw: Mapping[str, Any]
    component: Component
    volume: float

    @property
    def id(self) -> str:
        """The component's id."""
        return self.component.id

    @property
    def is_rolled(self) -> bool:
        """Whether it is a dough that is rolled out, so crisp, and as thick in any mould."""
        return any(isinstance(step, Roll) for step in self.component.steps)

    @property
    def is_loose(self) -> bool:
        """Whether it is baked and lies as crumbs."""
        baked = any(isinstance(step, Bake) for step in self.component.steps)
        return self.component.kind == "crumble" and baked


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """The parts of a dessert in the order of its placement, and its mould's form."""

    reckoning: Reckoning
    parts: tuple[Part, ...]
    form: Form

    @property
    def upward(self) -> tuple[Part, ...]:
        """Parts inside the mould from the base up; an insert counts as lying under the filling."""
        inside = [p for p in self.parts if p.placement.role in ("filling", "layer", "base")]
        if self.reckoning.dessert.mould.fills_upside_down:
            inside.reverse()
        at = next((i for i, p in enumerate(inside) if p.placement.role == "filling"), len(inside))
        return (*inside[:at], *self.inserts, *inside[at:])

    @property
    def inserts(self) -> tuple[Part, ...]:
        """Frozen inserts, the lowest as served first."""
        level = {i.component: i.low for i in self.reckoning.placed.inclusions}
        upside_down = self.reckoning.dessert.mould.fills_upside_down
        found = [p for p in self.parts if isinstance(p.placement, InsertPlacement)]
        return tuple(sorted(found, key=lambda p: level[p.id], reverse=upside_down))

    @property
    def bases(self) -> tuple[Part, ...]:
        """Bases cut to shape."""
        return tuple(p for p in self.parts if isinstance(p.placement, BasePlacement))

    @property
    def coatings(self) -> tuple[Part, ...]:
        """What is poured over the piece."""
        return tuple(p for p in self.parts if isinstance(p.placement, CoatingPlacement))

    @property
    def outer(self) -> Part | None:
        """The soft part that all else lies in: the filling, else the largest mousse."""
        for part in self.parts:
            if isinstance(part.placement, FillingPlacement):
                return part
        mousses = [
            p
            for p in self.parts
            if isinstance(p.placement, LayerPlacement) and p.component.kind == "mousse"
        ]
        return max(mousses, key=lambda part: part.volume, default=None)

    @property
    def soft_volume(self) -> float:
        """All that is soft in one cavity, crumbs left out. [m3]"""
        return sum(p.volume for p in self.parts if is_soft(p))

    @property
    def servings(self) -> Servings:
        """As the document says."""
        document = self.reckoning.dessert.document
        return Servings(
            pieces=document.pieces, serves=document.serves, per_cavity=self.reckoning.per_cavity
        )

    @property
    def portion(self) -> float:
        """Volume of what one person eats, all inside parts together. [m3]"""
        whole = self.soft_volume + sum(p.volume for p in self.bases)
        return whole / self.reckoning.per_cavity / self.servings.serves

    @property
    def gap(self) -> float:
        """Room between the base inside and the lowest insert, or what is usual. [m]"""
        inserts = self.inserts
        if not inserts:
            return USUAL_GAP
        placed, mould = self.reckoning.placed, self.reckoning.dessert.mould
        lowest = next(i for i in placed.inclusions if i.component == inserts[0].id)
        bases = [i for i in placed.inclusions if i.is_base]
        taken = sum(i.solid.height for i in bases)
        height = placed.cavity.height
        free = height - lowest.high if mould.fills_upside_down else lowest.low
        return max(free - taken, 0.0)

    def coated(self, part: Part) -> float:
        """Area that a coating covers. [m2]"""
        dessert = self.reckoning.dessert
        assert isinstance(part.placement, CoatingPlacement)
        in_portions = dessert.document.portions is not None
        return coated_area(part.placement, dessert.mould, in_portions=in_portions)

    def is_set(self, part: Part) -> bool:
        """Whether something in it holds it up: a setting agent, or cocoa butter."""
        lines = [line.ingredient for line in part.component.lines if line.ingredient is not None]
        if any(each.bloom or agent(each) is not None for each in lines):
            return True
        mix = self.reckoning.makings[part.id].mix
        return mix.constituents.cocoa_butter >= LEAST_COCOA_BUTTER * mix.mass

    def gels(self, part: Part) -> bool:
        """Whether a glaze is one of water, that sets as a layer; a spray of fat is not."""
        mix = self.reckoning.makings[part.id].mix
        return mix.constituents.water >= LEAST_WATER * mix.mass


def is_soft(part: Part) -> bool:
    """Whether it is poured, piped or frozen inside, and not baked."""
    role = part.placement.role
    return role in ("filling", "insert") or (role == "layer" and not part.is_loose)


def build_of(reckoning: Reckoning, data: Mapping[str, Any]) -> Build:
    """Read a reckoned dessert; `data` is its document as written."""
    components = {c.id: c for c in reckoning.dessert.components}
    found = zip(reckoning.dessert.document.placement, data["placement"], strict=True)
    return Build(
        reckoning=reckoning,
        parts=tuple(
            Part(
                placement=placement,
                raw=raw,
                component=components[placement.component],
                volume=_volume(reckoning, placement),
            )
            for placement, raw in found
        ),
        form=form_of(reckoning.dessert.mould),
    )


def _volume(reckoning: Reckoning, placement: Placement) -> float:
    """What one cavity takes of it, from what was placed or needed. [m3]"""
    return sum(_volumes(reckoning, placement))


def _volumes(reckoning: Reckoning, placement: Placement) -> Iterator[float]:
    same = [p for p in reckoning.dessert.document.placement if p.component == placement.component]
    for need in reckoning.needs:
        if need.component == placement.component:
            yield need.volume / len(same)
