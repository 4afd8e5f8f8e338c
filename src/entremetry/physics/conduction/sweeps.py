"""Implicit step along one axis: many tridiagonal systems at once.

The loops are short on purpose: with few arrays in each the compiler can prove that they do not
overlap, and uses whole vectors.
"""

from __future__ import annotations

import numpy as np

from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.cells import Cells, Fields
from entremetry.physics.conduction.compiled import compiled

BLOCK = 16


@compiled
def set_matrix(
    cells: Cells,
    fields: Fields,
    conductance: Floats,
    surface: Floats,
    stride: int,
    rate: float,
) -> None:
    """Diagonal of the systems along one axis; the conductances stand beside it."""
    first = cells.pad
    last = cells.volume.size - first
    link, skin = conductance[first:last], surface[first:last]
    link_before = conductance[first - stride : last - stride]
    heat, diagonal = fields.capacity[first:last], fields.diagonal[first:last]
    for c in range(heat.size):
        diagonal[c] = heat[c] * rate + link[c] + link_before[c] + skin[c]


@compiled
def sweep_across(n: int, stride: int, begin: int, fields: Fields, conductance: Floats) -> None:
    """Solve `stride` lines side by side; each has `n` cells, `stride` apart."""
    f, b, e = fields, begin, begin + stride
    beside, diagonal, d = conductance[b:e], f.diagonal[b:e], f.residual[b:e]
    x, inverse = f.change[b:e], f.inverse[b:e]
    for c in range(x.size):
        inverse[c] = 1.0 / diagonal[c]
    for c in range(x.size):
        x[c] = d[c] * inverse[c]
    for _ in range(1, n):
        up, x_before, inverse_before = beside, x, inverse
        b, e = b + stride, e + stride
        beside, diagonal, d = conductance[b:e], f.diagonal[b:e], f.residual[b:e]
        x, inverse = f.change[b:e], f.inverse[b:e]
        for c in range(x.size):
            inverse[c] = 1.0 / (diagonal[c] - up[c] * up[c] * inverse_before[c])
        for c in range(x.size):
            x[c] = (d[c] + up[c] * x_before[c]) * inverse[c]
    for _ in range(1, n):
        x_after = x
        b, e = b - stride, e - stride
        x, beside, inverse = f.change[b:e], conductance[b:e], f.inverse[b:e]
        for c in range(x.size):
            x[c] += beside[c] * inverse[c] * x_after[c]


@compiled
def sweep_along(n: int, lines: int, start: int, fields: Fields, beside: Floats) -> None:
    """Solve `lines` lines of `n` contiguous cells, several interleaved to hide the divisions."""
    diagonal, d = fields.diagonal, fields.residual
    x, inverse = fields.change, fields.inverse
    for block in range(0, lines, BLOCK):
        count = min(BLOCK, lines - block)
        begin = start + block * n
        for line in range(count):
            c = np.uintp(begin + line * n)
            inverse[c] = 1.0 / diagonal[c]
            x[c] = d[c] * inverse[c]
        for i in range(1, n):
            for line in range(count):
                c = np.uintp(begin + line * n + i)
                before = np.uintp(begin + line * n + i - 1)
                up = beside[before]
                over = 1.0 / (diagonal[c] - up * up * inverse[before])
                inverse[c] = over
                x[c] = (d[c] + up * x[before]) * over
        for i in range(n - 2, -1, -1):
            for line in range(count):
                c = np.uintp(begin + line * n + i)
                x[c] += beside[c] * inverse[c] * x[np.uintp(begin + line * n + i + 1)]
