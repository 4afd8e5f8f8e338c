"""How heavy a mix is for its volume: volumes of the constituents and of the gas add up."""

from __future__ import annotations

from entremetry.errors import BalanceError
from entremetry.formula.mix import Mix
from entremetry.physics.component_density import component_density
from entremetry.sources.range import Range
from entremetry.words import say

ETHANOL_DENSITY = 789.0  # kg/m3 at 20 °C, crc_handbook_102
CHOCOLATE_FAT = Range("fat fraction of chocolate", 0.26, 0.43, "kg/kg", "banks_2012")
ROOM = 293.15  # K


def liquid_volume(mix: Mix, temperature: float = ROOM) -> float:
    """Volume of a mix without its gas.

    Parameters
    ----------
    mix : Mix
        Any mix.
    temperature : float
        Temperature. [K]

    Returns
    -------
    float
        Sum of the volumes of its constituents. [m3]

    Raises
    ------
    OutsideRange
        If the temperature leaves 233.15 to 423.15 K.

    Notes
    -----
    Nothing contracts and nothing freezes here. Against solutions of sucrose, glucose and fructose
    at 20 °C, up to 70 %, the density is right to 0.5 %: lowest about 30 %, high above 65 %.
    Ethanol and water contract by up to 3.5 % (from memory), so spirits come out as much too
    bulky. Fat is counted as liquid: for chocolate that has set see `chocolate_density`.

    References
    ----------
    choi_okos_1986; crc_handbook_102 for ethanol.
    """
    rho, parts = component_density(temperature), mix.constituents
    fibre_free = parts.carbohydrate - parts.fibre
    return (
        parts.water / rho.water
        + parts.protein / rho.protein
        + parts.fat / rho.fat
        + fibre_free / rho.carbohydrate
        + parts.fibre / rho.fibre
        + parts.ash / rho.ash
        + parts.alcohol / ETHANOL_DENSITY
    )


def liquid_density(mix: Mix, temperature: float = ROOM) -> float:
    """Density of a mix without its gas. [kg/m3]

    Raises
    ------
    BalanceError
        If there is nothing in the mix.
    OutsideRange
        If the temperature leaves 233.15 to 423.15 K.
    """
    return _ratio(mix.mass, liquid_volume(mix, temperature))


def volume(mix: Mix) -> float:
    """Volume of a mix with its gas, at 20 °C. [m3]"""
    return liquid_volume(mix) + mix.gas


def density(mix: Mix) -> float:
    """Density of a mix with its gas, at 20 °C. [kg/m3]

    Raises
    ------
    BalanceError
        If there is nothing in the mix.
    """
    return _ratio(mix.mass, volume(mix))


def chocolate_density(fat: float) -> float:
    """Density of solid chocolate at room temperature.

    Parameters
    ----------
    fat : float
        Fat fraction of the chocolate. [kg/kg]

    Returns
    -------
    float
        Density, 8.5 kg/m3 of standard error on the sixteen bars it was fitted to. [kg/m3]

    Raises
    ------
    OutsideRange
        If the fat fraction leaves 0.26 to 0.43, the range of those bars.

    Notes
    -----
    1/rho = f/968 + (1 - f)/1539. Our own fit: crystallised fat of 968 kg/m3 beside the rest.

    References
    ----------
    banks_2012, the sixteen measured bars.
    """
    CHOCOLATE_FAT.require(fat)
    return 1.0 / (fat / 968.0 + (1.0 - fat) / 1539.0)


def _ratio(mass: float, size: float) -> float:
    if not mass > 0.0:
        raise BalanceError(say("nothing has no density: the mix is empty"))
    return mass / size
