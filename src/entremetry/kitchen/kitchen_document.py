"""The kitchen document: what the cook owns and when there is time, as written in YAML."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, field_validator, model_validator

from entremetry.kitchen.calendar_fields import a_date, a_time_zone
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.larder.own import OwnIngredient
from entremetry.physics.support import Support
from entremetry.quantities.fields import Length, Mass, Temperature, Volume
from entremetry.words import say

Name = Annotated[str, Field(min_length=1, max_length=120)]
Count = Annotated[int, Field(strict=True, ge=1, le=100)]
Weekday = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]


class _Owned(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Oven(_Owned):
    """An oven, whether its fan runs, and how many trays it takes."""

    name: Name
    fan: bool = False
    trays: Count = 1


class Freezer(_Owned):
    """A freezer: its air, its room, and how much it can freeze in a day."""

    name: Name
    temperature: Temperature
    volume: Volume | None = None
    freezes_per_day: Mass | None = None
    blast: bool = False
    stands_on: Support = Support.WIRE_SHELF


class Fridge(_Owned):
    """A fridge: its air, its room, and whether a fan moves the air."""

    name: Name
    temperature: Temperature
    volume: Volume | None = None
    fan: bool = False
    stands_on: Support = Support.GLASS_SHELF


class Mixer(_Owned):
    """A mixer with its bowls."""

    name: Name
    bowls: Count = 1
    volume: Volume | None = None


class Tray(_Owned):
    """A baking tray or sheet."""

    name: Name
    length: Length
    width: Length
    owned: Count = 1


class FreeHours(_Owned):
    """A stretch of every such weekday, or of one date, in which somebody can work."""

    day: Weekday | None = None
    date: Annotated[str, AfterValidator(a_date)] | None = Field(
        default=None, description="A date instead of a weekday: 2026-11-28."
    )
    start: Annotated[str, Field(pattern=r"^([01]\d|2[0-3]):[0-5]\d$")]
    end: Annotated[str, Field(pattern=r"^(([01]\d|2[0-3]):[0-5]\d|24:00)$")]

    @model_validator(mode="after")
    def _in_order(self) -> FreeHours:
        if self.end <= self.start:
            raise ValueError(say("an end later than the start, on the same day"))
        if (self.day is None) == (self.date is None):
            raise ValueError(say("either a day of the week or a date"))
        return self


class Person(_Owned):
    """A pair of hands, the hours they are free, and the dates on which they are not there."""

    name: Name
    free: list[FreeHours] = Field(default_factory=list, max_length=100)
    away: list[Annotated[str, AfterValidator(a_date)]] = Field(
        default_factory=list, max_length=400, description="Dates without free hours."
    )


class KitchenDocument(_Owned):
    """What one cook owns."""

    entremetry_kitchen: Literal[1] = Field(description="Version of this format.")
    name: Name
    measures: Literal["us", "metric", "au", "uk"] = "us"
    time_zone: Annotated[str, AfterValidator(a_time_zone)] | None = Field(
        default=None,
        max_length=60,
        description="Whose clock the hours follow; this machine's if left out.",
        examples=["Europe/Paris"],
    )
    room_temperature: Temperature | None = None
    ovens: list[Oven] = Field(default_factory=list, max_length=50)
    freezers: list[Freezer] = Field(default_factory=list, max_length=50)
    fridges: list[Fridge] = Field(default_factory=list, max_length=50)
    hobs: Count | None = None
    benches: Count | None = Field(
        default=None, description="How many can work side by side; not counted if left out."
    )
    mixers: list[Mixer] = Field(default_factory=list, max_length=50)
    trays: list[Tray] = Field(default_factory=list, max_length=50)
    moulds: list[MouldDocument] = Field(default_factory=list, max_length=500)
    people: list[Person] = Field(default_factory=list, max_length=50)
    ingredients: dict[str, OwnIngredient] = Field(default_factory=dict, max_length=500)
    note: Annotated[str, Field(max_length=10_000)] = ""

    @field_validator("people")
    @classmethod
    def _told_apart(cls, people: list[Person]) -> list[Person]:
        if len({person.name for person in people}) < len(people):
            raise ValueError(say("a name of its own for each person"))
        return people
