"""A material as the conduction kernel sees it: enthalpy, temperature, conductivity in one table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats, Numbers, read_table

Law = Callable[[Floats], Floats]
LOWEST = 233.15
HIGHEST = 373.15
STEPS = 640


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Material:
    """Table on equal steps of enthalpy per volume, straight between the steps.

    Because both directions read the same straight pieces, temperature and enthalpy invert to
    rounding. `conduction` is the integral of the conductivity over temperature (Kirchhoff).
    """

    name: str
    enthalpy_start: float  # J/m3
    enthalpy_step: float  # J/m3
    temperatures: Floats  # K, rising
    conductivities: Floats  # W/(m K)
    conduction: Floats  # W/m
    freezing_point: float | None = None  # K

    def __repr__(self) -> str:
        return f"Material {self.name}, {self.lowest:g} to {self.highest:g} K"

    @property
    def enthalpies(self) -> Floats:
        """Enthalpy per volume at the rows. [J/m3]"""
        rows = np.arange(self.temperatures.size, dtype=np.float64)
        return self.enthalpy_start + self.enthalpy_step * rows

    @property
    def lowest(self) -> float:
        """Coldest temperature of the table. [K]"""
        return float(self.temperatures[0])

    @property
    def highest(self) -> float:
        """Warmest temperature of the table. [K]"""
        return float(self.temperatures[-1])

    def require(self, temperature: Numbers) -> None:
        """Raise OutsideRange unless the table covers the temperature."""
        low, high = self.lowest - 1e-9, self.highest + 1e-9
        if isinstance(temperature, float):
            covered = low <= temperature <= high
        else:
            covered = bool(np.all((temperature >= low) & (temperature <= high)))
        if not covered:
            raise OutsideRange(
                f"temperature {temperature} K is outside {self.lowest:g} to {self.highest:g} K, "
                f"where {self.name} is tabled"
            )

    def enthalpy(self, temperature: Numbers) -> Floats:
        """Enthalpy per volume at a temperature. [J/m3]"""
        self.require(temperature)
        rows = np.arange(self.temperatures.size, dtype=np.float64)
        row = read_table(temperature, self.temperatures, rows)
        return self.enthalpy_start + self.enthalpy_step * row

    def temperature(self, enthalpy: Numbers) -> Floats:
        """Temperature at an enthalpy per volume. [K]"""
        h = np.asarray(enthalpy, dtype=float)
        row = (h - self.enthalpy_start) / self.enthalpy_step
        last = self.temperatures.size - 1
        if not np.all((row >= -1e-9) & (row <= last + 1e-9)):
            raise OutsideRange(f"enthalpy {enthalpy} J/m3 is outside the table of {self.name}")
        return read_table(
            row, np.arange(self.temperatures.size, dtype=np.float64), self.temperatures
        )

    def conductivity(self, temperature: Numbers) -> Floats:
        """Conductivity at a temperature. [W/(m K)]"""
        self.require(temperature)
        return read_table(temperature, self.temperatures, self.conductivities)


def material(
    name: str,
    enthalpy: Law,
    conductivity: Law,
    *,
    freezing_point: float | None = None,
    lowest: float = LOWEST,
    highest: float = HIGHEST,
    steps: int = STEPS,
) -> Material:
    """Table two laws of temperature.

    Parameters
    ----------
    name : str
        What the material is called in messages.
    enthalpy, conductivity : callable
        Enthalpy per volume [J/m3], continuous and rising; conductivity [W/(m K)], positive.
    freezing_point : float, optional
        Where the enthalpy has its kink; it becomes a row of the table. [K]
    lowest, highest : float
        Ends of the table. [K]
    steps : int
        Least number of steps.

    Returns
    -------
    Material
        The table.

    Raises
    ------
    OutsideRange
        If a law gives something that is not finite, does not rise, or is not positive.
    """
    if not -np.inf < lowest < highest < np.inf:
        raise OutsideRange(f"{name}: {lowest} K is not below {highest} K")
    inside = freezing_point is not None and lowest < freezing_point < highest
    kink = freezing_point if inside and freezing_point is not None else lowest
    fine = _fine_temperatures(lowest, kink, highest)
    heights = np.asarray(enthalpy(fine), dtype=float)
    if not np.isfinite(heights).all() or np.any(np.diff(heights) <= 0.0):
        raise OutsideRange(f"{name}: its enthalpy does not rise everywhere with temperature")
    levels = _levels(heights, float(read_table(kink, fine, heights)), steps)
    rows = _inverse(enthalpy, fine, heights, levels)
    k = np.broadcast_to(np.asarray(conductivity(rows), dtype=float), rows.shape).copy()
    if not (np.isfinite(k).all() and np.all(k > 0.0)):
        raise OutsideRange(f"{name}: its conductivity is not a positive number everywhere")
    return Material(
        name=name,
        enthalpy_start=float(levels[0]),
        enthalpy_step=float(levels[1] - levels[0]),
        temperatures=rows,
        conductivities=k,
        conduction=_integral(conductivity, rows),
        freezing_point=freezing_point,
    )


def constant_material(name: str, conductivity: float, heat_capacity: float) -> Material:
    """Material whose conductivity [W/(m K)] and heat capacity per volume [J/(m3 K)] stay.

    Raises OutsideRange unless both are positive.
    """
    if not (conductivity > 0.0 and 0.0 < heat_capacity < np.inf):
        raise OutsideRange(f"{name}: conductivity and heat capacity must be positive")
    return material(
        name,
        lambda t: heat_capacity * (t - 273.15),
        lambda t: np.full_like(t, conductivity),
        steps=4,
    )


def _fine_temperatures(lowest: float, kink: float, highest: float) -> Floats:
    """Temperatures that crowd below the kink, where most of the ice forms."""
    count = 2400 if kink > lowest else 1
    below = kink - (kink - lowest) * np.linspace(1.0, 0.0, count) ** 3
    return np.concatenate([below[:-1], np.linspace(kink, highest, 800)])


def _levels(heights: Floats, kink: float, steps: int) -> Floats:
    """Equal steps of enthalpy that cover the heights, with the kink on one of them."""
    whole = float(heights[-1] - heights[0])
    below = float(kink - heights[0])
    share = max(1, round(steps * below / whole)) if below > 0.0 else 0
    step = below / share if share else whole / steps
    above = max(1, int(np.ceil((heights[-1] - kink) / step - 1e-9)))
    step = step if share else (float(heights[-1]) - kink) / above
    return kink + step * np.arange(-share, above + 1, dtype=np.float64)


def _inverse(law: Law, fine: Floats, heights: Floats, levels: Floats) -> Floats:
    """Temperatures at the levels: by the fine table, then twice by Newton inside a bracket."""
    slope_end = (heights[-1] - heights[-2]) / (fine[-1] - fine[-2])
    rows = read_table(levels, heights, fine)
    inner = levels < heights[-1]
    place = np.clip(np.searchsorted(heights, levels, side="right") - 1, 0, fine.size - 2)
    slopes = (heights[place + 1] - heights[place]) / (fine[place + 1] - fine[place])
    for _ in range(2):
        moved = rows + (levels - law(rows)) / slopes
        rows = np.where(inner, np.clip(moved, fine[place], fine[place + 1]), rows)
    beyond = fine[-1] + (levels - heights[-1]) / slope_end
    return np.where(inner, rows, beyond)


def _integral(conductivity: Law, rows: Floats) -> Floats:
    """Integral of the conductivity from the first row to each row, by Gauss' three points."""
    half = 0.5 * np.diff(rows)
    middle = 0.5 * (rows[1:] + rows[:-1])
    offset = np.sqrt(0.6) * half
    outer = conductivity(middle - offset) + conductivity(middle + offset)
    pieces = half * (5.0 * outer + 8.0 * conductivity(middle)) / 9.0
    return np.concatenate([[0.0], np.cumsum(pieces)])
