"""The section of a body: its outline with named faces, and the regions inside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.material import Material

GREATEST = 1e3  # m


@dataclass(frozen=True, slots=True)
class Outline:
    """Closed outline in (across, level), and the face that each edge belongs to. [m]

    Edge i runs from point i to the next; the first point is not repeated. The outline may be
    given in either sense and must not cross itself. `across` is the radius of a round body.
    """

    points: Floats
    faces: tuple[str, ...]

    def __post_init__(self) -> None:
        if self.points.ndim != 2 or self.points.shape[1] != 2 or len(self.points) < 3:
            raise OutsideRange("an outline needs three points (across, level) or more")
        if not np.all(np.abs(self.points) < GREATEST) or len(self.faces) != len(self.points):
            raise OutsideRange("an outline needs points within 1 km and one face name per edge")
        if abs(_signed_area(self.points)) < 1e-12:
            raise OutsideRange("an outline encloses an area")

    @property
    def anticlockwise(self) -> Outline:
        """The same outline with its inside on the left of each edge."""
        if _signed_area(self.points) > 0.0:
            return self
        turned = np.ascontiguousarray(self.points[::-1])
        return Outline(turned, (*self.faces[-2::-1], self.faces[-1]))


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """A part of the section filled with one material, inside the body or inside another region.

    `inside` names the region that it is cut out of; None is the body. Only watched regions count
    for the warmest, the coldest and the mean temperature.
    """

    name: str
    material: Material
    points: Floats
    inside: str | None = None
    watched: bool = True

    def __post_init__(self) -> None:
        Outline(self.points, ("",) * len(self.points))


def outline(*pieces: tuple[str, Sequence[tuple[float, float]] | Floats]) -> Outline:
    """Join named pieces, each a run of points, end to start, into one outline.

    Each piece is (face, points); the last point of a piece is the first of the next one.

    Raises
    ------
    OutsideRange
        If a piece does not begin where the one before ends.
    """
    points: list[Floats] = []
    faces: list[str] = []
    arrays = [(face, np.asarray(run, dtype=float).reshape(-1, 2)) for face, run in pieces]
    for (_, run), (face, following) in zip(arrays, arrays[1:] + arrays[:1], strict=True):
        if np.max(np.abs(run[-1] - following[0])) > 1e-9:
            raise OutsideRange(
                f"face {face} begins at {following[0]}, the one before ends at {run[-1]}"
            )
    for face, run in arrays:
        points.extend(run[:-1])
        faces.extend([face] * (len(run) - 1))
    return Outline(np.array(points), tuple(faces))


def arc(
    centre: tuple[float, float], radius: float, begin: float, end: float, pieces: int = 240
) -> Floats:
    """Points on a circle from one angle to another [rad], joined by chords.

    With 240 pieces to the quarter the chords enclose 7 millionths less than the circle.
    """
    if not (np.isfinite([*centre, begin, end]).all() and 0.0 < radius < GREATEST and pieces > 0):
        raise OutsideRange(f"an arc of radius {radius} m from {begin} to {end} is none")
    angles = np.linspace(begin, end, pieces + 1)
    across, level = np.cos(angles), np.sin(angles)
    across[np.abs(across) < 1e-12] = 0.0
    level[np.abs(level) < 1e-12] = 0.0
    return np.column_stack([centre[0] + radius * across, centre[1] + radius * level])


def rectangle(left: float, bottom: float, right: float, top: float) -> Floats:
    """Four corners, anticlockwise. [m]"""
    return np.array([[left, bottom], [right, bottom], [right, top], [left, top]])


def _signed_area(points: Floats) -> float:
    x, z = points[:, 0], points[:, 1]
    return float(0.5 * np.sum(x * np.roll(z, -1) - np.roll(x, -1) * z))
