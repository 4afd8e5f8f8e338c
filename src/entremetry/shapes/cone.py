"""Round moulds with straight walls: rings without a hole, tart rings, cups."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from entremetry.shapes.dimension import require_factor, require_length
from entremetry.shapes.filling import require_volume
from entremetry.shapes.piece import Segment
from entremetry.shapes.profile import Profile
from entremetry.shapes.revolved import Revolved
from entremetry.words import say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Cylinder(Revolved):
    """A round mould with upright walls and a flat closed end."""

    diameter: float
    height: float
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("diameter of the cylinder"), self.diameter)
        require_length(say_later("height of the cylinder"), self.height)
        profile = straight_profile(self.diameter / 2.0, self.diameter / 2.0, self.height)
        object.__setattr__(self, "profile", profile)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        return min(volume / (math.pi * self.diameter**2 / 4.0), self.height)

    def scaled(self, factor: float) -> Cylinder:
        """Similar cylinder with every length multiplied."""
        require_factor(factor)
        return Cylinder(diameter=self.diameter * factor, height=self.height * factor)


@dataclass(frozen=True, slots=True, kw_only=True)
class TruncatedCone(Revolved):
    """A round mould with sloping walls; `diameter` at the rim, `base_diameter` at the closed end.

    A base diameter of 0 gives a cone with its tip at the closed end.
    """

    diameter: float
    base_diameter: float
    height: float
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("diameter of the cone at the rim"), self.diameter)
        if self.base_diameter != 0.0:
            require_length(say_later("diameter of the cone at the closed end"), self.base_diameter)
        require_length(say_later("height of the cone"), self.height)
        profile = straight_profile(self.base_diameter / 2.0, self.diameter / 2.0, self.height)
        object.__setattr__(self, "profile", profile)

    def scaled(self, factor: float) -> TruncatedCone:
        """Similar cone with every length multiplied."""
        require_factor(factor)
        return TruncatedCone(
            diameter=self.diameter * factor,
            base_diameter=self.base_diameter * factor,
            height=self.height * factor,
        )


def straight_profile(base_radius: float, rim_radius: float, height: float) -> Profile:
    """Return a flat closed end and one straight wall."""
    wall = Segment((base_radius, 0.0), (rim_radius, height))
    if base_radius == 0.0:
        return Profile((wall,), height)
    return Profile((Segment((0.0, 0.0), (base_radius, 0.0)), wall), height)
