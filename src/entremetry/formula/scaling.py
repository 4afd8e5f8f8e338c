"""The same mix, more or less of it."""

from __future__ import annotations

from entremetry.errors import BalanceError
from entremetry.formula._words import grams
from entremetry.formula.mix import Mix


def factor_for_mass(wanted: float, available: float) -> float:
    """Factor that turns a batch of `available` kg into one of `wanted` kg.

    Raises
    ------
    BalanceError
        If one of the masses is not above zero.
    """
    if not (available > 0.0 and wanted > 0.0):
        raise BalanceError(
            f"cannot scale {grams(available)} to {grams(wanted)}: both must be more than nothing"
        )
    return wanted / available


def scaled(mix: Mix, factor: float) -> Mix:
    """Mix with every mass and its gas times `factor`.

    Raises
    ------
    BalanceError
        If the factor is negative.
    """
    if not factor >= 0.0:
        raise BalanceError(f"cannot scale by {factor:.4g}; give a factor of zero or more")
    return Mix(constituents=mix.constituents * factor, gas=mix.gas * factor)
