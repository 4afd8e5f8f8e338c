"""How the wall of a vessel is painted."""

from __future__ import annotations

import numpy as np

from entremetry.publish.markup import element, path_data
from entremetry.publish.outline import refined
from entremetry.publish.stage import GLASS, Stage
from entremetry.shapes.solid import Floats


def glass(stage: Stage, unit: float) -> str:
    """Wall of the vessel and the light on it; `unit` is a unit of the drawing in mm."""
    marks: list[str] = []
    for outline in stage.cavity:
        inner = refined(opened(outline), closed=False)
        outer = inner + GLASS * thickened(inner)
        wall = np.concatenate([inner, outer[::-1]])
        marks.append(
            element(
                "path",
                d=path_data(wall),
                fill="#a9c4d0",
                fill_opacity=0.42,
                stroke="currentColor",
                stroke_opacity=0.55,
                stroke_width=0.8 * unit,
                stroke_linejoin="round",
            )
        )
        marks += glass_gleam(stage, unit, inner)
    return "".join(marks)


def glass_gleam(stage: Stage, unit: float, inner: Floats) -> list[str]:
    """Light along the left wall."""
    left = [
        (min(crossings), level)
        for level in np.linspace(0.08, 0.7, 12) * stage.height
        if (crossings := walls(inner, float(level)))
    ]
    data = path_data(np.array(left) + np.array([7.0 * unit, 0.0]), closed=False)
    return [
        element(
            "path",
            d=data,
            fill="none",
            stroke="#ffffff",
            stroke_opacity=0.45,
            stroke_width=3.0 * unit,
            stroke_linecap="round",
        )
    ]


def walls(line: Floats, level: float) -> list[float]:
    """Places where a line crosses a level."""
    return [
        float(x0 + (level - y0) * (x1 - x0) / (y1 - y0))
        for (x0, y0), (x1, y1) in zip(line[:-1], line[1:], strict=True)
        if min(y0, y1) <= level <= max(y0, y1) and y0 != y1
    ]


def opened(outline: Floats) -> Floats:
    """Outline of a vessel as an open line from one end of its rim to the other."""
    following = np.roll(outline, -1, axis=0)
    top = float(outline[:, 1].min()) + 0.01
    at_rim = (outline[:, 1] <= top) & (following[:, 1] <= top)
    spans = np.where(at_rim, np.abs(following[:, 0] - outline[:, 0]), -1.0)
    return np.roll(outline, -int(np.argmax(spans)) - 1, axis=0)


def thickened(inner: Floats) -> Floats:
    """Outward steps of a wall, thicker at the foot, level at the rim."""
    along = np.gradient(inner, axis=0)
    length = np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-12)
    normal = np.column_stack([-along[:, 1], along[:, 0]]) / length[:, np.newaxis]
    middle = inner.mean(axis=0)
    if float(np.sum(normal * (inner - middle))) < 0:
        normal = -normal
    foot = 1.0 + 0.6 * np.clip(normal[:, 1:2], 0.0, 1.0)
    step = normal * foot
    step[[0, -1]] = np.column_stack([np.sign(inner[[0, -1], 0]), [0.0, 0.0]])
    return step
