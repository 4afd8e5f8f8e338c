"""Steps on the scale, the stove and the mixer."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from entremetry.method.bounds import Brix, Names, UpToWhole
from entremetry.method.share import Share
from entremetry.method.work import Work
from entremetry.quantities.fields import Density, Fraction, Mass, Temperature
from entremetry.words import say, say_as


class Weigh(Work):
    """Weigh what is needed."""

    step: Literal["weigh"]


class Soak(Work):
    """Let something take up water; all of `water` goes with it."""

    step: Literal["soak"]
    what: Names
    water: Mass | None = None


class Stir(Work):
    """Stir together; nothing is lost."""

    step: Literal["mix"]


class Heated(Work):
    """A step on the stove: how much water goes, or what is left."""

    evaporates: Share | None = None
    to_mass: Mass | None = None
    temperature: Temperature | None = None

    @model_validator(mode="after")
    def _one_end(self) -> Self:
        only_one(self, "evaporates", "to_mass")
        return self


class Melt(Heated):
    """Melt."""

    step: Literal["melt"]


class Simmer(Heated):
    """Simmer, with or without an end in mass or degrees Brix."""

    step: Literal["simmer"]
    to_brix: Brix | None = None

    @model_validator(mode="after")
    def _one_end_of_three(self) -> Self:
        only_one(self, "evaporates", "to_mass", "to_brix")
        return self


class CookTo(Heated):
    """Heat until a temperature is reached."""

    step: Literal["cook-to"]
    temperature: Temperature


class CoolTo(Work):
    """Let cool to a temperature: open in a bowl, covered, in ice water, or in the fridge."""

    step: Literal["cool-to"]
    temperature: Temperature
    where: Literal["room", "fridge"] = "room"
    covered: bool = False
    ice_bath: bool = False


class Strain(Work):
    """Take lines out whole, and lose what the sieve holds back."""

    step: Literal["strain"]
    removes: tuple[str, ...] = ()
    holds_back: Mass | None = None


class Whip(Work):
    """Whip air in, up to an overrun or to a density."""

    step: Literal["whip"]
    overrun: Fraction | None = None
    density: Density | None = None

    @model_validator(mode="after")
    def _one_end(self) -> Self:
        only_one(self, "overrun", "density")
        return self


class Fold(Work):
    """Fold something in; `kept` is the share of all the air that survives."""

    step: Literal["fold"]
    what: Names
    kept: UpToWhole | None = None


def only_one(work: Work, *fields: str) -> None:
    """Refuse a step that states two ends.

    Raises
    ------
    ValueError
        Which pydantic turns into a fault of the document.
    """
    stated = [field for field in fields if getattr(work, field) is not None]
    if len(stated) > 1:
        named = say_as("between two things", " and ").join(stated)
        raise ValueError(say("give only one of {names}", names=named))
