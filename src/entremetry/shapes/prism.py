"""Upright walls over any plan outline, with holes: hearts, stars, letters, leaves."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from entremetry.shapes.dimension import (
    inside_height,
    require_factor,
    require_length,
    require_spacing,
)
from entremetry.shapes.filling import require_volume
from entremetry.shapes.outline import enclosed_area, perimeter, signed_distance
from entremetry.shapes.piece import Point, counted
from entremetry.shapes.plan_check import require_outlines
from entremetry.shapes.sloping_wall import clearance_of_sloping_wall, upright_surface
from entremetry.shapes.solid import Floats
from entremetry.words import say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class Prism:
    """A mould with upright walls over a polygon, which may have holes.

    Parameters
    ----------
    outline : points (x, y)
        Corners of the outer outline, either way round, first not repeated. [m]
    height : float
        [m]
    holes : outlines
        Corners of outlines that are cut out; each inside the outer one, apart from the rest.

    The body is centred, and turned by a quarter if it is wider than long.
    """

    outline: tuple[Point, ...]
    height: float
    holes: tuple[tuple[Point, ...], ...] = ()
    outlines: tuple[Floats, ...] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("height of the prism"), self.height)
        drawn = tuple(np.array(line, dtype=float) for line in (self.outline, *self.holes))
        require_outlines(drawn)
        object.__setattr__(self, "outlines", _centred(drawn))

    @property
    def _plan_area(self) -> float:
        """Area of the polygon without its holes. [m2]"""
        outer, *holes = (abs(enclosed_area(line)) for line in self.outlines)
        return outer - sum(holes)

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return self._plan_area * self.height

    @property
    def wall_area(self) -> float:
        """Area of closed end and walls. [m2]"""
        return self._plan_area + self.height * sum(perimeter(line) for line in self.outlines)

    @property
    def length(self) -> float:
        """Greatest extent along x. [m]"""
        return float(np.ptp(self.outlines[0][:, 0]))

    @property
    def width(self) -> float:
        """Greatest extent along y. [m]"""
        return float(np.ptp(self.outlines[0][:, 1]))

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level. [m3]"""
        return self._plan_area * inside_height(level, self.height)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        return min(require_volume(volume, self.volume) / self._plan_area, self.height)

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area, the same at every level. [m2]"""
        inside_height(level, self.height)
        return self._plan_area

    def section(self) -> tuple[Floats, ...]:
        """Closed outlines of the section along x: one rectangle for each part cut. [m]"""
        cuts = sorted(x for line in self.outlines for x in _cuts(line))
        return tuple(
            np.array([(low, 0.0), (high, 0.0), (high, self.height), (low, self.height)])
            for low, high in zip(cuts[::2], cuts[1::2], strict=True)
        )

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outlines of the horizontal section, outer first. [m]"""
        inside_height(level, self.height)
        return self.outlines

    def surface(self, spacing: float) -> Floats:
        """Points on walls, closed end and opening, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        levels = np.linspace(0.0, self.height, counted(self.height, spacing) + 1)
        return upright_surface(self.plan, levels, spacing)

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from walls and closed end. [m]"""
        beside = signed_distance(points[:, :2], self.outlines)
        return clearance_of_sloping_wall(beside, points[:, 2], self.height, 0.0)

    def scaled(self, factor: float) -> Prism:
        """Similar prism with every length multiplied."""
        require_factor(factor)
        lines = tuple(
            tuple((x * factor, y * factor) for x, y in line) for line in (self.outline, *self.holes)
        )
        return Prism(outline=lines[0], holes=lines[1:], height=self.height * factor)


def regular_prism(sides: int, side: float, height: float) -> Prism:
    """Return a prism over a regular polygon with sides of a length [m]."""
    require_length(say_later("side of the polygon"), side)
    radius = side / (2.0 * math.sin(math.pi / max(sides, 3)))
    angles = [2.0 * math.pi * corner / max(sides, 1) for corner in range(sides)]
    outline = tuple((radius * math.cos(angle), radius * math.sin(angle)) for angle in angles)
    return Prism(outline=outline, height=height)


def _centred(lines: tuple[Floats, ...]) -> tuple[Floats, ...]:
    """Centre the outlines; turn them a quarter if that makes the longer side lie along x."""
    low, high = lines[0].min(axis=0), lines[0].max(axis=0)
    lines = tuple(line - (low + high) / 2.0 for line in lines)
    long, wide = high - low
    if wide <= long * (1.0 + 1e-12):
        return lines
    return tuple(np.column_stack([-line[:, 1], line[:, 0]]) for line in lines)


def _cuts(line: Floats) -> list[float]:
    """Places x at which an outline crosses the axis y = 0."""
    start, end = line, np.roll(line, -1, axis=0)
    crosses = (start[:, 1] > 0.0) != (end[:, 1] > 0.0)
    a, b = start[crosses], end[crosses]
    found = a[:, 0] - a[:, 1] * (b[:, 0] - a[:, 0]) / (b[:, 1] - a[:, 1])
    return [float(x) for x in found]
