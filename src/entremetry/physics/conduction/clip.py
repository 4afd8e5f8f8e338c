"""Cut a section polygon into the cells of a grid: volumes and open faces."""

from __future__ import annotations

import math

import numpy as np

from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.compiled import compiled


@compiled
def cut_half(points: Floats, count: int, axis: int, level: float, keep: float, out: Floats) -> int:
    """Keep the part of a polygon where keep * (coordinate - level) >= 0; points that remain."""
    made = 0
    for i in range(count):
        j = i + 1 if i + 1 < count else 0
        here = keep * (points[i, axis] - level)
        there = keep * (points[j, axis] - level)
        if here >= 0.0:
            out[made, 0] = points[i, 0]
            out[made, 1] = points[i, 1]
            made += 1
        if (here > 0.0 and there < 0.0) or (here < 0.0 and there > 0.0):
            part = here / (here - there)
            other = 1 - axis
            out[made, axis] = level
            out[made, other] = points[i, other] + part * (points[j, other] - points[i, other])
            made += 1
    return made


@compiled
def volume_of(points: Floats, count: int, round_body: bool) -> float:
    """Area of a polygon, or the volume it sweeps around the axis."""
    total = 0.0
    for i in range(count):
        j = i + 1 if i + 1 < count else 0
        a, b = points[i, 0], points[j, 0]
        rise = points[j, 1] - points[i, 1]
        if round_body:
            total += math.pi * rise * (a * a + a * b + b * b) / 3.0
        else:
            total += 0.5 * rise * (a + b)
    return total


@compiled
def side_of(points: Floats, count: int, axis: int, level: float, round_body: bool) -> float:
    """Length of a polygon's border on a grid line, or the area it sweeps around the axis."""
    total = 0.0
    other = 1 - axis
    for i in range(count):
        j = i + 1 if i + 1 < count else 0
        if points[i, axis] == level and points[j, axis] == level:
            a, b = points[i, other], points[j, other]
            if not round_body:
                total += b - a
            elif axis == 0:
                total += 2.0 * math.pi * level * (b - a)
            else:
                total += math.pi * (b * b - a * a)
    return abs(total)


@compiled
def cut_cells(
    points: Floats, across: Floats, levels: Floats, round_body: bool
) -> tuple[Floats, Floats]:
    """Volume of the polygon in each cell, and its border on the four sides of the cell.

    Returns arrays of shape (rows, columns) and (rows, columns, 4); the sides are left, right,
    bottom, top. A border that also is a grid line shows on one side of it only.
    """
    rows, columns = levels.size - 1, across.size - 1
    volume = np.zeros((rows, columns))
    sides = np.zeros((rows, columns, 4))
    room = 4 * points.shape[0] + 16
    a = np.zeros((room, 2))
    b = np.zeros((room, 2))
    strip = np.zeros((room, 2))
    rest = np.zeros((room, 2))
    for j in range(rows):
        n = cut_half(points, points.shape[0], 1, levels[j], 1.0, a)
        count = cut_half(a, n, 1, levels[j + 1], -1.0, strip)
        for i in range(columns):
            if count < 3:
                break
            n = cut_half(strip, count, 0, across[i + 1], -1.0, b)
            if n >= 3:
                volume[j, i] = volume_of(b, n, round_body)
                sides[j, i, 0] = side_of(b, n, 0, across[i], round_body)
                sides[j, i, 1] = side_of(b, n, 0, across[i + 1], round_body)
                sides[j, i, 2] = side_of(b, n, 1, levels[j], round_body)
                sides[j, i, 3] = side_of(b, n, 1, levels[j + 1], round_body)
            count = cut_half(strip, count, 0, across[i + 1], 1.0, rest)
            for q in range(count):
                strip[q, 0] = rest[q, 0]
                strip[q, 1] = rest[q, 1]
    return volume, sides


@compiled
def cut_edges(
    points: Floats, across: Floats, levels: Floats, round_body: bool
) -> tuple[Floats, int]:
    """Pieces of the outline, one or more per cell that it crosses.

    Each row: edge, row, column, area, normal across, normal up, middle across, middle level.
    A piece on a grid line belongs to the cell on its inner side.
    """
    dx, dz = across[1] - across[0], levels[1] - levels[0]
    nudge = 1e-7 * min(dx, dz)
    pieces = np.zeros((points.shape[0] * 4 + 8 * (across.size + levels.size), 8))
    made = 0
    for e in range(points.shape[0]):
        f = e + 1 if e + 1 < points.shape[0] else 0
        sx, sz = points[f, 0] - points[e, 0], points[f, 1] - points[e, 1]
        length = math.hypot(sx, sz)
        if length < nudge:
            continue
        normal_x, normal_z = sz / length, -sx / length
        part = 0.0
        while part < 1.0 - 1e-12:
            following = 1.0
            for axis in range(2):
                begin = points[e, axis]
                way = sx if axis == 0 else sz
                lines = across if axis == 0 else levels
                if abs(way) < nudge:
                    continue
                gap = lines[1] - lines[0]
                place = (begin + (part + 1e-9 / length * gap) * way - lines[0]) / gap
                line = math.floor(place) + 1.0 if way > 0.0 else math.ceil(place) - 1.0
                hit = (lines[0] + line * gap - begin) / way
                if hit > part + 1e-12:
                    following = min(following, hit)
            a = points[e, 0] + part * sx
            b = points[e, 0] + following * sx
            middle_x = 0.5 * (a + b)
            middle_z = points[e, 1] + 0.5 * (part + following) * sz
            size = (following - part) * length
            area = math.pi * (a + b) * size if round_body else size
            column = int((middle_x - nudge * normal_x - across[0]) / dx)
            row = int((middle_z - nudge * normal_z - levels[0]) / dz)
            if made == pieces.shape[0]:
                larger = np.zeros((2 * made, 8))
                larger[:made] = pieces
                pieces = larger
            pieces[made, 0] = e
            pieces[made, 1] = min(max(row, 0), levels.size - 2)
            pieces[made, 2] = min(max(column, 0), across.size - 2)
            pieces[made, 3] = area
            pieces[made, 4] = normal_x
            pieces[made, 5] = normal_z
            pieces[made, 6] = middle_x
            pieces[made, 7] = middle_z
            made += 1
            part = following
    return pieces, made
