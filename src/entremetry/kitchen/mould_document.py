"""A mould or vessel as written in a document."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from entremetry.kitchen.shape_document import ShapeDocument
from entremetry.quantities.fields import Length


class MouldDocument(BaseModel):
    """A cavity, how many of them a tray holds, how many trays are owned."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    id: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
    name: Annotated[str, Field(min_length=1, max_length=120)]
    shape: ShapeDocument
    wall: Length | None = None
    material: Literal["silicone", "metal", "plastic", "glass", "ceramic", "paper"] = "silicone"
    cavities: Annotated[int, Field(strict=True, ge=1, le=500)] = 1
    owned: Annotated[int, Field(strict=True, ge=1, le=1000)] = 1
    fills: Literal["upside-down", "upright"] | None = Field(
        default=None,
        description="Upside-down: the closed end is the top of what is served (the usual way).",
    )
    vessel: bool = Field(default=False, description="A glass or dish that is served.")
