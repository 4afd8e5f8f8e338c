"""The shape of a cavity or an insert as written in a document."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, PlainValidator, WithJsonSchema

from entremetry.kitchen.water_weighing import water_volume
from entremetry.quantities.fields import Length, LengthFromZero

WaterVolume = Annotated[
    float,
    PlainValidator(water_volume),
    WithJsonSchema(
        {
            "type": "string",
            "description": "What the mould holds, by the jug or as the weight of the water.",
            "examples": ["75 ml", "1130 g"],
        }
    ),
]


class _Shape(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Hemisphere(_Shape):
    """Half a sphere, open at its widest."""

    kind: Literal["hemisphere"]
    diameter: Length


class Cap(_Shape):
    """A slice of a sphere, flatter or deeper than half of it."""

    kind: Literal["cap"]
    diameter: Length = Field(description="Across the rim.")
    height: Length


class Sphere(_Shape):
    """A whole sphere, cast in two halves."""

    kind: Literal["sphere"]
    diameter: Length


class Cylinder(_Shape):
    """A ring, a disc or a straight glass."""

    kind: Literal["cylinder"]
    diameter: Length
    height: Length


class Cone(_Shape):
    """A truncated cone; `diameter` at the rim, `base_diameter` at the closed end."""

    kind: Literal["cone"]
    diameter: Length
    base_diameter: Length
    height: Length


class Ellipsoid(_Shape):
    """Half an ellipsoid: a stone, a quenelle, an oval dome."""

    kind: Literal["ellipsoid"]
    length: Length
    width: Length
    height: Length


class Box(_Shape):
    """A frame or tray with straight or drafted sides; `taper` is how far each side leans in."""

    kind: Literal["box"]
    length: Length
    width: Length
    height: Length
    corner_radius: LengthFromZero = 0.0
    taper: LengthFromZero = 0.0


class Log(_Shape):
    """A log: a section drawn out along its length."""

    kind: Literal["log"]
    length: Length
    width: Length
    height: Length | None = None
    section: Literal["half-round", "rounded", "round-topped"] = "half-round"
    corner_radius: LengthFromZero = 0.0


class HoledRing(_Shape):
    """A ring with a hole: savarin (half-round) or flat."""

    kind: Literal["ring"]
    diameter: Length
    hole_diameter: Length
    height: Length | None = None
    section: Literal["half-round", "flat"] = "half-round"


class ProfilePoint(_Shape):
    """One measured point of a profile of revolution."""

    radius: LengthFromZero
    level: LengthFromZero


class Profile(_Shape):
    """Any body of revolution, by its radius at levels above the closed end."""

    kind: Literal["profile"]
    points: Annotated[list[ProfilePoint], Field(min_length=2, max_length=500)]


class Prism(_Shape):
    """An upright body over any outline, given as the data of an SVG path."""

    kind: Literal["prism"]
    outline: Annotated[str, Field(max_length=20_000)]
    height: Length
    width: Length | None = Field(
        default=None, description="Width the outline is scaled to; in millimetres as drawn if none."
    )


class Mesh(_Shape):
    """A closed surface in an STL file, in millimetres, standing on its opening."""

    kind: Literal["mesh"]
    file: Annotated[str, Field(max_length=500)]


class Measured(_Shape):
    """A mould weighed full of water: its volume, and the shape it is most like."""

    kind: Literal["measured"]
    holds: WaterVolume
    like: Annotated[
        Hemisphere | Cap | Sphere | Cylinder | Cone | Ellipsoid | Box | Log | HoledRing | Profile,
        Field(discriminator="kind"),
    ]


ShapeDocument = Annotated[
    Hemisphere
    | Cap
    | Sphere
    | Cylinder
    | Cone
    | Ellipsoid
    | Box
    | Log
    | HoledRing
    | Profile
    | Prism
    | Mesh
    | Measured,
    Field(discriminator="kind"),
]
