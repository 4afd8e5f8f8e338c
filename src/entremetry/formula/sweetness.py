"""How sweet a mix is, in sucrose; the sources differ, so the answer is a band."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from entremetry.errors import BalanceError
from entremetry.formula.mix import Mix
from entremetry.larder.constituents import SUGARS, Constituents
from entremetry.physics.sweetness import RELATIVE, Sweetness
from entremetry.words import say

UNSPLIT = Sweetness(usual=1.0, low=0.74, high=1.30, source="gaman_sherrington_1990")
"""Sugars that a food table does not split: taken as sucrose; may be glucose or invert sugar."""
SWEET_PARTS: Mapping[str, Sweetness] = MappingProxyType(
    {
        **{name: RELATIVE[name] for name in SUGARS if name in RELATIVE},
        "polyols": RELATIVE["polyols"],
        "other_carbohydrate": RELATIVE["dextrins"],
        "unsplit_sugars": UNSPLIT,
    }
)
"""Constituent -> how sweet it is; carbohydrate that is not named tastes as dextrins do."""


def mix_sweetness(mix: Mix) -> Sweetness:
    """Sucrose that would taste as sweet, per mass of the mix, with the spread. [kg/kg]

    Raises
    ------
    BalanceError
        If there is nothing in the mix.

    Notes
    -----
    Sweetness adds up by mass. That is a convention: concentration, cold, acid and fat change
    what is tasted, and some sugars are sweeter together than apart.
    """
    if not mix.mass > 0.0:
        raise BalanceError(say("nothing has no taste: the mix is empty"))
    parts = mix.constituents * (1.0 / mix.mass)
    return Sweetness(
        usual=_sum(parts, {name: each.usual for name, each in SWEET_PARTS.items()}),
        low=_sum(parts, {name: each.low for name, each in SWEET_PARTS.items()}),
        high=_sum(parts, {name: each.high for name, each in SWEET_PARTS.items()}),
        source="bender_2005",
    )


def _sum(parts: Constituents, weights: Mapping[str, float]) -> float:
    return float(sum(getattr(parts, name) * weight for name, weight in weights.items()))
