"""A dessert on the bench: all that the rules look at."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from entremetry.checks.bench_component import BenchComponent
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.placement import (
    BasePlacement,
    CoatingPlacement,
    FillingPlacement,
    InsertPlacement,
    LayerPlacement,
    Placement,
)
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil
from entremetry.timings.place import place
from entremetry.timings.step_temperatures import StepTemperatures

FRIDGE = 277.15  # K, where what is not frozen is kept


@dataclass(frozen=True, kw_only=True)
class Bench:
    """A reckoned dessert, the kitchen it is made in, and the temperatures known of its steps."""

    reckoning: Reckoning
    kitchen: KitchenDocument | None = None
    temperatures: Mapping[str, StepTemperatures] = field(default_factory=dict)

    @property
    def dessert(self) -> Dessert:
        """The dessert as it is written, with every name looked up."""
        return self.reckoning.dessert

    @cached_property
    def components(self) -> tuple[BenchComponent, ...]:
        """Its components, in the order they are made."""
        return tuple(
            BenchComponent(component=component, reckoning=self.reckoning)
            for component in self.dessert.components
        )

    @cached_property
    def by_id(self) -> Mapping[str, BenchComponent]:
        """Its components by id."""
        return {component.id: component for component in self.components}

    def name(self, component: str) -> str:
        """What a component is called; the dessert's own name for what concerns it all."""
        return self.dessert.names.get(component, self.dessert.document.name)

    def of_kind(self, *kinds: str) -> Iterator[BenchComponent]:
        """Components of these kinds."""
        return (component for component in self.components if component.kind in kinds)

    @property
    def placements(self) -> tuple[Placement, ...]:
        """Where the components sit, in the order of filling."""
        return tuple(self.dessert.document.placement)

    @cached_property
    def inserts(self) -> tuple[InsertPlacement, ...]:
        """What is laid into the soft parts."""
        return tuple(p for p in self.placements if isinstance(p, InsertPlacement))

    @cached_property
    def soft(self) -> tuple[FillingPlacement | LayerPlacement, ...]:
        """What is poured or piped into the mould."""
        return tuple(p for p in self.placements if isinstance(p, FillingPlacement | LayerPlacement))

    @cached_property
    def bases(self) -> tuple[BasePlacement, ...]:
        """Bases in or under the piece."""
        return tuple(p for p in self.placements if isinstance(p, BasePlacement))

    @cached_property
    def coatings(self) -> tuple[CoatingPlacement, ...]:
        """What is poured or sprayed on."""
        return tuple(p for p in self.placements if isinstance(p, CoatingPlacement))

    @property
    def assembly(self) -> tuple[AnyStep, ...]:
        """Steps of the whole dessert."""
        return tuple(self.dessert.document.assembly)

    @property
    def is_released(self) -> bool:
        """Whether the piece must come out of a mould."""
        return not self.dessert.mould.vessel

    @property
    def is_frozen(self) -> bool:
        """Whether the dessert is frozen on its way."""
        return any(isinstance(step, FreezeUntil) for step in self.assembly)

    @cached_property
    def frozen_to(self) -> float:
        """Temperature of the freezer. [K]"""
        return place("freezer", None, self.kitchen).temperature

    @cached_property
    def outer(self) -> BenchComponent | None:
        """The soft component there is most of in the cavity."""
        filled = self.reckoning.placed.filled
        if not filled:
            return None
        return self.by_id[max(filled, key=lambda part: part.volume).component]
