"""Closed outlines in a plane: drawing, measuring and distances."""

from __future__ import annotations

import math

import numpy as np

from entremetry.shapes.dimension import CHORD_ERROR
from entremetry.shapes.solid import Floats


def drawn_steps(radius: float) -> int:
    """Return into how many chords a quarter circle is drawn."""
    if radius <= 0.0:
        return 1
    step = 2.0 * math.acos(1.0 - min(CHORD_ERROR, 0.01 * radius) / radius)
    return math.ceil(0.5 * math.pi / step)


def circle(radius: float) -> Floats:
    """Return points around a circle, counter-clockwise. (n, 2) [m]"""
    return ellipse(radius, radius)


def ellipse(half_length: float, half_width: float) -> Floats:
    """Return points around an ellipse, counter-clockwise. (n, 2) [m]"""
    count = 4 * drawn_steps(max(half_length, half_width) ** 2 / min(half_length, half_width))
    angles = np.arange(count) * (2.0 * math.pi / count)
    return np.stack([half_length * np.cos(angles), half_width * np.sin(angles)], axis=-1)


def rounded_rectangle(
    length: float, width: float, radius: float, spacing: float = math.inf
) -> Floats:
    """Return points around a rectangle with rounded corners, counter-clockwise. (n, 2) [m]

    Points on the corners are close enough to draw them, and at most `spacing` apart.
    """
    steps = max(drawn_steps(radius), math.ceil(0.5 * math.pi * radius / spacing))
    corners = []
    for turn, (x, y) in enumerate([(1, 1), (-1, 1), (-1, -1), (1, -1)]):
        centre = (x * (length / 2.0 - radius), y * (width / 2.0 - radius))
        start = 0.5 * math.pi * turn
        angles = start + np.linspace(0.0, 0.5 * math.pi, steps + 1 if radius > 0.0 else 1)
        corners.append(centre + radius * np.stack([np.cos(angles), np.sin(angles)], axis=-1))
    return without_repeats(np.concatenate(corners))


def without_repeats(outline: Floats) -> Floats:
    """Return an outline without points that repeat the one before, but for rounding."""
    near = 1e-8 * float(np.max(np.ptp(outline, axis=0)))
    moved = np.max(np.abs(outline - np.roll(outline, 1, axis=0)), axis=1) > near
    return outline[moved] if moved.any() else outline[:1]


def enclosed_area(outline: Floats) -> float:
    """Return the signed area of a polygon; positive if counter-clockwise. [m2]"""
    x, y = (outline - outline[0]).T
    return 0.5 * float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))


def perimeter(outline: Floats) -> float:
    """Return the length of a closed outline. [m]"""
    return float(np.sum(np.linalg.norm(np.roll(outline, -1, axis=0) - outline, axis=1)))


def along(outline: Floats, spacing: float) -> Floats:
    """Return points along a closed outline, corners included, at most `spacing` apart. [m]"""
    found = []
    for start, end in zip(outline, np.roll(outline, -1, axis=0), strict=True):
        count = max(1, math.ceil(float(np.linalg.norm(end - start)) / spacing - 1e-9))
        found.append(np.linspace(start, end, count, endpoint=False))
    return np.concatenate(found)


def grid_over(outlines: tuple[Floats, ...], spacing: float) -> Floats:
    """Return points of a square grid that lie inside outlines (outer, then holes). [m]"""
    low, high = outlines[0].min(axis=0), outlines[0].max(axis=0)
    counts = np.maximum(np.ceil((high - low) / spacing).astype(int), 1)
    x, y = (np.linspace(low[i], high[i], counts[i] + 1) for i in (0, 1))
    grid = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)
    return grid[signed_distance(grid, outlines) > 0.0]


def signed_distance(points: Floats, outlines: tuple[Floats, ...]) -> Floats:
    """Return the distance of points (n, 2) from the outlines; positive inside. [m]"""
    edges = np.concatenate([np.stack([o, np.roll(o, -1, axis=0)], axis=1) for o in outlines])
    block = max(1, 2_000_000 // len(edges))
    parts = [
        _signed_distance(points[first : first + block], edges)
        for first in range(0, len(points), block)
    ]
    return np.concatenate(parts) if parts else np.zeros(0)


def _signed_distance(points: Floats, edges: Floats) -> Floats:
    """Distance to the nearest edge, signed by the number of edges to the right."""
    start, run = edges[:, 0], edges[:, 1] - edges[:, 0]
    away = points[:, None, :] - start
    share = np.sum(away * run, axis=2) / np.maximum(np.sum(run * run, axis=1), 1e-300)
    share = np.clip(share, 0.0, 1.0)
    gaps = away - share[:, :, None] * run
    nearest = np.sqrt(np.min(np.sum(gaps * gaps, axis=2), axis=1))
    crosses = (edges[:, 0, 1] > points[:, 1:2]) != (edges[:, 1, 1] > points[:, 1:2])
    rise = np.where(run[:, 1] == 0.0, 1.0, run[:, 1])
    at = start[:, 0] + run[:, 0] * (away[:, :, 1] / rise)
    inside = np.sum(crosses & (points[:, 0:1] < at), axis=1) % 2 == 1
    signed: Floats = np.where(inside, nearest, -nearest)
    return signed
