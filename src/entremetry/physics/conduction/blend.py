"""Tables of all materials, and of the cells in which two or more of them meet."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from entremetry.physics.arrays import Floats, Integers
from entremetry.physics.conduction.cells import Tables
from entremetry.physics.conduction.compiled import compiled
from entremetry.physics.material import Material

MIXED_ROWS = 513
"""Rows of a mixed cell's table at most."""


def stack(materials: Sequence[Material], mixtures: Sequence[tuple[float, ...]]) -> Tables:
    """Join the tables of pure materials and of mixtures, given as volume fractions."""
    pure = _join(
        [m.temperatures for m in materials],
        [m.conduction for m in materials],
        [1.0 / m.conductivities for m in materials],
        [m.enthalpy_start for m in materials],
        [m.enthalpy_step for m in materials],
    )
    if not mixtures:
        return _with_rows(pure)
    rows = min(int(max(pure.last)) + 1, MIXED_ROWS)
    made = blend(pure, np.array(mixtures, dtype=float), rows)
    pairs = zip(pure, shifted(made, pure), strict=True)
    return _with_rows(Tables(*(np.concatenate(pair) for pair in pairs)))


def _with_rows(tables: Tables) -> Tables:
    """The same tables as straight lines over each step, for the look-up.

    A row before the first step and one behind the last go on beyond the table; there the
    resistivity stays what it is at the end.
    """
    sizes = tables.last + 2
    rows = np.zeros((int(sizes.sum()), 8))
    behind = np.cumsum(sizes)
    step = np.arange(len(rows)) - np.repeat(behind - sizes + 1, sizes)
    last = np.repeat(tables.last, sizes)
    within = np.clip(step, 0, last - 1)
    node = np.repeat(tables.offset, sizes) + within
    for column, values in enumerate((tables.temperature, tables.conduction, tables.resistivity)):
        rise = values[node + 1] - values[node]
        rows[:, 2 * column] = values[node] - within * rise
        rows[:, 2 * column + 1] = rise
    rows[:, 6] = np.repeat(1.0 / tables.inverse_step, sizes) / rows[:, 1]
    for end, at in ((behind - sizes, tables.offset), (behind - 1, tables.offset + tables.last)):
        rows[end, 4], rows[end, 5] = tables.resistivity[at], 0.0
    return tables._replace(rows=rows)


def shifted(tables: Tables, before: Tables) -> Tables:
    """The same tables as they stand behind others."""
    return tables._replace(offset=tables.offset + before.temperature.size)


def _join(
    temperatures: Sequence[Floats],
    conductions: Sequence[Floats],
    resistivities: Sequence[Floats],
    starts: Sequence[float],
    steps: Sequence[float],
) -> Tables:
    sizes = np.array([t.size for t in temperatures], dtype=np.int64)
    return Tables(
        temperature=np.concatenate(temperatures),
        conduction=np.concatenate(conductions),
        resistivity=np.concatenate(resistivities),
        start=np.array(starts, dtype=float),
        inverse_step=1.0 / np.array(steps, dtype=float),
        offset=np.concatenate([[0], np.cumsum(sizes)[:-1]]).astype(np.int64),
        last=sizes - 1,
        rows=np.zeros((0, 8)),
    )


@compiled
def blend(pure: Tables, fractions: Floats, rows: int) -> Tables:
    """Table mixtures at one temperature: enthalpies add by volume, conductivity is the geometric
    mean, which lies between layers along and across the heat."""
    count = fractions.shape[0]
    temperature = np.zeros(count * rows)
    conduction = np.zeros(count * rows)
    resistivity = np.zeros(count * rows)
    start = np.zeros(count)
    inverse_step = np.zeros(count)
    offset = np.arange(count) * rows
    last = np.full(count, rows - 1)
    for m in range(count):
        t = merged_rows(pure, fractions[m])
        h, k = mixed_laws(pure, fractions[m], t)
        start[m] = h[0]
        step = (h[-1] - h[0]) / (rows - 1)
        inverse_step[m] = 1.0 / step
        place = 0
        for i in range(rows):
            level = h[0] + i * step
            while place < t.size - 2 and h[place + 1] < level:
                place += 1
            part = min((level - h[place]) / (h[place + 1] - h[place]), 1.0)
            temperature[m * rows + i] = t[place] + part * (t[place + 1] - t[place])
            resistivity[m * rows + i] = 1.0 / (k[place] + part * (k[place + 1] - k[place]))
            if i > 0:
                mean = 0.5 / resistivity[m * rows + i] + 0.5 / resistivity[m * rows + i - 1]
                rise = temperature[m * rows + i] - temperature[m * rows + i - 1]
                conduction[m * rows + i] = conduction[m * rows + i - 1] + mean * rise
    none = np.zeros((0, 8))
    return Tables(temperature, conduction, resistivity, start, inverse_step, offset, last, none)


@compiled
def merged_rows(pure: Tables, fractions: Floats) -> Floats:
    """Temperatures of all rows of the materials that take part, inside their common range."""
    low, high, size = -np.inf, np.inf, 0
    for m in range(fractions.size):
        if fractions[m] > 0.0:
            first, end = pure.offset[m], pure.offset[m] + pure.last[m]
            low = max(low, pure.temperature[first])
            high = min(high, pure.temperature[end])
            size += pure.last[m] + 1
    rows = np.zeros(size)
    made = 0
    for m in range(fractions.size):
        if fractions[m] > 0.0:
            for i in range(pure.offset[m], pure.offset[m] + pure.last[m] + 1):
                rows[made] = min(max(pure.temperature[i], low), high)
                made += 1
    rows.sort()
    kept = 1
    for i in range(1, size):
        if rows[i] > rows[kept - 1] + 1e-7:
            rows[kept] = rows[i]
            kept += 1
    return rows[:kept].copy()


@compiled
def mixed_laws(pure: Tables, fractions: Floats, t: Floats) -> tuple[Floats, Floats]:
    """Enthalpy per volume and conductivity of a mixture at rising temperatures."""
    h = np.zeros(t.size)
    k = np.zeros(t.size)
    for m in range(fractions.size):
        if fractions[m] <= 0.0:
            continue
        row, end = pure.offset[m], pure.offset[m] + pure.last[m]
        begin = row
        for i in range(t.size):
            while row < end - 1 and pure.temperature[row + 1] < t[i]:
                row += 1
            rise = pure.temperature[row + 1] - pure.temperature[row]
            part = (t[i] - pure.temperature[row]) / rise
            height = pure.start[m] + (row - begin + part) / pure.inverse_step[m]
            r = pure.resistivity[row] + part * (pure.resistivity[row + 1] - pure.resistivity[row])
            h[i] += fractions[m] * height
            k[i] -= fractions[m] * math.log(r)
    return h, np.exp(k)


def pure_or_mixed(volumes: Floats) -> tuple[Integers, list[tuple[float, ...]]]:
    """Table number of each cell, and the mixtures that are needed.

    `volumes` has shape (materials, cells). A trace below a millionth counts as nothing.
    """
    total = volumes.sum(axis=0)
    shares = np.where(total > 0.0, volumes / np.where(total > 0.0, total, 1.0), 0.0)
    shares = np.where(shares < 1e-6, 0.0, shares)
    shares = shares / np.where(total > 0.0, shares.sum(axis=0), 1.0)
    table = np.argmax(shares, axis=0).astype(np.int64)
    mixed = np.flatnonzero((shares > 0.0).sum(axis=0) > 1)
    known: dict[tuple[float, ...], int] = {}
    for cell in mixed:
        key = tuple(round(float(s), 7) for s in shares[:, cell])
        table[cell] = known.setdefault(key, volumes.shape[0] + len(known))
    return table, list(known)
