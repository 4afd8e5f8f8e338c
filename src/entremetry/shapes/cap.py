"""Caps of a sphere: domes, half-spheres, and the whole sphere in two halves."""

from __future__ import annotations

from dataclasses import dataclass, field

from entremetry.shapes.dimension import (
    millimetres,
    refuse,
    require_factor,
    require_length,
)
from entremetry.shapes.piece import Arc
from entremetry.shapes.profile import Profile
from entremetry.shapes.revolved import Revolved
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class SphericalCap(Revolved):
    """A cap of a sphere; its pole is the closed end.

    Parameters
    ----------
    diameter : float
        Across the opening. [m]
    height : float
        From the pole to the opening; at most half the diameter unless `past_half`. [m]
    past_half : bool
        True for more than half a sphere, which is narrower at the opening than below it.
    """

    diameter: float
    height: float
    past_half: bool = False
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("diameter of the cap"), self.diameter)
        require_length(say_later("height of the cap"), self.height)
        half = self.diameter / 2.0
        if (self.height > half * (1.0 + 1e-12)) != self.past_half:
            raise refuse(
                say_later("height of the cap"), self.height, _accepted(half, self.past_half)
            )
        radius = self.sphere_radius
        arc = Arc(centre=(0.0, radius), radius=radius, side=1, levels=(0.0, self.height))
        object.__setattr__(self, "profile", Profile((arc,), self.height))

    @property
    def sphere_radius(self) -> float:
        """Radius of the sphere the cap is cut from. [m]"""
        return ((self.diameter / 2.0) ** 2 + self.height**2) / (2.0 * self.height)

    @property
    def length(self) -> float:
        """Greatest diameter. [m]"""
        return 2.0 * self.sphere_radius if self.past_half else self.diameter

    def scaled(self, factor: float) -> SphericalCap:
        """Similar cap with every length multiplied."""
        require_factor(factor)
        return SphericalCap(
            diameter=self.diameter * factor,
            height=self.height * factor,
            past_half=self.past_half,
        )


def _accepted(half: float, past_half: bool) -> str:
    """Say which heights a cap with this opening may have."""
    if past_half:
        return say(
            "more than {half}, half the diameter, for more than half a sphere",
            half=millimetres(half),
        )
    return say("at most {half}, half the diameter across the opening", half=millimetres(half))


def hemisphere(diameter: float) -> SphericalCap:
    """Return half a sphere of a diameter [m]."""
    return SphericalCap(diameter=diameter, height=diameter / 2.0)


def cap_of_sphere(sphere_diameter: float, height: float) -> SphericalCap:
    """Return the cap of a height [m] cut from a sphere of a diameter [m].

    Raises OutsideRange if the cap would be as high as the sphere or higher.
    """
    require_length(say_later("diameter of the sphere"), sphere_diameter)
    require_length(say_later("height of the cap"), height)
    if height >= sphere_diameter:
        accepted = say("less than the sphere, {most}", most=millimetres(sphere_diameter))
        raise refuse(say_later("height of the cap"), height, accepted)
    opening = 2.0 * (height * (sphere_diameter - height)) ** 0.5
    past_half = height > opening / 2.0 * (1.0 + 1e-12)
    return SphericalCap(diameter=opening, height=height, past_half=past_half)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sphere(Revolved):
    """A whole sphere, moulded in two halves and closed at the top: it has no opening."""

    diameter: float
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("diameter of the sphere"), self.diameter)
        radius = self.diameter / 2.0
        arc = Arc(centre=(0.0, radius), radius=radius, side=1, levels=(0.0, self.diameter))
        object.__setattr__(self, "profile", Profile((arc,), self.diameter))

    @property
    def height(self) -> float:
        """Distance from the lowest to the highest point. [m]"""
        return self.diameter

    @property
    def length(self) -> float:
        """Greatest diameter. [m]"""
        return self.diameter

    def scaled(self, factor: float) -> Sphere:
        """Similar sphere with its diameter multiplied."""
        require_factor(factor)
        return Sphere(diameter=self.diameter * factor)
