"""Caps of an ellipsoid: eggs, quenelles and flat domes."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from entremetry.shapes.dimension import (
    inside_height,
    require_between,
    require_factor,
    require_length,
    require_spacing,
)
from entremetry.shapes.ellipsoid_area import cap_area
from entremetry.shapes.ellipsoid_distance import distance_from_cap
from entremetry.shapes.filling import level_by_bisection, require_volume
from entremetry.shapes.outline import drawn_steps, ellipse
from entremetry.shapes.piece import counted
from entremetry.shapes.solid import Floats
from entremetry.words import say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class EllipsoidCap:
    """A cap of an ellipsoid, half an ellipsoid unless told otherwise.

    Parameters
    ----------
    length, width, height : float
        Length and width of the opening, height from the closed end to the opening. [m]
    half_depth : float, optional
        Upright semi-axis of the ellipsoid; the height for half an ellipsoid, more for a
        flatter cap. [m]
    """

    length: float
    width: float
    height: float
    half_depth: float | None = None

    def __post_init__(self) -> None:
        require_length(say_later("length of the ellipsoid cap"), self.length)
        require_length(say_later("width of the ellipsoid cap"), self.width)
        require_length(say_later("height of the ellipsoid cap"), self.height)
        if self.half_depth is not None:
            most, reason = 1000.0 * self.height, say_later("the height, or more for a flatter cap")
            require_between(
                say_later("upright semi-axis"), self.half_depth, self.height, most, reason
            )

    @property
    def semi_axes(self) -> tuple[float, float, float]:
        """Semi-axes of the whole ellipsoid along x, y and z. [m]"""
        c = self.height if self.half_depth is None else max(self.half_depth, self.height)
        share = math.sqrt(self.height * (2.0 * c - self.height)) / c
        return self.length / (2.0 * share), self.width / (2.0 * share), c

    def _share(self, level: float) -> float:
        """Size of the horizontal section at a level, as a share of the greatest one."""
        c = self.semi_axes[2]
        level = inside_height(level, self.height)
        return math.sqrt(level * (2.0 * c - level)) / c

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return self.volume_below(self.height)

    @property
    def wall_area(self) -> float:
        """Area of the curved wall, by a numerical integral. [m2]"""
        return cap_area(*self.semi_axes, self.height)

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level. [m3]"""
        level = inside_height(level, self.height)
        a, b, c = self.semi_axes
        return math.pi * a * b * level**2 * (3.0 * c - level) / (3.0 * c * c)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        return level_by_bisection(self.volume_below, self.height, volume)

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level. [m2]"""
        a, b, _ = self.semi_axes
        return math.pi * a * b * self._share(level) ** 2

    def section(self) -> tuple[Floats, ...]:
        """Closed outline of the section along the length. [m]"""
        a, _, c = self.semi_axes
        angles = self._angles(drawn_steps(max(a, c) ** 2 / min(a, c)))
        right = np.stack([a * np.sin(angles), c * (1.0 - np.cos(angles))], axis=-1)
        right[-1] = (self.length / 2.0, self.height)
        return (np.concatenate([right[1:], right[::-1] * (-1.0, 1.0)]),)

    def _angles(self, steps_in_quarter: int) -> Floats:
        """Angles from the closed end to the rim."""
        widest = math.acos(max(1.0 - self.height / self.semi_axes[2], 0.0))
        steps = max(math.ceil(steps_in_quarter * widest / (0.5 * math.pi)), 8)
        return np.linspace(0.0, widest, steps + 1)

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outline of the horizontal section at a level; none at the closed end. [m]"""
        a, b, _ = self.semi_axes
        share = self._share(level)
        return (ellipse(a * share, b * share),) if share > 0.0 else ()

    def surface(self, spacing: float) -> Floats:
        """Points on wall and opening, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        a, b, c = self.semi_axes
        angles = self._angles(counted(0.5 * math.pi * max(a, b, c), spacing))
        rings = [(math.sin(angle), c * (1.0 - math.cos(angle))) for angle in angles]
        rim = math.sin(angles[-1])
        steps = counted(max(a, b) * rim, spacing)
        rings += [(rim * step / steps, self.height) for step in range(steps)]
        return np.concatenate([_ring(a * s, b * s, level, spacing) for s, level in rings])

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from the wall. [m]

        Exact at and below the rim; above it never too large.
        """
        return distance_from_cap(points, self.semi_axes, self.height)

    def scaled(self, factor: float) -> EllipsoidCap:
        """Similar cap with every length multiplied."""
        require_factor(factor)
        return EllipsoidCap(
            length=self.length * factor,
            width=self.width * factor,
            height=self.height * factor,
            half_depth=None if self.half_depth is None else self.half_depth * factor,
        )


def cap_of_ellipsoid(a: float, b: float, c: float, height: float) -> EllipsoidCap:
    """Return the cap of a height [m] from an ellipsoid with semi-axes a, b and upright c [m].

    Raises OutsideRange if the height is more than c.
    """
    require_length(say_later("semi-axis along the length"), a)
    require_length(say_later("semi-axis along the width"), b)
    require_length(say_later("semi-axis along the height"), c)
    reason = say_later("the upright semi-axis")
    require_between(say_later("height of the ellipsoid cap"), height, 0.0, c, reason)
    share = math.sqrt(max(height * (2.0 * c - height), 0.0)) / c
    return EllipsoidCap(length=2.0 * a * share, width=2.0 * b * share, height=height, half_depth=c)


def _ring(half_length: float, half_width: float, level: float, spacing: float) -> Floats:
    """Points of an ellipse at a level."""
    count = counted(2.0 * math.pi * max(half_length, half_width), spacing)
    angles = np.arange(count) * (2.0 * math.pi / count)
    x, y = half_length * np.cos(angles), half_width * np.sin(angles)
    return np.stack([x, y, np.full(count, level)], axis=-1)
