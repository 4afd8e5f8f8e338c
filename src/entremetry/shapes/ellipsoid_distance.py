"""Distances from an ellipse and from a cap of an ellipsoid."""

from __future__ import annotations

import numpy as np

from entremetry.shapes.solid import Flags, Floats

HALVINGS = 70
"""Halvings of the interval in which the multiplier of the nearest point lies."""


def nearest_on_ellipsoid(points: Floats, semi_axes: tuple[float, ...]) -> Floats:
    """Return the nearest points of an ellipsoid (or ellipse) about the origin. (n, k) [m]

    The nearest point q of a point p obeys q_i = e_i**2 p_i / (t + e_i**2), with e_i the
    semi-axes and t the largest root of sum (e_i p_i / (t + e_i**2))**2 = 1; the root is
    bracketed and halved, as eberly_2013 shows.
    """
    axes = np.array(semi_axes)
    folded = np.maximum(np.abs(points), 1e-13 * axes.max())
    beyond = axes**2 - axes.min() ** 2  # t is counted from -min(e)**2, where digits would be lost
    low = axes.min() * folded[:, np.argmin(axes)]
    high = np.linalg.norm(axes * folded, axis=1)
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        ratio = axes * folded / (beyond + middle[:, None])
        too_small = np.sum(ratio * ratio, axis=1) > 1.0
        low, high = np.where(too_small, middle, low), np.where(too_small, high, middle)
    root = (0.5 * (low + high))[:, None]
    nearest: Floats = np.copysign(axes**2 * folded / (beyond + root), points)
    return nearest


def distance_from_cap(
    points: Floats, semi_axes: tuple[float, float, float], height: float
) -> Floats:
    """Return the distance of points (n, 3) from a cap's wall, positive inside. [m]"""
    a, b, c = semi_axes
    level = points[:, 2]
    rim = np.sqrt(max(height * (2.0 * c - height), 0.0)) / c
    flat = points[:, :2]
    to_rim = np.linalg.norm(flat - nearest_on_ellipsoid(flat, (a * rim, b * rim)), axis=1)
    lowered = np.column_stack([flat, np.minimum(level, height) - c])
    nearest = nearest_on_ellipsoid(lowered, semi_axes)
    to_wall = np.linalg.norm(lowered - nearest, axis=1)
    beyond = nearest[:, 2] > height - c
    to_wall = np.where(beyond, np.hypot(to_rim, height - np.minimum(level, height)), to_wall)
    above = np.maximum(level - height, 0.0)
    distance = np.where(above > 0.0, np.minimum(to_rim, np.hypot(to_wall, above)), to_wall)
    signed: Floats = np.where(_held(lowered, semi_axes), distance, -distance)
    return signed


def _held(points: Floats, semi_axes: tuple[float, float, float]) -> Flags:
    """Tell which points lie inside the ellipsoid."""
    held: Flags = np.sum((points / np.array(semi_axes)) ** 2, axis=1) < 1.0
    return held
