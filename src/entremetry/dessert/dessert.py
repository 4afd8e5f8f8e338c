"""A dessert with every name looked up and every amount in kilograms."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.dessert.document import DessertDocument
from entremetry.kitchen.mould import Mould
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.method.step import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a formula: so much of an ingredient, or of another component. Mass in kg."""

    name: str
    mass: float
    written: str
    ingredient: Ingredient | None = None
    component: str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Component:
    """A formula with its method; `density` is the author's own measurement [kg/m3]."""

    id: str
    name: str
    kind: str
    lines: tuple[Line, ...]
    steps: tuple[Step, ...]
    density: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Dessert:
    """A dessert ready to be computed; components stand after those they are made from."""

    document: DessertDocument
    mould: Mould
    larder: Larder
    components: tuple[Component, ...]

    @property
    def names(self) -> dict[str, str]:
        """Name of each component by its id."""
        return {component.id: component.name for component in self.components}
