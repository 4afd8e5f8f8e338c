"""What a mix is made of, as shares of its mass."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from entremetry.errors import BalanceError
from entremetry.formula.brix import brix
from entremetry.formula.mix import Mix
from entremetry.larder.constituents import SUGARS
from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Metrics:
    """Mass fractions [kg/kg] of a mix, and the degrees Brix of its liquid."""

    water: float
    dry_solids: float
    fat: float
    cocoa_butter: float
    milk_fat: float
    other_fat: float
    sugars: float
    each_sugar: Mapping[str, float]
    protein: float
    alcohol: float
    organic_acids: float
    brix: float


def metrics(mix: Mix) -> Metrics:
    """Shares of a mix that decide how it freezes, sets, tastes and keeps.

    Raises
    ------
    BalanceError
        If there is nothing in the mix.
    """
    if not mix.mass > 0.0:
        raise BalanceError(say("nothing has no shares: the mix is empty"))
    share = mix.constituents * (1.0 / mix.mass)
    return Metrics(
        water=share.water,
        dry_solids=share.dry_solids,
        fat=share.fat,
        cocoa_butter=share.cocoa_butter,
        milk_fat=share.milk_fat,
        other_fat=share.other_fat,
        sugars=share.sugars,
        each_sugar=MappingProxyType({name: getattr(share, name) for name in SUGARS}),
        protein=share.protein,
        alcohol=share.alcohol,
        organic_acids=share.organic_acids,
        brix=brix(mix),
    )
