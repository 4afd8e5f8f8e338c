"""Rings with a hole: the savarin, round at its closed end, and the flat-bottomed ring."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal, get_args

from entremetry.shapes.dimension import (
    millimetres,
    refuse,
    require_factor,
    require_known,
    require_length,
)
from entremetry.shapes.piece import Arc, Piece, Segment
from entremetry.shapes.profile import Profile
from entremetry.shapes.revolved import Revolved
from entremetry.words import say, say_later

CrossSection = Literal["half-round", "flat"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring(Revolved):
    """A ring mould with a hole.

    Parameters
    ----------
    diameter, hole_diameter : float
        Outer and inner diameter at the opening. [m]
    height : float
        From the closed end to the opening. [m]
    cross_section : 'half-round' or 'flat'
        Round or flat at the closed end. A half-round ring as high as half the width of its
        band is half a torus; a higher one has upright walls above the round, a lower one is
        bounded by a flatter arc of a circle.
    """

    diameter: float
    hole_diameter: float
    height: float
    cross_section: CrossSection = "half-round"
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("diameter of the ring"), self.diameter)
        require_length(say_later("diameter of the hole"), self.hole_diameter)
        require_length(say_later("height of the ring"), self.height)
        if self.hole_diameter >= self.diameter:
            accepted = say("less than the ring, {most}", most=millimetres(self.diameter))
            raise refuse(say_later("diameter of the hole"), self.hole_diameter, accepted)
        require_known("cross-section of a ring", self.cross_section, get_args(CrossSection))
        inner, outer = self.hole_diameter / 2.0, self.diameter / 2.0
        shape = _flat if self.cross_section == "flat" else _round
        profile = Profile(shape(inner, outer, self.height), self.height)
        object.__setattr__(self, "profile", profile)

    def scaled(self, factor: float) -> Ring:
        """Similar ring with every length multiplied."""
        require_factor(factor)
        return Ring(
            diameter=self.diameter * factor,
            hole_diameter=self.hole_diameter * factor,
            height=self.height * factor,
            cross_section=self.cross_section,
        )


def half_torus(diameter: float, hole_diameter: float) -> Ring:
    """Return half a torus with outer and inner diameters [m] at its flat face."""
    return Ring(
        diameter=diameter, hole_diameter=hole_diameter, height=(diameter - hole_diameter) / 4.0
    )


def _flat(inner: float, outer: float, height: float) -> tuple[Piece, ...]:
    """Inner wall down, flat closed end, outer wall up."""
    return (
        Segment((inner, height), (inner, 0.0)),
        Segment((inner, 0.0), (outer, 0.0)),
        Segment((outer, 0.0), (outer, height)),
    )


def _round(inner: float, outer: float, height: float) -> tuple[Piece, ...]:
    """Inner wall down, round closed end, outer wall up."""
    middle, half = (inner + outer) / 2.0, (outer - inner) / 2.0
    straight = height > half * (1.0 + 1e-12)
    rise = half if straight else height
    radius = (half**2 + rise**2) / (2.0 * rise)
    centre = (middle, radius)
    arcs = (
        Arc(centre=centre, radius=radius, side=-1, levels=(rise, 0.0)),
        Arc(centre=centre, radius=radius, side=1, levels=(0.0, rise)),
    )
    if not straight:
        return arcs
    down = Segment((inner, height), (inner, rise))
    return (down, *arcs, Segment((outer, rise), (outer, height)))
