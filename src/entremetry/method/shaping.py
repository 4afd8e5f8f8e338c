"""Steps with dough, oven, knife and mould."""

from __future__ import annotations

from typing import Literal

from entremetry.method.bounds import BelowWhole
from entremetry.method.work import Work
from entremetry.quantities.fields import Length, Temperature


class Roll(Work):
    """Roll out to a thickness."""

    step: Literal["roll"]
    thickness: Length


class Cut(Work):
    """Cut to shape; `trim` is the share cut away."""

    step: Literal["cut"]
    trim: BelowWhole | None = None


class Bake(Work):
    """Bake at the temperature of the oven; `loss` is the share of the mass that leaves as steam."""

    step: Literal["bake"]
    at: Temperature
    fan: bool = False
    loss: BelowWhole | None = None


class Pour(Work):
    """Pour out, into a mould or a jug."""

    step: Literal["pour"]


class Place(Work):
    """Put something in its place."""

    step: Literal["place"]


class Fill(Work):
    """Fill the mould; the fill steps are computed."""

    step: Literal["fill"]


class Unmould(Work):
    """Take out of the mould."""

    step: Literal["unmould"]
