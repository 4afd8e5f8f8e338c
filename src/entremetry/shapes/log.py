"""Logs: one section drawn out along a length, lying with its round side at the closed end."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal, get_args

import numpy as np

from entremetry.shapes.dimension import (
    inside_height,
    require_between,
    require_factor,
    require_known,
    require_length,
    require_spacing,
)
from entremetry.shapes.filling import level_by_bisection, require_volume
from entremetry.shapes.log_profile import half_round, round_topped, rounded
from entremetry.shapes.piece import counted
from entremetry.shapes.profile import Profile
from entremetry.shapes.solid import Floats
from entremetry.words import say_later

CrossSection = Literal["half-round", "rounded", "round-topped"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A log mould with upright end walls.

    Parameters
    ----------
    length, width, height : float
        Length along x, width of the opening, height from closed end to opening. [m]
    cross_section : 'half-round', 'round-topped' or 'rounded'
        'half-round': half a circle as wide as the log; a log higher than half its width has
        upright walls above the round. 'round-topped': a flatter part of a circle, at most
        half as high as wide. 'rounded': upright walls, with the edges at the closed end
        rounded by `corner_radius`.
    corner_radius : float
        Only for 'rounded'. [m]
    """

    length: float
    width: float
    height: float
    cross_section: CrossSection = "half-round"
    corner_radius: float = 0.0
    profile: Profile = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        require_length(say_later("length of the log"), self.length)
        require_length(say_later("width of the log"), self.width)
        require_length(say_later("height of the log"), self.height)
        require_known("cross-section of a log", self.cross_section, get_args(CrossSection))
        if self.cross_section != "rounded":
            reason = say_later("for it rounds only the edges of a 'rounded' log")
            require_between(
                say_later("corner radius of the log"), self.corner_radius, 0.0, 0.0, reason
            )
        object.__setattr__(self, "profile", _profile(self))

    @property
    def _section_area(self) -> float:
        """Area of the cross-section. [m2]"""
        return 2.0 * self.profile.area_below(self.height)

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""
        return self.length * self._section_area

    @property
    def wall_area(self) -> float:
        """Area of the long wall and both end walls. [m2]"""
        return 2.0 * self.profile.path_length * self.length + 2.0 * self._section_area

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level. [m3]"""
        level = inside_height(level, self.height)
        return 2.0 * self.length * self.profile.area_below(level)

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills. [m]"""
        volume = require_volume(volume, self.volume)
        return level_by_bisection(self.volume_below, self.height, volume)

    def width_at(self, level: float) -> float:
        """Width of the log at a level. [m]"""
        return 2.0 * self.profile.crossings(inside_height(level, self.height))[0]

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level. [m2]"""
        return self.length * self.width_at(level)

    def section(self) -> tuple[Floats, ...]:
        """Closed outline of the section along the log: a rectangle. [m]"""
        return (_rectangle(self.length, 0.0, self.height),)

    def cross_outline(self) -> tuple[Floats, ...]:
        """Closed outline (y, z) of the section across the log. [m]"""
        right = self.profile.drawn()
        left = right[::-1] * (-1.0, 1.0)
        return (np.concatenate([right[1:], left]),)

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outline of the horizontal section at a level: a rectangle. [m]"""
        half = self.width_at(level) / 2.0
        return (_rectangle(self.length, -half, half),)

    def surface(self, spacing: float) -> Floats:
        """Points on walls, end walls and opening, at most `spacing` apart. (n, 3) [m]"""
        require_spacing(spacing, self.wall_area)
        wall = self.profile.points(spacing)
        rim = np.linspace(0.0, self.width / 2.0, counted(self.width / 2.0, spacing) + 1)
        face = np.stack([rim, np.full_like(rim, self.height)], axis=-1)
        right = np.concatenate([wall, face])
        around = np.concatenate([right, right * (-1.0, 1.0)])
        steps = counted(self.length, spacing) + 1
        x = np.linspace(-self.length / 2.0, self.length / 2.0, steps)
        shell = _drawn_out(around, x)
        ends = _drawn_out(self._end_face(wall, spacing), x[[0, -1]])
        return np.concatenate([shell, ends])

    def _end_face(self, wall: Floats, spacing: float) -> Floats:
        """Points (y, z) that fill an end wall, in rows at levels `spacing` apart."""
        levels = np.linspace(0.0, self.height, counted(self.height, spacing) + 1)
        rows = []
        for level in levels:
            half = self.width_at(float(level)) / 2.0
            y = np.linspace(-half, half, counted(2.0 * half, spacing) + 1)
            rows.append(np.stack([y, np.full_like(y, level)], axis=-1))
        return np.concatenate(rows)

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from long wall and end walls. [m]"""
        beside = self.profile.clearance(np.abs(points[:, 1]), points[:, 2])
        before_end = self.length / 2.0 - np.abs(points[:, 0])
        return both_clearances(beside, before_end)

    def scaled(self, factor: float) -> Log:
        """Similar log with every length multiplied."""
        require_factor(factor)
        return Log(
            length=self.length * factor,
            width=self.width * factor,
            height=self.height * factor,
            cross_section=self.cross_section,
            corner_radius=self.corner_radius * factor,
        )


def both_clearances(one: Floats, other: Floats) -> Floats:
    """Clearance from two walls that stand square to each other."""
    outside = np.hypot(np.minimum(one, 0.0), np.minimum(other, 0.0))
    return np.where((one < 0.0) | (other < 0.0), -outside, np.minimum(one, other))


def _profile(log: Log) -> Profile:
    """Return half of the cross-section."""
    if log.cross_section == "rounded":
        return rounded(log.width, log.height, log.corner_radius)
    draw = half_round if log.cross_section == "half-round" else round_topped
    return draw(log.width, log.height)


def _rectangle(length: float, low: float, high: float) -> Floats:
    """Return the corners of a rectangle about the middle of the length."""
    half = length / 2.0
    return np.array([(-half, low), (half, low), (half, high), (-half, high)])


def _drawn_out(around: Floats, x: Floats) -> Floats:
    """Repeat points (y, z) at every x."""
    across = np.tile(around, (len(x), 1))
    return np.column_stack([np.repeat(x, len(around)), across])
