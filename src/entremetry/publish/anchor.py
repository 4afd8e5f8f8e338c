"""What the leader lines of a drawing point at: a visible point of every part."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from entremetry.dessert.batch_sheet import Position
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

    Points lie towards the right for labels beside the drawing, and are spread over the left
    half, the lowest part leftmost, for labels below it.
    """
    grid, across, down = seen(stage)
    found: list[Anchor] = []
    shown = [k for k in range(len(stage.shapes)) if (grid == k).any()]
    order = sorted(shown, key=lambda k: float(np.nonzero(grid == k)[0].mean()))
    for rank, k in enumerate(order):
        mask = grid == k
        pull = across / max(abs(stage.right), 1e-9)
        if not sideways:
            wish = 0.08 + (0.36 if stage.hidden else 0.42) * (len(order) - 1 - rank) / max(
                len(order) - 1, 1
            )
            place = stage.left + wish * (stage.right - stage.left)
            pull = -6.0 * np.abs(across - place) / (stage.right - stage.left)
        row, column = best(mask, depth(mask), pull)
        part = stage.shapes[k].part
        found.append(Anchor(part.component, part.name, float(across[column]), float(down[row])))
    return tuple(found)


def best(mask: NDArray[np.bool_], deep: Floats, pull: Floats) -> tuple[int, int]:
    """Cell of the mask that lies deepest and furthest along the pull."""
    score = np.minimum(deep, 5.0) / 5.0 + pull[np.newaxis, :]
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
    position = shape.part.position
    if position is Position.COATING:
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
