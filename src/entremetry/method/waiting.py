"""Steps in which cold, warmth or time does the work, and the two that end the wait."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from entremetry.method.work import Work
from entremetry.physics.support import Support
from entremetry.quantities.fields import Temperature
from entremetry.words import say

Place = Literal["freezer", "blast freezer", "fridge", "room"]


class Until(Work):
    """A step that ends at a temperature, after a time, or whichever is stated.

    `where` is the cold or warm place, `on` what the piece stands on there: it decides the time
    more than the size does. Without them the kitchen's first freezer or fridge is taken.
    """

    temperature: Temperature | None = None
    where: Place | None = None
    on: Support | None = None

    @model_validator(mode="after")
    def _has_an_end(self) -> Self:
        if self.temperature is None and self.time is None:
            raise ValueError(say("say until when: give temperature, time or both"))
        return self


class FreezeUntil(Until):
    """Freeze until the centre has a temperature."""

    step: Literal["freeze-until"]


class ThawUntil(Until):
    """Thaw until the centre has a temperature."""

    step: Literal["thaw-until"]


class GlazeAt(Work):
    """Pour the glaze at a temperature of its own."""

    step: Literal["glaze-at"]
    temperature: Temperature


class Rest(Work):
    """Leave alone, so that it rests, sets or ages."""

    step: Literal["rest"]
    temperature: Temperature | None = None


class Hold(Work):
    """Keep until it is wanted."""

    step: Literal["hold"]
    temperature: Temperature | None = None


class Serve(Work):
    """Serve."""

    step: Literal["serve"]
