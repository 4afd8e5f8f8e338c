"""The profile of a wall in a half-plane: what bodies of revolution and logs are made from."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.shapes.piece import Piece
from entremetry.shapes.solid import Flags, Floats


@dataclass(frozen=True, slots=True)
class Profile:
    """A chain of pieces along the wall, from the axis (or an inner rim) to the outer rim.

    It starts on the axis at the closed end, or at the inner rim of a ring; it lies at levels
    0 to `height` and leaves the opening out. Rising pieces bound the body outside, falling
    pieces inside, so signed sums over the pieces give areas and volumes below any level.
    """

    pieces: tuple[Piece, ...]
    height: float

    def square_below(self, level: float) -> float:
        """Integral of outer minus inner u squared over z; times pi, a volume. [m3]"""
        return sum(_direction(piece) * piece.square_below(level) for piece in self.pieces)

    def area_below(self, level: float) -> float:
        """Integral of outer minus inner u over z: half the area of a log's section. [m2]"""
        return sum(_direction(piece) * piece.area_below(level) for piece in self.pieces)

    @property
    def path_length(self) -> float:
        """Length of the wall line. [m]"""
        return sum(piece.path_length for piece in self.pieces)

    @property
    def path_moment(self) -> float:
        """Integral of u along the wall line. [m2]"""
        return sum(piece.path_moment for piece in self.pieces)

    @property
    def widest(self) -> float:
        """Greatest distance from the axis. [m]"""
        return float(max(self.drawn()[:, 0]))

    def crossings(self, level: float) -> tuple[float, ...]:
        """Distances from the axis at which a level cuts the wall, outermost first. [m]"""
        found = [
            float(piece.distance_at(np.array(level)))
            for piece in self.pieces
            if _direction(piece) and _cuts(piece, level)
        ]
        return tuple(sorted(found, reverse=True))

    def rim(self) -> tuple[float, ...]:
        """Distances of the rims from the axis, outermost first; none if closed. [m]"""
        found = self.crossings(self.height)
        return found if max(found) > 1e-12 * self.height else ()

    def clearance(self, u: Floats, z: Floats) -> Floats:
        """Distance of points from the wall, continued straight up; negative outside. [m]"""
        nearest = np.full(np.broadcast(u, z).shape, np.inf)
        for piece in self.pieces:
            nearest = np.minimum(nearest, piece.nearest(u, z))
        for rim in self.rim():
            beside = np.hypot(u - rim, np.minimum(z - self.height, 0.0))
            nearest = np.minimum(nearest, beside)
        return np.where(self._holds(u, z), nearest, -nearest)

    def _holds(self, u: Floats, z: Floats) -> Flags:
        """Tell which points lie inside, by counting the wall to their right."""
        level = np.minimum(z, self.height)
        inside = np.zeros(np.broadcast(u, z).shape, dtype=bool)
        for piece in self.pieces:
            low, high = _levels(piece)
            if high > low:
                beside = (level > low) & (level <= high)
                wall = piece.distance_at(np.clip(level, low, high))
                inside ^= beside & (wall > u)
        return inside

    def points(self, spacing: float) -> Floats:
        """Points along the wall line, at most `spacing` apart. (n, 2) [m]"""
        return _joined([piece.points(spacing) for piece in self.pieces])

    def drawn(self) -> Floats:
        """Points along the wall line, close enough to draw it. (n, 2) [m]"""
        return _joined([piece.drawn() for piece in self.pieces])

    def scaled(self, factor: float) -> Profile:
        """Similar profile, every length multiplied."""
        pieces = tuple(piece.scaled(factor) for piece in self.pieces)
        return Profile(pieces, self.height * factor)


def _direction(piece: Piece) -> int:
    """1 if the piece rises, -1 if it falls, 0 if it is level."""
    rise = piece.end[1] - piece.start[1]
    return (rise > 0.0) - (rise < 0.0)


def _levels(piece: Piece) -> tuple[float, float]:
    """Lower and upper level of a piece."""
    return min(piece.start[1], piece.end[1]), max(piece.start[1], piece.end[1])


def _cuts(piece: Piece, level: float) -> bool:
    """Tell whether a level cuts a piece; an end shared by two pieces counts once."""
    low, high = _levels(piece)
    return low < level <= high if level > 0.0 else low <= level < high


def _joined(parts: list[Floats]) -> Floats:
    """Join point lists end to start, the shared point once."""
    return np.concatenate([parts[0], *(part[1:] for part in parts[1:])])
