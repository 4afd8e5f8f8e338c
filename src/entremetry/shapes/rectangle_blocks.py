"""Rectangles in blocks of rows, as a knife cuts them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.shapes.disc_rows import fitting
from entremetry.shapes.solid import Floats

Sides = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Rows of rectangles that all lie alike, from a corner on."""

    corner: Sides
    piece: Sides
    columns: int
    rows: int
    turned: bool

    @classmethod
    def filling(cls, corner: Sides, sheet: Sides, piece: Sides, *, turned: bool) -> Block:
        """Return as many pieces as a rectangular part of the sheet holds."""
        laid = (piece[1], piece[0]) if turned else piece
        return cls(
            corner=corner,
            piece=laid,
            columns=fitting(sheet[0], laid[0]),
            rows=fitting(sheet[1], laid[1]),
            turned=turned,
        )

    @property
    def count(self) -> int:
        """Number of pieces."""
        return self.columns * self.rows

    def centres(self) -> Floats:
        """Centres of the pieces. (count, 2) [m]"""
        x = self.corner[0] + (np.arange(self.columns) + 0.5) * self.piece[0]
        y = self.corner[1] + (np.arange(self.rows) + 0.5) * self.piece[1]
        return np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)


def usable(side: float, piece: Sides) -> float:
    """Return the longest row of whole pieces, lengthwise and crosswise, within a side. [m]"""
    lengthwise = range(fitting(side, piece[0]) + 1)
    return max(
        count * piece[0] + fitting(side - count * piece[0], piece[1]) * piece[1]
        for count in lengthwise
    )


def best_blocks(piece: Sides, sheet: Sides) -> tuple[Block, ...]:
    """Return one block, or two that lie differently, that hold the most pieces."""
    plain = [(Block.filling((0.0, 0.0), sheet, piece, turned=way),) for way in (False, True)]
    mixed = [
        blocks
        for way in (False, True)
        for axis in (0, 1)
        for blocks in _splits(piece, sheet, way, axis)
    ]
    return max([*plain, *mixed], key=lambda blocks: sum(block.count for block in blocks))


def _splits(piece: Sides, sheet: Sides, turned: bool, axis: int) -> list[tuple[Block, Block]]:
    """Cut the sheet once, after each whole number of pieces, and fill the rest the other way."""
    step = piece[axis] if not turned else piece[1 - axis]
    cuts = [count * step for count in range(1, fitting(sheet[axis], step) + 1)]
    return [_two_blocks(piece, sheet, turned, axis, cut) for cut in cuts]


def _two_blocks(
    piece: Sides, sheet: Sides, turned: bool, axis: int, cut: float
) -> tuple[Block, Block]:
    """Fill the part before a cut one way and the part behind it the other way."""
    cut = min(cut, sheet[axis])
    before, behind, corner = list(sheet), list(sheet), [0.0, 0.0]
    before[axis], behind[axis], corner[axis] = cut, sheet[axis] - cut, cut
    return (
        Block.filling((0.0, 0.0), (before[0], before[1]), piece, turned=turned),
        Block.filling((corner[0], corner[1]), (behind[0], behind[1]), piece, turned=not turned),
    )
