"""What sets a liquid beside gelatine: doses and temperatures, as ranges with their sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from entremetry.sources.range import Range

ZERO = 273.15


@dataclass(frozen=True, slots=True, kw_only=True)
class Gel:
    """One setting agent.

    `dose` is a part of the liquid [kg/kg]; `hydrates_at` what it must be heated to, `sets` and
    `melts` between which temperatures it does [K], None if it does not melt again; `solids` the
    dissolved solids it needs, `acidity` the pH it stands. `weeps` tells that its gel loses water
    after it has been frozen, `needs` what it does not set without.
    """

    name: str
    dose: Range
    hydrates_at: float
    sets: Range
    melts: Range | None
    source: str
    acidity: Range | None = None
    solids: Range | None = None
    weeps: bool = False
    needs: str = ""


def _dose(name: str, low: float, high: float, source: str) -> Range:
    return Range(f"{name} in the liquid", low / 100.0, high / 100.0, "kg/kg", source)


def _between(name: str, low: float, high: float, source: str) -> Range:
    return Range(name, low + ZERO, high + ZERO, "K", source)


def _acid(low: float, high: float, source: str) -> Range:
    return Range("pH", low, high, "", source)


AGAR = Gel(
    name="agar",
    dose=_dose("agar", 0.2, 1.5, "from_memory"),
    hydrates_at=90.0 + ZERO,
    sets=_between("agar sets", 35.0, 45.0, "lersch_2014"),
    melts=_between("agar melts", 80.0, 90.0, "lersch_2014"),
    acidity=_acid(4.0, 10.0, "lersch_2014"),
    weeps=True,
    source="lersch_2014",
)
KAPPA = Gel(
    name="kappa carrageenan",
    dose=_dose("kappa carrageenan", 0.2, 0.8, "lersch_2014"),
    hydrates_at=70.0 + ZERO,
    sets=_between("kappa carrageenan sets", 30.0, 60.0, "lersch_2014"),
    melts=_between("kappa carrageenan melts", 40.0, 80.0, "lersch_2014"),
    weeps=True,
    needs="potassium or milk",
    source="lersch_2014",
)
IOTA = Gel(
    name="iota carrageenan",
    dose=_dose("iota carrageenan", 0.2, 0.8, "lersch_2014"),
    hydrates_at=70.0 + ZERO,
    sets=_between("iota carrageenan sets", 40.0, 70.0, "lersch_2014"),
    melts=_between("iota carrageenan melts", 45.0, 80.0, "lersch_2014"),
    needs="calcium",
    source="lersch_2014",
)
PECTIN_HM = Gel(
    name="high-methoxyl pectin",
    dose=_dose("high-methoxyl pectin", 0.2, 1.0, "common_practice"),
    hydrates_at=90.0 + ZERO,
    sets=_between("high-methoxyl pectin sets", 40.0, 85.0, "common_practice"),
    melts=None,
    acidity=_acid(2.8, 3.3, "common_practice"),
    solids=Range("dissolved solids", 0.60, 0.80, "kg/kg", "common_practice"),
    needs="sugar and acid",
    source="common_practice",
)
PECTIN_LM = Gel(
    name="low-methoxyl pectin",
    dose=_dose("low-methoxyl pectin", 0.8, 1.2, "common_practice"),
    hydrates_at=90.0 + ZERO,
    sets=_between("low-methoxyl pectin sets", 50.0, 70.0, "common_practice"),
    melts=_between("low-methoxyl pectin melts", 60.0, 90.0, "from_memory"),
    acidity=_acid(2.8, 6.5, "common_practice"),
    needs="calcium",
    source="common_practice",
)
PECTIN_NH = Gel(
    name="pectin NH",
    dose=_dose("pectin NH", 0.8, 2.0, "common_practice"),
    hydrates_at=85.0 + ZERO,
    sets=_between("pectin NH sets", 40.0, 70.0, "common_practice"),
    melts=_between("pectin NH melts", 60.0, 90.0, "from_memory"),
    acidity=_acid(3.2, 3.6, "common_practice"),
    source="common_practice",
)
STARCH = Gel(
    name="maize starch",
    dose=_dose("maize starch", 5.0, 8.0, "from_memory"),
    hydrates_at=70.0 + ZERO,
    sets=_between("maize starch thickens", 62.0, 80.0, "mcgee_2004"),
    melts=None,
    acidity=_acid(4.0, 10.0, "lersch_2014"),
    weeps=True,
    source="mcgee_2004",
)
GELS: Mapping[str, Gel] = MappingProxyType(
    {gel.name: gel for gel in (AGAR, KAPPA, IOTA, PECTIN_HM, PECTIN_LM, PECTIN_NH, STARCH)}
)

SUCROSE = Range("sucrose in the liquid", 0.0, 0.65, "kg/kg", "from_memory")
PASTE_POINTS = ((0.0, 70.0), (0.40, 80.0), (0.60, 92.0))


def starch_thickens_at(sucrose: float) -> float:
    """Temperature at which maize starch has thickened in a sweet liquid.

    Parameters
    ----------
    sucrose : float
        Sucrose as a part of sucrose and water together. [kg/kg]

    Returns
    -------
    float
        Temperature. [K]

    Raises
    ------
    OutsideRange
        If the sucrose leaves 0 to 0.65.

    Notes
    -----
    About 70 °C in water, 80 °C at 40 %, above 90 °C at 60 %; straight in between. That sugar
    raises it, the more the less free water it leaves, is published; the figures are not.

    References
    ----------
    spies_hoseney_1982 for the effect; from_memory for the three points.

    Examples
    --------
    >>> round(starch_thickens_at(0.20) - 273.15, 1)
    75.0
    """
    SUCROSE.require(sucrose)
    (a, at_a), (b, at_b), (c, at_c) = PASTE_POINTS
    if sucrose <= b:
        return ZERO + at_a + (at_b - at_a) * (sucrose - a) / (b - a)
    return ZERO + at_b + (at_c - at_b) * (sucrose - b) / (c - b)
