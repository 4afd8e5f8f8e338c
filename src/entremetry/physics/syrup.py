"""Solutions of sucrose: density, viscosity, solubility, boiling point."""

from __future__ import annotations

import math

from entremetry.sources.range import Range

FREEZING = 273.15  # K
BOILING = 373.15  # K
SUCROSE_MOLAR_MASS = 0.34230  # kg/mol
WATER_MOLAR_MASS = 0.01801528  # kg/mol
GAS_CONSTANT = 8.3145  # J/(mol K)
HEAT_OF_BOILING = 40660.0  # J/mol, from_memory
NORRISH_25 = 6.47  # at 298 K, chirife_1982

TEMPERATURE = Range("temperature of a syrup", 273.15, 373.15, "K", "bubnik_1995")
CONTENT = Range("sucrose of a syrup", 0.0, 0.85, "kg/kg", "bubnik_1995")
FLOWING = Range("sucrose of a syrup that flows", 0.0, 0.86, "kg/kg", "mathlouthi_1995")
BOILED = Range("sucrose of a boiling syrup", 0.0, 0.90, "kg/kg", "browne_1912")

WATER_TERMS = (999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12)
SUCROSE_TERMS = (
    (385.1761, 135.3705, 40.9299, -3.9646, 13.4853, -17.2890),
    (-46.2720, -7.1720, 1.1597, 5.1126, 17.5254),
    (59.7712, 7.2491, 12.3630, -35.4791),
    (-47.2207, -21.6977, 27.6301),
    (18.3184, 12.3081),
)
"""Rows: powers of the temperature; columns: powers of the content from the first up."""
SOLUBILITY_TERMS = (64.447, 0.08222, 0.0016169, -1.558e-6, -4.63e-8)
BROWNE = (
    (0.60, 3.0),
    (0.62, 3.4),
    (0.64, 4.0),
    (0.66, 4.8),
    (0.68, 5.6),
    (0.70, 6.5),
    (0.72, 7.4),
    (0.74, 8.4),
    (0.76, 9.4),
    (0.78, 10.6),
    (0.80, 12.0),
    (0.82, 13.9),
    (0.84, 16.3),
    (0.86, 19.3),
    (0.88, 23.1),
    (0.90, 27.8),
)
JOINED_FROM = 0.55


def syrup_density(sucrose: float, temperature: float) -> float:
    """Density of a solution of sucrose in water.

    Parameters
    ----------
    sucrose : float
        Mass fraction of sucrose. [kg/kg]
    temperature : float
        Temperature. [K]

    Returns
    -------
    float
        Density. [kg/m3]

    Raises
    ------
    OutsideRange
        If the content leaves 0 to 0.85 or the temperature 273.15 to 373.15 K.

    Notes
    -----
    rho = rho_water(t) + sum over i, j of a_ij q**j ((t - 20)/100)**i. Against crc_handbook_102
    at 20 °C: within 0.03 kg/m3 up to 40 %, 0.3 up to 70 %, 0.8 at 84 %.

    References
    ----------
    bubnik_1995, p. 164.

    Examples
    --------
    >>> round(syrup_density(0.65, 293.15), 1)
    1316.6
    """
    CONTENT.require(sucrose)
    TEMPERATURE.require(temperature)
    t = temperature - FREEZING
    shift = (t - 20.0) / 100.0
    rows = (
        sum(a * sucrose ** (j + 1) for j, a in enumerate(row)) * shift**i
        for i, row in enumerate(SUCROSE_TERMS)
    )
    return float(_water_density(t) + sum(rows))


def _water_density(t: float) -> float:
    return float(sum(a * t**i for i, a in enumerate(WATER_TERMS))) / (1.0 + 16.887236e-3 * t)


def syrup_viscosity(sucrose: float, temperature: float) -> float:
    """Viscosity of a solution of sucrose in water.

    Parameters
    ----------
    sucrose : float
        Mass fraction of sucrose. [kg/kg]
    temperature : float
        Temperature. [K]

    Returns
    -------
    float
        Dynamic viscosity. [Pa s]

    Raises
    ------
    OutsideRange
        If the content leaves 0 to 0.86 or the temperature 273.15 to 373.15 K.

    Notes
    -----
    log10(eta/mPa s) = 22.46 N - 0.114 + B (1.1 + 43.1 N**1.25) with N = c/(1900 - 18 c), c in
    per cent, B = (30 - t)/(91 + t). Within 4 % of crc_handbook_102 at 20 °C; 14 % high for 60 %
    at 0 °C.

    References
    ----------
    mathlouthi_1995.

    Examples
    --------
    >>> round(syrup_viscosity(0.60, 313.15) * 1e3, 1)
    20.9
    """
    FLOWING.require(sucrose)
    TEMPERATURE.require(temperature)
    t, c = temperature - FREEZING, 100.0 * sucrose
    ratio = c / (1900.0 - 18.0 * c)
    slope = (30.0 - t) / (91.0 + t)
    return 1e-3 * math.pow(
        10.0, 22.46 * ratio - 0.114 + slope * (1.1 + 43.1 * math.pow(ratio, 1.25))
    )


def sucrose_solubility(temperature: float) -> float:
    """Sucrose in a saturated solution.

    Parameters
    ----------
    temperature : float
        Temperature. [K]

    Returns
    -------
    float
        Mass fraction of sucrose; above it crystals can grow. [kg/kg]

    Raises
    ------
    OutsideRange
        If the temperature leaves 273.15 to 373.15 K.

    Notes
    -----
    Per cent = 64.447 + 0.08222 t + 1.6169e-3 t**2 - 1.558e-6 t**3 - 4.63e-8 t**4. At most 0.42
    points from the table nbs_solubility, which is lower at 0 °C (64.18) and higher at 20 °C
    (67.09).

    References
    ----------
    bubnik_1995.

    Examples
    --------
    >>> round(sucrose_solubility(293.15), 4)
    0.6672
    """
    TEMPERATURE.require(temperature)
    t = temperature - FREEZING
    return float(sum(a * t**i for i, a in enumerate(SOLUBILITY_TERMS))) / 100.0


def boiling_elevation(sucrose: float) -> float:
    """By how much a solution of sucrose boils above water at the same pressure.

    Parameters
    ----------
    sucrose : float
        Mass fraction of sucrose. [kg/kg]

    Returns
    -------
    float
        Elevation. [K]

    Raises
    ------
    OutsideRange
        If the content leaves 0 to 0.90.

    Notes
    -----
    Below 55 % from the water activity (norrish_1966 with 6.47) and the heat of boiling, from 60 %
    up the table of browne_1912, between the two a straight blend. Browne's rows for weak syrups
    are not used: he has 0.3 K for 2 %, where thermodynamics allows 0.03 K. About 118 °C sources
    disagree by 5 points of sucrose.

    References
    ----------
    browne_1912; norrish_1966.

    Examples
    --------
    >>> round(boiling_elevation(0.80), 6)
    12.0
    """
    BOILED.require(sucrose)
    if sucrose <= JOINED_FROM:
        return _from_activity(sucrose)
    if sucrose >= BROWNE[0][0]:
        return _from_table(sucrose)
    part = (sucrose - JOINED_FROM) / (BROWNE[0][0] - JOINED_FROM)
    return (1.0 - part) * _from_activity(JOINED_FROM) + part * BROWNE[0][1]


def _from_activity(sucrose: float) -> float:
    moles = sucrose / SUCROSE_MOLAR_MASS
    solvent = (1.0 - sucrose) / WATER_MOLAR_MASS
    x = moles / (moles + solvent)
    log_activity = math.log(1.0 - x) - NORRISH_25 * x**2
    return 1.0 / (1.0 / BOILING + GAS_CONSTANT / HEAT_OF_BOILING * log_activity) - BOILING


def _from_table(sucrose: float) -> float:
    for (low, below), (high, above) in zip(BROWNE, BROWNE[1:], strict=False):
        if sucrose <= high:
            return below + (above - below) * (sucrose - low) / (high - low)
    return BROWNE[-1][1]
