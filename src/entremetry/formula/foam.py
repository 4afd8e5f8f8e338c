"""Air whipped in and what folding leaves of it."""

from __future__ import annotations

from entremetry.errors import BalanceError
from entremetry.formula._words import number
from entremetry.formula.density import liquid_density, liquid_volume
from entremetry.formula.mix import Mix, mixed
from entremetry.words import decimal, say

KEPT = 0.9  # share of the air that survives folding; 0.85 to 0.95, from_memory


def overrun(liquid: float, foam: float) -> float:
    """Overrun of a foam: the volume gained by whipping, per volume of liquid.

    Parameters
    ----------
    liquid : float
        Density of the liquid before whipping. [kg/m3]
    foam : float
        Density of the foam. [kg/m3]

    Returns
    -------
    float
        Overrun, 1.0 for a volume doubled.

    Raises
    ------
    BalanceError
        If the foam is denser than the liquid.

    Notes
    -----
    At equal mass (V_foam - V_liquid) / V_liquid = rho_liquid / rho_foam - 1.

    References
    ----------
    bruhn_1988, definition.

    Examples
    --------
    >>> round(overrun(1000.0, 500.0), 6)
    1.0
    """
    if not 0.0 < foam <= liquid * (1.0 + 1e-12):
        raise BalanceError(
            say(
                "cannot whip to {foam} g/ml: without air it has {liquid} g/ml; "
                "give a smaller density",
                foam=decimal(f"{foam / 1000:.3f}"),
                liquid=decimal(f"{liquid / 1000:.3f}"),
            )
        )
    return max(liquid / foam - 1.0, 0.0)


def overrun_of(mix: Mix) -> float:
    """Overrun that the gas of a mix amounts to."""
    return mix.gas / liquid_volume(mix)


def whip(mix: Mix, overrun: float) -> Mix:
    """Mix whipped until its air amounts to `overrun`; air it held before is part of that.

    Raises
    ------
    BalanceError
        If the overrun is negative.
    """
    if not overrun >= 0.0:
        told = say(
            "an overrun of {percent} % is impossible; give 0 % or more",
            percent=number(overrun * 100),
        )
        raise BalanceError(told)
    return Mix(constituents=mix.constituents, gas=overrun * liquid_volume(mix))


def aerate_to(mix: Mix, foam: float) -> Mix:
    """Mix whipped to the density `foam` [kg/m3].

    Raises
    ------
    BalanceError
        If it is lighter than that only with less than no air.
    """
    return whip(mix, overrun(liquid_density(mix), foam))


def fold(first: Mix, *others: Mix, kept: float = KEPT) -> Mix:
    """Mixes folded together; `kept` is the share of all their air that survives.

    Raises
    ------
    BalanceError
        If `kept` is no fraction.
    """
    if not 0.0 <= kept <= 1.0:
        told = say(
            "folding cannot keep {percent} % of the air; give 0 to 100 %",
            percent=number(kept * 100),
        )
        raise BalanceError(told)
    together = mixed(first, *others)
    return Mix(constituents=together.constituents, gas=together.gas * kept)
