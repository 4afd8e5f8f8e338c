"""Closed lines around all places of a grid where a value is reached."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np

from entremetry.shapes import Floats

Edge: TypeAlias = tuple[int, int, int]  # row and column of a node, and 0: to the right, 1: down
FAR = 1e6  # how much lower than the level the rim around the grid is taken
# For each pattern of corners that reach the level (1 upper left, 2 upper right, 4 lower right,
# 8 lower left): from which side to which side a line runs, the places that reach it on its right.
UP, RIGHT, DOWN, LEFT = range(4)
RUNS: tuple[tuple[tuple[int, int], ...], ...] = (
    (),
    ((LEFT, UP),),
    ((UP, RIGHT),),
    ((LEFT, RIGHT),),
    ((RIGHT, DOWN),),
    ((LEFT, UP), (RIGHT, DOWN)),
    ((UP, DOWN),),
    ((LEFT, DOWN),),
    ((DOWN, LEFT),),
    ((DOWN, UP),),
    ((UP, RIGHT), (DOWN, LEFT)),
    ((DOWN, RIGHT),),
    ((RIGHT, LEFT),),
    ((RIGHT, UP),),
    ((UP, LEFT),),
    (),
)


def closed_lines(across: Floats, down: Floats, values: Floats, level: float) -> tuple[Floats, ...]:
    """Lines around all places at or above a level, as outlines (n, 2).

    `values` has the shape (down, across) and no gaps. Where the region meets the rim of the grid,
    its line runs along the rim.
    """
    reached = np.pad(values, 1, constant_values=level - FAR)
    columns, rows = _widened(across), _widened(down)
    following: dict[Edge, Edge] = {}
    corners = (reached >= level).astype(int)
    patterns = corners[:-1, :-1] + 2 * corners[:-1, 1:] + 4 * corners[1:, 1:] + 8 * corners[1:, :-1]
    for row, column in np.argwhere((patterns > 0) & (patterns < 15)):
        for first, last in RUNS[patterns[row, column]]:
            start, end = (_edge(int(row), int(column), side) for side in (first, last))
            following[start] = end
    return tuple(
        np.array([_crossing(edge, columns, rows, reached, level) for edge in ring])
        for ring in _rings(following)
    )


def _widened(places: Floats) -> Floats:
    """Places with one more at each end, a hair outside."""
    hair = 1e-6 * (places[-1] - places[0] + 1e-9)
    return np.concatenate([[places[0] - hair], places, [places[-1] + hair]])


def _edge(row: int, column: int, side: int) -> Edge:
    if side == UP:
        return row, column, 0
    if side == DOWN:
        return row + 1, column, 0
    return (row, column, 1) if side == LEFT else (row, column + 1, 1)


def _rings(following: dict[Edge, Edge]) -> list[list[Edge]]:
    """Each closed way through the edges."""
    rings = []
    while following:
        start, edge = following.popitem()
        ring = [start]
        while edge != start:
            ring.append(edge)
            edge = following.pop(edge)
        rings.append(ring)
    return rings


def _crossing(
    edge: Edge, columns: Floats, rows: Floats, values: Floats, level: float
) -> tuple[float, float]:
    row, column, downward = edge
    other = (row + downward, column + 1 - downward)
    here, there = values[row, column], values[other]
    share = float((level - here) / (there - here))
    x = columns[column] + share * (columns[other[1]] - columns[column])
    y = rows[row] + share * (rows[other[0]] - rows[row])
    return float(x), float(y)
