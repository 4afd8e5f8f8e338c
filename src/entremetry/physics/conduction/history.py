"""What a run gives back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from entremetry.errors import UnknownName
from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.stage import COLDEST, MEAN, WARMEST


@dataclass(frozen=True, slots=True, kw_only=True)
class StageEnd:
    """When a stage ended [s] and whether its target was met; if it was not, why."""

    time: float
    reached: bool
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Snapshot:
    """Temperature of every cell at one time, in the shape of the box of cells. [K]"""

    time: float
    temperatures: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """Temperatures over time [s, K], ends of the stages, pictures, and how well heat is kept.

    `heat` is what came in from outside, `heats` the same over `times` [J]. `balance_error`
    compares it with the change of the enthalpy, relative to the larger. Columns of `values` are
    warmest, coldest, mean and points; `skin` is the last temperature of each face's outside.
    """

    times: Floats
    values: Floats
    heats: Floats
    points: tuple[str, ...]
    ends: tuple[StageEnd, ...]
    snapshots: tuple[Snapshot, ...]
    heat: float
    balance_error: float
    steps: int
    skin: Mapping[str, float]

    @property
    def reached(self) -> bool:
        """Whether every stage that had a target met it."""
        return all(end.reached for end in self.ends)

    @property
    def end(self) -> float:
        """Time at which the last stage ended. [s]"""
        return self.ends[-1].time

    def curve(self, name: str) -> Floats:
        """Temperature over `times` of the warmest, coldest, mean or a named point. [K]"""
        names = (WARMEST, COLDEST, MEAN, *self.points)
        if name not in names:
            raise UnknownName("curve", name, names)
        return np.asarray(self.values[:, names.index(name)])

    def at(self, name: str, time: float) -> float:
        """Temperature on a curve at a time, straight between the steps. [K]"""
        return float(np.interp(time, self.times, self.curve(name)))
