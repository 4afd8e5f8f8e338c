"""What a mix loses and takes up between the scale and the mould.

Heat drives off water only. That spirits lose alcohol in cooking is not counted yet, so a
flamed or simmered mix is stated with all the alcohol that was poured in.
"""

from __future__ import annotations

from dataclasses import replace

from entremetry.errors import BalanceError
from entremetry.formula._words import grams, number
from entremetry.formula.brix import brix as brix_of
from entremetry.formula.brix import soluble_solids
from entremetry.formula.mix import ROUNDING, Mix
from entremetry.larder.constituents import Constituents
from entremetry.words import say, say_as, say_as_later

HIGHEST_BRIX = 88.0
"""About where the boiling table of browne_1912 ends; beyond it sugar is cooked by temperature."""


def evaporate(mix: Mix, water: float) -> Mix:
    """Mix after `water` [kg] of its water has gone as steam; its gas stays.

    Raises
    ------
    BalanceError
        If there is less water than that, or the amount is negative.
    """
    return _without_water(mix, water, say_as_later("cannot", "evaporate"))


def drain(mix: Mix, water: float) -> Mix:
    """Mix after `water` [kg] of its water has been poured or squeezed off.

    Raises
    ------
    BalanceError
        If there is less water than that, or the amount is negative.
    """
    return _without_water(mix, water, say_as_later("cannot", "drain off"))


def take_up(mix: Mix, water: float) -> Mix:
    """Mix with `water` [kg] soaked up.

    Raises
    ------
    BalanceError
        If the amount is negative.
    """
    _require_amount(water, say_as_later("cannot", "take up"))
    return _with_water(mix, mix.constituents.water + water)


def reduce_to_mass(mix: Mix, mass: float) -> Mix:
    """Mix boiled down until `mass` [kg] is left.

    Raises
    ------
    BalanceError
        If there is less than that now, or if even without its water there would be more.
    """
    if mass > mix.mass + ROUNDING:
        raise BalanceError(
            say(
                "cannot reduce to {mass}: there are only {there}; "
                "give a smaller mass, or leave the reduction out",
                mass=grams(mass),
                there=grams(mix.mass),
            )
        )
    driest = mix.mass - mix.constituents.water
    if mass < driest - ROUNDING:
        raise BalanceError(
            say(
                "cannot reduce {whole} to {mass}: without any of its water "
                "{driest} would be left; give at least that",
                whole=grams(mix.mass),
                mass=grams(mass),
                driest=grams(driest),
            )
        )
    return evaporate(mix, min(max(mix.mass - mass, 0.0), mix.constituents.water))


def reduce_to_brix(mix: Mix, brix: float) -> Mix:
    """Mix boiled down until its liquid has `brix` degrees; for a pure syrup m = m0 B0 / B.

    Raises
    ------
    BalanceError
        If the mix is as concentrated already, or nothing in it dissolves, or the target lies
        above 88 degrees, or its alcohol keeps it from getting there.
    """
    _require_brix(mix, brix)
    parts = mix.constituents
    liquid = soluble_solids(mix) * (100.0 / brix - 1.0)
    if liquid < parts.alcohol:
        raise BalanceError(
            say(
                "cannot reduce to {brix} °Brix: {alcohol} of alcohol stay in it; "
                "reduce first and add the spirit afterwards",
                brix=number(brix),
                alcohol=grams(parts.alcohol),
            )
        )
    return evaporate(mix, max(parts.water + parts.alcohol - liquid, 0.0))


def bake(mix: Mix, loss: float) -> Mix:
    """Mix after the oven has taken `loss`, a fraction of its mass, all of it water.

    Raises
    ------
    BalanceError
        If there is less water than that, or the loss is no fraction.
    """
    _require_fraction(loss, say_as_later("loss", "bake loss"))
    return _without_water(mix, loss * mix.mass, say_as_later("cannot", "bake out"))


def leave_behind(mix: Mix, mass: float) -> Mix:
    """Mix without the `mass` [kg] that sticks to pan, bowl or bag; it takes its gas along.

    Raises
    ------
    BalanceError
        If that is more than there is, or negative.
    """
    _require_amount(mass, say_as_later("cannot", "leave behind"))
    if mass > mix.mass + ROUNDING:
        raise BalanceError(
            say(
                "cannot leave {mass} behind: there are only {there}; give less, or a percentage",
                mass=grams(mass),
                there=grams(mix.mass),
            )
        )
    left = max(1.0 - mass / mix.mass, 0.0) if mix.mass > 0.0 else 1.0
    return Mix(constituents=mix.constituents * left, gas=mix.gas * left)


def trim(mix: Mix, fraction: float) -> Mix:
    """Mix without the `fraction` that is cut away.

    Raises
    ------
    BalanceError
        If it is no fraction.
    """
    _require_fraction(fraction, say_as_later("loss", "trim"))
    return leave_behind(mix, fraction * mix.mass)


def take_out(mix: Mix, part: Constituents) -> Mix:
    """Mix without a `part` [kg] lifted out whole, such as a pod, a peel or tea leaves.

    Raises
    ------
    BalanceError
        If something in the part is not there any more.
    """
    return Mix(constituents=mix.constituents - part, gas=mix.gas)


def _without_water(mix: Mix, water: float, doing: str) -> Mix:
    _require_amount(water, doing)
    there = mix.constituents.water
    if water > there + ROUNDING:
        raise BalanceError(
            say(
                "cannot {do} {water} of water: there are only {there} of it in {whole}; "
                "give at most that",
                do=say_as("cannot", doing),
                water=grams(water),
                there=grams(there),
                whole=grams(mix.mass),
            )
        )
    return _with_water(mix, max(there - water, 0.0))


def _with_water(mix: Mix, water: float) -> Mix:
    return Mix(constituents=replace(mix.constituents, water=water), gas=mix.gas)


def _require_amount(mass: float, doing: str) -> None:
    if not mass >= 0.0:
        do = say_as("cannot", doing)
        told = say("cannot {do} {mass}: give a mass of zero or more", do=do, mass=grams(mass))
        raise BalanceError(told)


def _require_fraction(fraction: float, what: str) -> None:
    if not 0.0 <= fraction < 1.0:
        raise BalanceError(
            say(
                "a {loss} of {percent} % is impossible; give 0 % or more, below 100 %",
                loss=say_as("loss", what),
                percent=number(fraction * 100),
            )
        )


def _require_brix(mix: Mix, brix: float) -> None:
    present = brix_of(mix)
    if present == 0.0:
        raise BalanceError(
            say(
                "cannot reduce to {brix} °Brix: nothing in it dissolves; give a mass instead",
                brix=number(brix),
            )
        )
    if brix > HIGHEST_BRIX:
        raise BalanceError(
            say(
                "cannot reduce to {brix} °Brix: above {most} °Brix sugar is cooked by "
                "temperature; give '{step}' with a temperature and the water that evaporates",
                brix=number(brix),
                most=f"{HIGHEST_BRIX:g}",
                step="cook-to",
            )
        )
    if not brix >= present * (1.0 - 1e-12):
        raise BalanceError(
            say(
                "cannot reduce to {brix} °Brix: it has {present} °Brix already; "
                "give more, or leave the reduction out",
                brix=number(brix),
                present=number(present, 3),
            )
        )
