"""Pieces cut out of a sheet or a frame: how many, where, and how many there can be at most."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.dimension import require_between, require_length
from entremetry.shapes.disc_rows import Rows, grid_rows, staggered_rows
from entremetry.shapes.rectangle_blocks import Block, best_blocks, usable
from entremetry.shapes.solid import Floats
from entremetry.words import say, say_later

ROUNDING = 1e-9
"""Share of a piece by which a sheet may be short through rounding alone."""

MOST_PIECES = 100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """Pieces out of a sheet.

    `positions` are the centres, from the sheet's corner, shape (count, 2) [m]; `turned` tells
    which pieces lie with their length across the sheet; `at_most` is a bound that no
    arrangement can beat.
    """

    count: int
    pattern: Literal["grid", "staggered", "mixed"]
    positions: Floats
    at_most: int
    turned: tuple[bool, ...] = ()


def discs_in_rectangle(diameter: float, length: float, width: float, gap: float = 0.0) -> Cutting:
    """Return the discs to cut from a sheet, in rows: a grid or staggered, either way round.

    Parameters
    ----------
    diameter : float
        Diameter of a disc. [m]
    length, width : float
        Sides of the sheet. [m]
    gap : float
        Least distance between discs; none is kept to the edge of the sheet. [m]

    Notes
    -----
    Discs a gap apart in a sheet lie like discs wider by the gap in a sheet longer and wider
    by the gap. Rows use the whole sheet: the pitch along a staggered row is stretched, which
    lets the rows move closer together.
    """
    _require_sheet(length, width, gap)
    require_length(say_later("diameter of the disc"), diameter)
    d, sheet = diameter + gap, (length + gap, width + gap)
    at_most = most_discs(d, *sheet)
    _require_few(at_most)
    best = max(_rows_both_ways(d, *sheet), key=lambda rows: rows.count)
    return Cutting(
        count=best.count,
        pattern=best.pattern,
        positions=best.centres() - gap / 2.0,
        at_most=at_most,
    )


def most_discs(diameter: float, length: float, width: float) -> int:
    """Return a number of discs that a rectangle cannot exceed.

    Groemer's inequality, in Oler's form: points at least 1 apart in a convex set of area A
    and perimeter P number at most 2 A / sqrt(3) + P / 2 + 1; here the centres, in a rectangle
    shorter and narrower than the sheet by one diameter.

    References
    ----------
    groemer_1960, oler_1961.
    """
    long, wide = length / diameter - 1.0, width / diameter - 1.0
    if min(long, wide) < -ROUNDING:
        return 0
    long, wide = max(long, 0.0), max(wide, 0.0)
    return math.floor(2.0 / math.sqrt(3.0) * long * wide + long + wide + 1.0 + ROUNDING)


def rectangles_in_rectangle(
    piece_length: float, piece_width: float, length: float, width: float, gap: float = 0.0
) -> Cutting:
    """Return the rectangles to cut from a sheet with through cuts.

    Lengthwise, crosswise, or lengthwise in one part of the sheet and crosswise in the other.
    `at_most` compares areas after each side of the sheet is shortened to the longest row of
    pieces, lengthwise and crosswise, that it can hold.

    References
    ----------
    herz_1972 (only rows of whole pieces matter).
    """
    _require_sheet(length, width, gap)
    require_length(say_later("length of the piece"), piece_length)
    require_length(say_later("width of the piece"), piece_width)
    piece, sheet = (piece_length + gap, piece_width + gap), (length + gap, width + gap)
    used = usable(sheet[0], piece) * usable(sheet[1], piece)
    at_most = math.floor(used / (piece[0] * piece[1]) * (1.0 + ROUNDING))
    _require_few(at_most)
    return _cut(best_blocks(piece, sheet), at_most, gap)


def bars_in_frame(
    length: float, width: float, piece_length: float, piece_width: float, trim: float = 0.0
) -> Cutting:
    """Return the bars cut from a frame after a trim is taken off all four sides.

    All bars lie alike, lengthwise or crosswise, so every cut goes through; positions are
    measured from the frame's corner before trimming.
    Raises OutsideRange if the trim leaves nothing.
    """
    _require_sheet(length, width, 0.0)
    require_length(say_later("length of the piece"), piece_length)
    require_length(say_later("width of the piece"), piece_width)
    half = min(length, width) / 2.0
    require_between(
        say_later("trim"), trim, 0.0, half, say_later("half the shorter side of the frame")
    )
    piece, sheet = (piece_length, piece_width), (length - 2.0 * trim, width - 2.0 * trim)
    at_most = math.floor(sheet[0] * sheet[1] / (piece_length * piece_width) * (1.0 + ROUNDING))
    _require_few(at_most)
    blocks = [Block.filling((0.0, 0.0), sheet, piece, turned=turned) for turned in (False, True)]
    return _cut((max(blocks, key=lambda block: block.count),), at_most, -2.0 * trim)


def _require_sheet(length: float, width: float, gap: float) -> None:
    """Raise OutsideRange unless sheet and gap can be."""
    require_length(say_later("length of the sheet"), length)
    require_length(say_later("width of the sheet"), width)
    require_between(say_later("gap between pieces"), gap, 0.0, 1.0, say_later("a gap, not a sheet"))


def _require_few(count: int) -> None:
    """Raise OutsideRange if pieces are too many to list."""
    if count > MOST_PIECES:
        raise OutsideRange(
            say(
                "pieces from one sheet: about {count}; accepted: up to {most}",
                count=count,
                most=MOST_PIECES,
            )
        )


def _rows_both_ways(d: float, length: float, width: float) -> list[Rows]:
    """Return every arrangement in rows, along the sheet and across it."""
    along = [grid_rows(d, length, width), *staggered_rows(d, length, width)]
    across = [grid_rows(d, width, length), *staggered_rows(d, width, length)]
    return along + [rows.crosswise() for rows in across]


def _cut(blocks: tuple[Block, ...], at_most: int, gap: float) -> Cutting:
    """Return the pieces of blocks of rows, taken back to the sheet without gaps."""
    turned = tuple(block.turned for block in blocks for _ in range(block.count))
    return Cutting(
        count=sum(block.count for block in blocks),
        pattern="mixed" if len(set(turned)) > 1 else "grid",
        positions=np.concatenate([block.centres() for block in blocks]) - gap / 2.0,
        at_most=at_most,
        turned=turned,
    )
