"""A stretch of time with fixed surroundings, and what ends it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.conduction.surroundings import Surroundings, Wall

WARMEST, COLDEST, MEAN = "warmest", "coldest", "mean"


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """Ends a stage when the warmest, coldest, mean or a named point passes a temperature [K]."""

    of: str = WARMEST
    temperature: float
    falling: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """Surroundings of each face for a time [s], until a target, or both: whichever comes first.

    A face that is not named is insulated. `walls` puts a wall or film on a face (Wall) or takes
    it off (None) at the beginning of the stage; faces not named there stay as they are.
    """

    surroundings: Mapping[str, Surroundings]
    duration: float | None = None
    until: Target | None = None
    walls: Mapping[str, Wall | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        if self.duration is None and self.until is None:
            raise OutsideRange("a stage needs a duration, a target, or both")
        if self.duration is not None and not 0.0 < self.duration < np.inf:
            raise OutsideRange(f"a duration of {self.duration} s is not a positive time")
        if self.until is not None and not np.isfinite(self.until.temperature):
            raise OutsideRange(f"a target of {self.until.temperature} K is no temperature")
