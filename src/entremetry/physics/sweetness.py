"""How sweet sugars are beside sucrose, with the spread of the sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.errors import UnknownName


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweetness:
    """Sweetness by mass beside sucrose: the usual figure, and the lowest and highest printed."""

    usual: float
    low: float
    high: float
    source: str


RELATIVE: Mapping[str, Sweetness] = {
    "sucrose": Sweetness(usual=1.0, low=1.0, high=1.0, source="gaman_sherrington_1990"),
    "glucose": Sweetness(usual=0.74, low=0.50, high=0.75, source="bender_2005"),
    "fructose": Sweetness(usual=1.73, low=1.14, high=1.8, source="bender_2005"),
    "lactose": Sweetness(usual=0.16, low=0.15, high=0.40, source="bender_2005"),
    "maltose": Sweetness(usual=0.33, low=0.30, high=0.50, source="bender_2005"),
    "galactose": Sweetness(usual=0.30, low=0.30, high=0.63, source="gaman_sherrington_1990"),
    "trehalose": Sweetness(usual=0.45, low=0.45, high=0.70, source="gaman_sherrington_1990"),
    "polyols": Sweetness(usual=0.50, low=0.40, high=1.02, source="gaman_sherrington_1990"),
    "dextrins": Sweetness(usual=0.10, low=0.0, high=0.25, source="from_memory"),
}
"""Relative sweetness changes with concentration, temperature and acidity, so the band is real."""


def sweetness(masses: Mapping[str, float]) -> Sweetness:
    """Sucrose that would be as sweet as these sugars together.

    Parameters
    ----------
    masses : mapping of str to float
        Mass, or mass fraction, of each sugar of `RELATIVE`.

    Returns
    -------
    Sweetness
        Sum in the same unit: usual, low, high.

    Raises
    ------
    UnknownName
        If a sugar is not in the table.

    References
    ----------
    bender_2005; gaman_sherrington_1990; from_memory for dextrins.

    Examples
    --------
    >>> round(sweetness({"glucose": 0.10, "fructose": 0.10}).usual, 3)
    0.247
    """
    unknown = next((name for name in masses if name not in RELATIVE), None)
    if unknown is not None:
        raise UnknownName("sugar", unknown, list(RELATIVE))
    pairs = [(mass, RELATIVE[name]) for name, mass in masses.items()]
    return Sweetness(
        usual=sum(mass * each.usual for mass, each in pairs),
        low=sum(mass * each.low for mass, each in pairs),
        high=sum(mass * each.high for mass, each in pairs),
        source="bender_2005",
    )
