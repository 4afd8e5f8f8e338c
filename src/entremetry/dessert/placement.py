"""Where a component sits in the mould, as written in the document."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, model_validator

from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.quantities.fields import (
    Fraction,
    Length,
    LengthFromZero,
    Mass,
    MassPerArea,
    Volume,
)
from entremetry.words import say

ComponentId = Annotated[str, Field(max_length=80)]


class _Placed(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True, populate_by_name=True)

    component: ComponentId


class FillingPlacement(_Placed):
    """Takes all the room that is left."""

    role: Literal["filling"] = Field(alias="as")


class LayerPlacement(_Placed):
    """A level layer, by its height, its volume or its mass."""

    role: Literal["layer"] = Field(alias="as")
    height: Length | None = None
    volume: Volume | None = None
    mass: Mass | None = None

    @model_validator(mode="after")
    def _one_measure(self) -> LayerPlacement:
        if sum(given is not None for given in (self.height, self.volume, self.mass)) != 1:
            raise ValueError(say("exactly one of height, volume and mass"))
        return self


class InsertPlacement(_Placed):
    """A frozen insert of its own shape; centred between base and closed end if nothing is said."""

    role: Literal["insert"] = Field(alias="as")
    shape: ShapeDocument
    below_rim: LengthFromZero | None = Field(
        default=None, description="From the rim down to the insert's nearest face."
    )
    from_closed_end: LengthFromZero | None = Field(
        default=None, description="From the mould's closed end up to the insert."
    )
    aside: LengthFromZero = Field(
        default=0.0, description="Sideways from the axis, along the length."
    )
    turned: bool = Field(default=False, description="Its flat side towards the closed end.")

    @model_validator(mode="after")
    def _one_depth(self) -> InsertPlacement:
        if self.below_rim is not None and self.from_closed_end is not None:
            raise ValueError(say("below_rim or from_closed_end, not both"))
        return self


class SheetDocument(BaseModel):
    """The sheet or rolled-out dough from which bases are cut."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    length: Length
    width: Length
    gap: LengthFromZero = 0.0
    offcuts: Literal["re-rolled", "kept"] = "kept"


class DiscCutOut(BaseModel):
    """A round cut-out."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    kind: Literal["disc"]
    diameter: Length
    hole_diameter: LengthFromZero = 0.0

    @model_validator(mode="after")
    def _hole_is_smaller(self) -> DiscCutOut:
        if self.hole_diameter >= self.diameter:
            raise ValueError(say("a hole_diameter smaller than the diameter"))
        return self


class RectangleCutOut(BaseModel):
    """A rectangular cut-out."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    kind: Literal["rectangle"]
    length: Length
    width: Length


CutOut = Annotated[DiscCutOut | RectangleCutOut, Field(discriminator="kind")]


class BasePlacement(_Placed):
    """A base cut from a sheet: inside the mould, or under the piece and wider than it."""

    role: Literal["base"] = Field(alias="as")
    cut_out: CutOut
    thickness: Length
    sits: Literal["inside", "under"] = "inside"
    sheet: SheetDocument | None = None


class CoatingPlacement(_Placed):
    """A coating poured or sprayed on the piece, by film thickness or by mass per area."""

    role: Literal["coating"] = Field(alias="as")
    film: Length | None = None
    per_area: MassPerArea | None = None
    where: Literal["all", "top"] | None = None
    pour: Mass | None = Field(
        default=None, description="What is poured over one piece; the rest runs off."
    )
    caught: Fraction = Field(default=0.0, description="Share of the run-off used again.")

    @model_validator(mode="after")
    def _one_measure(self) -> CoatingPlacement:
        if (self.film is None) == (self.per_area is None):
            raise ValueError(say("exactly one of film and per_area"))
        return self


class SoakPlacement(_Placed):
    """A syrup brushed on a base, by mass a piece or by mass per area."""

    role: Literal["soak"] = Field(alias="as")
    on: ComponentId
    mass: Mass | None = None
    per_area: MassPerArea | None = None

    @model_validator(mode="after")
    def _one_measure(self) -> SoakPlacement:
        if (self.mass is None) == (self.per_area is None):
            raise ValueError(say("exactly one of mass and per_area"))
        return self


class GarnishPlacement(_Placed):
    """So much on each piece, outside the mould's volume."""

    role: Literal["garnish"] = Field(alias="as")
    mass: Mass


Placement = Annotated[
    FillingPlacement
    | LayerPlacement
    | InsertPlacement
    | BasePlacement
    | CoatingPlacement
    | SoakPlacement
    | GarnishPlacement,
    Field(discriminator="role"),
]
