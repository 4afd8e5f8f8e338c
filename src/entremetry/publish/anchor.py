"""What the leader lines of a drawing point at: a visible point of every part."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from entremetry.publish.stage import Shape, Stage
from entremetry.shapes.solid import Floats

ACROSS, DOWN = 96, 64


@dataclass(frozen=True, slots=True)
class Anchor:
    """A point of a part that is seen, in mm, and the words for it."""

    component: str
    words: str
    x: float
    y: float


def anchors(stage: Stage, *, sideways: bool) -> tuple[Anchor, ...]:
    """One visible point for every part, far from other parts.

    For labels beside the drawing the points lie towards the right and are spread over its
    height; for labels below it over its left half, the lowest part leftmost.
    """
    grid, across, down = seen(stage)
    shown = [k for k in range(len(stage.shapes)) if (grid == k).any()]
    order = sorted(shown, key=lambda k: float(np.nonzero(grid == k)[0].mean()))
    found: list[Anchor] = []
    for rank, k in enumerate(order):
        share = (rank + 0.5) / len(order)
        pull = rightward(share) if sideways else leftward(share, shorter=bool(stage.hidden))
        row, column = best(grid == k, pull)
        part = stage.shapes[k].part
        found.append(Anchor(part.component, part.name, float(across[column]), float(down[row])))
    return tuple(found)


def rightward(share: float) -> Floats:
    """Preference for the right, at a share of the height."""
    x, y = np.linspace(-1.0, 1.0, ACROSS), np.linspace(0.0, 1.0, DOWN)
    return 0.7 * x[np.newaxis, :] - 1.5 * np.abs(y - share)[:, np.newaxis]


def leftward(share: float, *, shorter: bool) -> Floats:
    """Preference for a place in the left half, further left the lower the part."""
    x = np.linspace(0.0, 1.0, ACROSS)
    place = 0.06 + (0.36 if shorter else 0.46) * (1.0 - share)
    return np.tile(-6.0 * np.abs(x - place), (DOWN, 1))


def best(mask: NDArray[np.bool_], pull: Floats) -> tuple[int, int]:
    """Cell of the mask that lies deep inside it and far along the pull."""
    score = np.minimum(depth(mask), 5.0) / 5.0 + pull
    row, column = np.unravel_index(np.argmax(np.where(mask, score, -np.inf)), mask.shape)
    return int(row), int(column)


def depth(mask: NDArray[np.bool_]) -> Floats:
    """How many cells each cell lies from the edge of the mask, at most 6."""
    deep = np.zeros(mask.shape)
    core, framed = mask, np.zeros((mask.shape[0] + 2, mask.shape[1] + 2), dtype=bool)
    for _ in range(6):
        deep += core
        framed[1:-1, 1:-1] = core
        core = core & framed[:-2, 1:-1] & framed[2:, 1:-1] & framed[1:-1, :-2] & framed[1:-1, 2:]
        if not core.any():
            break
    return deep


def seen(stage: Stage) -> tuple[NDArray[np.int64], Floats, Floats]:
    """Index of the part that is seen in each cell, -1 where there is none; places in mm."""
    across = np.linspace(stage.left, stage.right, 2 * ACROSS + 1)[1::2]
    down = np.linspace(stage.top, stage.bottom, 2 * DOWN + 1)[1::2]
    hollow = inside(stage.cavity, across, down)
    grid = np.full(hollow.shape, -1, dtype=np.int64)
    for k, shape in enumerate(stage.shapes):
        grid[covered(shape, stage, across, down, hollow)] = k
    return grid, across, down


def covered(
    shape: Shape, stage: Stage, across: Floats, down: Floats, hollow: NDArray[np.bool_]
) -> NDArray[np.bool_]:
    """Cells that a part covers."""
    if shape.around:
        cell = max(float(across[1] - across[0]), float(down[1] - down[0]))
        reach = max(shape.part.thickness * 1e3, cell)
        above_rim = (down < stage.rim)[:, np.newaxis]
        return near(stage.cavity, across, down, reach) & ~hollow & above_rim
    own = inside(shape.outlines, across, down)
    return own & hollow if shape.inside else own


def inside(outlines: Iterable[Floats], across: Floats, down: Floats) -> NDArray[np.bool_]:
    """Cells inside closed outlines, by crossings of a ray."""
    result = np.zeros((len(down), len(across)), dtype=bool)
    for outline in outlines:
        for (x0, y0), (x1, y1) in sides(outline):
            rows = between(down, min(y0, y1), max(y0, y1))
            crossing = x0 + (down[rows] - y0) * (x1 - x0) / (y1 - y0) if y0 != y1 else down[:0]
            if len(crossing):
                result[rows] ^= across < crossing[:, np.newaxis]
    return result


def near(
    outlines: Iterable[Floats], across: Floats, down: Floats, reach: float
) -> NDArray[np.bool_]:
    """Cells no further than `reach` from closed outlines."""
    result = np.zeros((len(down), len(across)), dtype=bool)
    for outline in outlines:
        for (x0, y0), (x1, y1) in sides(outline):
            columns = between(across, min(x0, x1) - 1.01 * reach, max(x0, x1) + 1.01 * reach)
            rows = between(down, min(y0, y1) - 1.01 * reach, max(y0, y1) + 1.01 * reach)
            x, y = across[columns] - x0, (down[rows] - y0)[:, np.newaxis]
            run, rise = x1 - x0, y1 - y0
            along = np.clip((x * run + y * rise) / max(run * run + rise * rise, 1e-12), 0, 1)
            result[rows, columns] |= np.hypot(x - along * run, y - along * rise) <= reach
    return result


def between(places: Floats, low: float, high: float) -> slice:
    """Those of the rising places that lie from `low` on and below `high`."""
    first, last = np.searchsorted(places, (low, high))
    return slice(int(first), int(last))


def sides(outline: Floats) -> Iterator[tuple[list[float], list[float]]]:
    """Both ends of every side of a closed outline."""
    points = thinned(outline).tolist()
    return zip(points, [*points[1:], points[0]], strict=True)


def thinned(outline: Floats, most: int = 72) -> Floats:
    """Outline with at most about `most` points: enough to place a label."""
    return outline[:: max(1, len(outline) // most)]
