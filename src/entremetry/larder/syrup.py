"""What the dextrose equivalent of a starch syrup says about its molecules."""

from __future__ import annotations

from entremetry.sources.range import Range

RANGE = Range("dextrose equivalent", 1.0, 100.0, "g per 100 g of solids", "belitz_2009")
GLUCOSE_MOLAR_MASS = 0.18016  # kg/mol


def mean_molar_mass(dextrose_equivalent: float) -> float:
    """Number-average molar mass of the solids of a starch syrup.

    Parameters
    ----------
    dextrose_equivalent : float
        Reducing power of the solids, counted as glucose. [g per 100 g]

    Returns
    -------
    float
        Molar mass. [kg/mol]

    Raises
    ------
    OutsideRange
        If the dextrose equivalent is not within 1 to 100.

    Notes
    -----
    Each chain has one reducing end, so 100 g of solids of a mean molar mass M reduce as much as
    100/M mol of glucose: DE = 100 (180.16/M), hence M = 18016/DE in g/mol.

    References
    ----------
    belitz_2009, starch syrups; the relation is the definition itself.

    Examples
    --------
    >>> round(mean_molar_mass(42.0), 3)
    0.429
    """
    RANGE.require(dextrose_equivalent)
    return 100.0 * GLUCOSE_MOLAR_MASS / dextrose_equivalent
