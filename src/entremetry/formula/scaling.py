"""The same mix, more or less of it."""

from __future__ import annotations

from entremetry.errors import BalanceError
from entremetry.formula._words import grams, number
from entremetry.formula.mix import Mix
from entremetry.words import say


def factor_for_mass(wanted: float, available: float) -> float:
    """Factor that turns a batch of `available` kg into one of `wanted` kg.

    Raises
    ------
    BalanceError
        If one of the masses is not above zero.
    """
    if not (available > 0.0 and wanted > 0.0):
        raise BalanceError(
            say(
                "cannot scale {available} to {wanted}: both must be more than nothing",
                available=grams(available),
                wanted=grams(wanted),
            )
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
        told = say("cannot scale by {factor}; give a factor of zero or more", factor=number(factor))
        raise BalanceError(told)
    return Mix(constituents=mix.constituents * factor, gas=mix.gas * factor)
