"""Discs in rows: grids and staggered rows, stretched to the length of the sheet."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from entremetry.shapes.solid import Floats

ROUNDING = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows:
    """Rows of discs of a diameter; every second row is shifted and may hold fewer discs."""

    pattern: Literal["grid", "staggered"]
    diameter: float
    rows: int
    in_first: int
    in_second: int
    pitch: float
    shift: float
    step: float
    across: bool = False

    @property
    def count(self) -> int:
        """Number of discs."""
        return (self.rows + 1) // 2 * self.in_first + self.rows // 2 * self.in_second

    def centres(self) -> Floats:
        """Centres of the discs, from the corner of the sheet. (count, 2) [m]"""
        found = np.array([self._centre(*place) for place in self._places()]).reshape(-1, 2)
        return found[:, ::-1] if self.across else found

    def crosswise(self) -> Rows:
        """The same rows across the sheet instead of along it."""
        return replace(self, across=True)

    def _places(self) -> list[tuple[int, int]]:
        """Row and place in the row of every disc."""
        held = (self.in_first, self.in_second)
        return [(row, place) for row in range(self.rows) for place in range(held[row % 2])]

    def _centre(self, row: int, place: int) -> tuple[float, float]:
        """Centre of one disc. [m]"""
        along = place * self.pitch + row % 2 * self.shift
        return along + self.diameter / 2.0, row * self.step + self.diameter / 2.0


def fitting(room: float, step: float) -> int:
    """Return how many steps go into a room, a little rounding forgiven."""
    return max(math.floor(room / step + ROUNDING), 0)


def grid_rows(d: float, length: float, width: float) -> Rows:
    """Return a square grid of discs."""
    held = fitting(length, d)
    return Rows(
        pattern="grid",
        diameter=d,
        rows=fitting(width, d) if held else 0,
        in_first=held,
        in_second=held,
        pitch=d,
        shift=0.0,
        step=d,
    )


def staggered_rows(d: float, length: float, width: float) -> list[Rows]:
    """Return the staggered rows worth trying: equal rows, and rows with one disc fewer."""
    full = fitting(length, d)
    if not full or not fitting(width, d):
        return []
    room = max(length - d, 0.0)
    return [
        rows
        for held in (full, full - 1)
        if held
        for rows in (_equal(d, room, width, held), _alternating(d, room, width, held))
    ]


def _equal(d: float, room: float, width: float, held: int) -> Rows:
    """Rows that hold equally many, shifted by half a pitch or by what room is left."""
    pitch = max(d, room / (held - 0.5))
    shift = max(room - (held - 1) * pitch, 0.0)
    if held == 1:
        pitch, shift = 2.0 * max(room, d), room
    return _stacked(d, width, (held, held), pitch, shift)


def _alternating(d: float, room: float, width: float, held: int) -> Rows:
    """Rows that hold one disc fewer every second time, in the gaps of the full rows."""
    pitch = room / (held - 1) if held > 1 else d
    return _stacked(d, width, (held, held - 1), pitch, pitch / 2.0)


def _stacked(d: float, width: float, held: tuple[int, int], pitch: float, shift: float) -> Rows:
    """Stack rows as close as discs of neighbouring rows, and of every second row, allow."""
    beside = min(shift, pitch - shift)
    step = max(math.sqrt(max(d * d - beside * beside, 0.0)), d / 2.0)
    return Rows(
        pattern="staggered",
        diameter=d,
        rows=1 + fitting(width - d, step),
        in_first=held[0],
        in_second=held[1],
        pitch=pitch,
        shift=shift,
        step=step,
    )
