"""Rectangular frames and boxes, with rounded corners and sloping walls."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import partial

import numpy as np

from entremetry.shapes.dimension import (
    inside_height,
    require_between,
    require_factor,
    require_length,
    require_spacing,
)
from entremetry.shapes.filling import level_by_bisection, require_volume
from entremetry.shapes.outline import rounded_rectangle
from entremetry.shapes.piece import counted
from entremetry.shapes.sloping_wall import clearance_of_sloping_wall, upright_surface
from entremetry.shapes.solid import Floats
from entremetry.words import say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box or frame, open at the rim.

    Parameters
    ----------
    length, width, height : float
        Length and width at the rim, height. [m]
    corner_radius : float
        Radius of the upright edges at the rim. [m]
    taper : float
        How far each wall leans in from the rim to the closed end. All walls lean alike, so
        the corner radius shrinks by as much on the way down, to a sharp edge at least. [m]
    """

    length: float
    width: float
    height: float
    corner_radius: float = 0.0
    taper: float = 0.0

    def __post_init__(self) -> None:
        require_length(say_later("length of the box"), self.length)
        require_length(say_later("width of the box"), self.width)
        require_length(say_later("height of the box"), self.height)
        half = min(self.length, self.width) / 2.0
        reason = say_later("half the shorter side")
        require_between(
            say_later("corner radius of the box"), self.corner_radius, 0.0, half, reason
        )
        require_between(say_later("taper of the box"), self.taper, 0.0, half, reason)

    def _lean(self, level: float) -> float:
        """How far the wall stands in from the rim at a level. [m]"""
        return self.taper * (1.0 - level / self.height)

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level. [m2]"""
        lean = self._lean(inside_height(level, self.height))
        rectangle = max(self.length - 2.0 * lean, 0.0) * max(self.width - 2.0 * lean, 0.0)
        return rectangle - (4.0 - math.pi) * max(self.corner_radius - lean, 0.0) ** 2

    def _perimeter(self, lean: float) -> float:
        """Length of the outline where the wall stands in by `lean`. [m]"""
        radius = max(self.corner_radius - lean, 0.0)
        straight = 2.0 * (self.length + self.width - 4.0 * lean)
        return straight - (8.0 - 2.0 * math.pi) * radius

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return self.volume_below(self.height)

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level, by the prismoidal formula. [m3]"""
        level = inside_height(level, self.height)
        bends = self._sharp_until()
        parts = ((0.0, min(level, bends)), (min(level, bends), level))
        return sum(
            (high - low)
            * (self.area_at(low) + 4.0 * self.area_at((low + high) / 2.0) + self.area_at(high))
            / 6.0
            for low, high in parts
        )

    def _sharp_until(self) -> float:
        """Level up to which the upright edges are sharp. [m]"""
        if self.corner_radius >= self.taper:
            return 0.0
        return self.height * (1.0 - self.corner_radius / self.taper)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        if self.taper == 0.0:
            return min(volume / self.area_at(0.0), self.height)
        return level_by_bisection(self.volume_below, self.height, volume)

    @property
    def wall_area(self) -> float:
        """Area of closed end and side walls. [m2]"""
        slant = math.hypot(1.0, self.taper / self.height)
        bends = self._sharp_until()
        sides = sum(
            (high - low) * (self._perimeter(self._lean(low)) + self._perimeter(self._lean(high)))
            for low, high in ((0.0, bends), (bends, self.height))
        )
        return self.area_at(0.0) + slant * sides / 2.0

    def section(self) -> tuple[Floats, ...]:
        """Closed outline of the section along the length. [m]"""
        rim, base = self.length / 2.0, self.length / 2.0 - self.taper
        outline = [(-base, 0.0), (base, 0.0), (rim, self.height), (-rim, self.height)]
        return (np.array(outline if base > 0.0 else outline[1:]),)

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outline of the horizontal section at a level. [m]"""
        return self._outline(level, math.inf)

    def _outline(self, level: float, spacing: float) -> tuple[Floats, ...]:
        """Closed outline at a level, corner points at most `spacing` apart. [m]"""
        lean = self._lean(inside_height(level, self.height))
        radius = max(self.corner_radius - lean, 0.0)
        length, width = (max(side - 2.0 * lean, 0.0) for side in (self.length, self.width))
        return (rounded_rectangle(length, width, radius, spacing),)

    def surface(self, spacing: float) -> Floats:
        """Points on walls, closed end and opening, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        steps = counted(math.hypot(self.height, self.taper), spacing) + 1
        levels = np.linspace(0.0, self.height, steps)
        return upright_surface(partial(self._outline, spacing=spacing), levels, spacing)

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from walls and closed end. [m]"""
        beside = self._plan_clearance(points)
        return clearance_of_sloping_wall(beside, points[:, 2], self.height, self.taper)

    def _plan_clearance(self, points: Floats) -> Floats:
        """Distance from the outline at the rim, seen from above. [m]"""
        radius = self.corner_radius
        x = np.abs(points[:, 0]) - (self.length / 2.0 - radius)
        y = np.abs(points[:, 1]) - (self.width / 2.0 - radius)
        outside = np.hypot(np.maximum(x, 0.0), np.maximum(y, 0.0))
        return radius - outside - np.minimum(np.maximum(x, y), 0.0)

    def scaled(self, factor: float) -> Box:
        """Similar box with every length multiplied."""
        require_factor(factor)
        return Box(
            length=self.length * factor,
            width=self.width * factor,
            height=self.height * factor,
            corner_radius=self.corner_radius * factor,
            taper=self.taper * factor,
        )
