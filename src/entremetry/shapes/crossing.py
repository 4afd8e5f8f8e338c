"""Lines that cross themselves or one another."""

from __future__ import annotations

import numpy as np

from entremetry.shapes.solid import Flags, Floats, Wholes


def first_crossing(edges: Floats, closed_runs: tuple[int, ...]) -> tuple[int, int] | None:
    """Return the first two edges that cross or touch, neighbours in a run left aside.

    `edges` has shape (n, 2, 2); `closed_runs` gives how many edges each closed outline has,
    one after the other; edges beyond them form one open line.
    """
    after = _followers(len(edges), closed_runs)
    for first in range(len(edges) - 1):
        others = np.arange(first + 1, len(edges))
        neighbours = (after[first] == others) | (after[others] == first)
        meets = _meets(edges[first], edges[others])
        folded = _folds_back(edges[first], edges[others])
        found = np.flatnonzero(np.where(neighbours, folded, meets))
        if len(found):
            return first, int(others[found[0]])
    return None


def edges_of(outline: Floats) -> Floats:
    """Return the edges (n, 2, 2) of a closed outline."""
    return np.stack([outline, np.roll(outline, -1, axis=0)], axis=1)


def _followers(count: int, closed_runs: tuple[int, ...]) -> Wholes:
    """Return for each edge the number of the edge that follows it; -1 for none."""
    after = np.arange(1, count + 1)
    start = 0
    for run in closed_runs:
        after[start + run - 1] = start
        start += run
    after[after >= count] = -1
    return after


def _side(start: Floats, end: Floats, point: Floats) -> Floats:
    """Return on which side of a line points lie: 1, 0 or -1."""
    turn = (end[..., 0] - start[..., 0]) * (point[..., 1] - start[..., 1])
    turn = turn - (end[..., 1] - start[..., 1]) * (point[..., 0] - start[..., 0])
    side: Floats = np.sign(turn)
    return side


def _meets(edge: Floats, others: Floats) -> Flags:
    """Tell which edges share a point with an edge."""
    a, b = _side(edge[0], edge[1], others[:, 0]), _side(edge[0], edge[1], others[:, 1])
    c = _side(others[:, 0], others[:, 1], edge[0])
    d = _side(others[:, 0], others[:, 1], edge[1])
    low = np.maximum(edge.min(axis=0), others.min(axis=1))
    high = np.minimum(edge.max(axis=0), others.max(axis=1))
    meets: Flags = (a * b <= 0) & (c * d <= 0) & np.all(low <= high, axis=1)
    return meets


def _folds_back(edge: Floats, others: Floats) -> Flags:
    """Tell which neighbouring edges run back over an edge."""
    run, other = edge[1] - edge[0], others[:, 1] - others[:, 0]
    turn = run[0] * other[:, 1] - run[1] * other[:, 0]
    folds: Flags = (turn == 0.0) & (other @ run < 0.0)
    return folds
