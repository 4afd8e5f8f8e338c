"""What the leader lines of a drawing point at: a visible point of every part."""

from __future__ import annotations

from collections.abc import Iterable
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
    inner = np.pad(mask, 1)
    for _ in range(6):
        deep += inner[1:-1, 1:-1]
        core = inner[1:-1, 1:-1]
        kept = core & inner[:-2, 1:-1] & inner[2:, 1:-1] & inner[1:-1, :-2] & inner[1:-1, 2:]
        inner = np.pad(kept, 1)
    return deep


def seen(stage: Stage) -> tuple[NDArray[np.int64], Floats, Floats]:
    """Index of the part that is seen in each cell, -1 where there is none; places in mm."""
    across = np.linspace(stage.left, stage.right, 2 * ACROSS + 1)[1::2]
    down = np.linspace(stage.top, stage.bottom, 2 * DOWN + 1)[1::2]
    x, y = np.meshgrid(across, down)
    hollow = inside(stage.cavity, x, y)
    grid = np.full(x.shape, -1, dtype=np.int64)
    for k, shape in enumerate(stage.shapes):
        grid[covered(shape, stage, x, y, hollow)] = k
    return grid, across, down


def covered(
    shape: Shape, stage: Stage, x: Floats, y: Floats, hollow: NDArray[np.bool_]
) -> NDArray[np.bool_]:
    """Cells that a part covers."""
    if shape.around:
        cell = max(float(x[0, 1] - x[0, 0]), float(y[1, 0] - y[0, 0]))
        reach = max(shape.part.thickness * 1e3, cell)
        return near(stage.cavity, x, y, reach) & ~hollow & (y < stage.rim)
    own = inside(shape.outlines, x, y)
    return own & hollow if shape.inside else own


def inside(outlines: Iterable[Floats], x: Floats, y: Floats) -> NDArray[np.bool_]:
    """Cells inside closed outlines, by crossings of a ray."""
    result = np.zeros(x.shape, dtype=bool)
    for outline in outlines:
        points = thinned(outline)
        for (x0, y0), (x1, y1) in zip(points, np.roll(points, -1, axis=0), strict=True):
            if y0 != y1:
                crossing = x0 + (y - y0) * (x1 - x0) / (y1 - y0)
                result ^= ((y0 > y) != (y1 > y)) & (x < crossing)
    return result


def near(outlines: Iterable[Floats], x: Floats, y: Floats, reach: float) -> NDArray[np.bool_]:
    """Cells no further than `reach` from closed outlines."""
    least = np.full(x.shape, np.inf)
    for outline in outlines:
        points = thinned(outline)
        for start, end in zip(points, np.roll(points, -1, axis=0), strict=True):
            run = end - start
            length = max(float(run @ run), 1e-12)
            along = np.clip(((x - start[0]) * run[0] + (y - start[1]) * run[1]) / length, 0, 1)
            gap = np.hypot(x - start[0] - along * run[0], y - start[1] - along * run[1])
            least = np.minimum(least, gap)
    return least <= reach


def thinned(outline: Floats, most: int = 72) -> Floats:
    """Outline with at most about `most` points: enough to place a label."""
    return outline[:: max(1, len(outline) // most)]
