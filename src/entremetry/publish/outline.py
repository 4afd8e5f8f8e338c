"""Outlines as points: extents, rectangles, shortening, refining."""

from __future__ import annotations

import numpy as np

from entremetry.shapes.solid import Floats


def extent(outlines: tuple[Floats, ...]) -> tuple[float, float]:
    """Leftmost and rightmost place."""
    points = np.concatenate(outlines)
    return float(points[:, 0].min()), float(points[:, 0].max())


def rectangle(left: float, right: float, low: float, high: float) -> Floats:
    """Rectangle between two places across [mm] and two levels [m], in m."""
    a, b = left * 1e-3, right * 1e-3
    return np.array([[a, low], [b, low], [b, high], [a, high]])


def shortened(outline: Floats, hidden: float) -> Floats:
    """Outline with the middle of its width left out."""
    across = outline[:, 0]
    moved = np.sign(across) * np.maximum(np.abs(across) - hidden / 2.0, 0.0)
    return np.column_stack([moved, outline[:, 1]])


def morsel(place: float, top: float, size: float, turn: int) -> Floats:
    """A pebble that lies on the level `top`."""
    angles = np.linspace(0.0, 2.0 * np.pi, 9, endpoint=False) + 0.5 * turn
    reach = size * (1.0 + 0.16 * np.cos(3.0 * angles + turn))
    return np.column_stack(
        [place + reach * np.cos(angles), top - 0.8 * size + 0.85 * reach * np.sin(angles)]
    )


def film_on_top(cavity: tuple[Floats, ...], top: float, film: float) -> tuple[Floats, ...]:
    """Film of a coating on each part of the cavity, from wall to wall."""
    return tuple(
        np.array([[left, top - film], [right, top - film], [right, top], [left, top]])
        for left, right in (extent((outline,)) for outline in cavity)
    )


def refined(outline: Floats, step: float = 1.0, *, closed: bool = True) -> Floats:
    """Outline with points at most about `step` mm apart."""
    ends = np.roll(outline, -1, axis=0)
    pairs = list(zip(outline, ends, strict=True))[: None if closed else -1]
    pieces = [] if closed else [outline[-1:]]
    for start, end in reversed(pairs):
        count = max(1, int(np.hypot(*(end - start)) / step))
        share = np.arange(count)[:, np.newaxis] / count
        pieces.append(start + share * (end - start))
    return np.concatenate(pieces[::-1])
