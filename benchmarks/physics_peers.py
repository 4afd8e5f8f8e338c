"""General-purpose integrators on the very cells and tables of our dome, in the same process."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numba import njit
from physics_dome import START, TARGET
from scipy.integrate import solve_ivp
from scipy.sparse import csc_matrix

from entremetry.physics import conduction as heat

FAST = {"contract", "reassoc", "arcp", "nsz"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """The dome as a list of links, ready for any integrator; enthalpies in MJ/m3."""

    arguments: tuple[np.ndarray, ...]
    start: np.ndarray
    watched: np.ndarray
    bandwidth: int


def problem(body: heat.Body) -> Problem:
    """Number the filled cells row by row and list their links and patches."""
    cells, tables, pad = body.cells, body.tables, body.cells.pad
    filled = np.flatnonzero(cells.volume > 0.0)
    number = np.full(cells.volume.size, -1)
    number[filled] = np.arange(filled.size)
    first, second, shape, same = [], [], [], []
    for link, alike, stride in (
        (cells.link1, cells.same1, cells.shape[2]),
        (cells.link2, cells.same2, 1),
    ):
        open_ = np.flatnonzero(link > 0.0)
        first.append(number[open_])
        second.append(number[open_ + stride])
        shape.append(link[open_])
        same.append(alike[open_])
    patch = body.skin.face != body.face_number("rim")
    heights = np.zeros(cells.volume.size)
    for region, material, volume in zip(body.regions, body.materials, body.volumes, strict=True):
        heights[pad:-pad] += float(material.enthalpy(START[region])) * volume
    arguments = (
        cells.volume[filled],
        tables.start[cells.table[filled]],
        tables.inverse_step[cells.table[filled]],
        cells.offset[filled],
        cells.end[filled],
        tables.rows,
        np.concatenate(first),
        np.concatenate(second),
        np.concatenate(shape),
        np.concatenate(same),
        number[body.skin.cell[patch] + pad],
        body.skin.area[patch],
        body.distance[patch],
    )
    start = heights[filled] / cells.volume[filled] / 1e6
    width = int(np.max(np.abs(arguments[6] - arguments[7])))
    return Problem(
        arguments=arguments, start=start, watched=cells.watched[filled] > 0.0, bandwidth=width
    )


@njit(fastmath=FAST, error_model="numpy")
def look_up(y, start, inverse, offset, end, rows, t, f, r, c):
    """Temperature, conduction, resistivity and K per MJ/m3 of every cell."""
    for i in range(y.size):
        place = (y[i] * 1e6 - start[i]) * inverse[i]
        row = np.uintp(offset[i] + min(max(np.floor(place), -1.0), end[i]))
        t[i] = rows[row, 0] + place * rows[row, 1]
        f[i] = rows[row, 2] + place * rows[row, 3]
        r[i] = rows[row, 4] + place * rows[row, 5]
        c[i] = 1e6 / rows[row, 6]


@njit(fastmath=FAST, error_model="numpy")
def slopes(
    y,
    out,
    work,
    volume,
    start,
    inverse,
    offset,
    end,
    rows,
    one,
    two,
    link,
    same,
    cell,
    area,
    far,
):
    """Change of the enthalpies. [MJ/(m3 s)]"""
    t, f, r, c = work[0], work[1], work[2], work[3]
    look_up(y, start, inverse, offset, end, rows, t, f, r, c)
    out[:] = 0.0
    for q in range(one.size):
        i, j = one[q], two[q]
        span = t[j] - t[i]
        if same[q] and abs(span) > 1e-3:
            flow = link[q] * (f[j] - f[i])
        else:
            flow = link[q] * 2.0 * span / (r[i] + r[j])
        out[i] += flow
        out[j] -= flow
    for p in range(cell.size):
        i = cell[p]
        film = 1.0 / 12.0
        depth = max(far[p] * r[i], -0.5 * film)
        out[i] += area[p] / (film + depth) * (255.15 - t[i])
    for i in range(y.size):
        out[i] *= 1e-6 / volume[i]


@njit(fastmath=FAST, error_model="numpy")
def jacobian(
    y, work, volume, start, inverse, offset, end, rows, one, two, link, same, cell, area, far
):
    """Entries of the Jacobian in the order: diagonal, (one, two), (two, one)."""
    t, f, r, c = work[0], work[1], work[2], work[3]
    look_up(y, start, inverse, offset, end, rows, t, f, r, c)
    n, m = y.size, one.size
    data = np.zeros(n + 2 * m)
    for q in range(m):
        i, j = one[q], two[q]
        if same[q]:
            gi, gj = link[q] / r[i], link[q] / r[j]
        else:
            gi = gj = link[q] * 2.0 / (r[i] + r[j])
        data[i] -= gi * c[i] * 1e-6 / volume[i]
        data[j] -= gj * c[j] * 1e-6 / volume[j]
        data[n + q] = gj * c[j] * 1e-6 / volume[i]
        data[n + m + q] = gi * c[i] * 1e-6 / volume[j]
    for p in range(cell.size):
        i = cell[p]
        film = 1.0 / 12.0
        depth = max(far[p] * r[i], -0.5 * film)
        data[i] -= area[p] / (film + depth) * c[i] * 1e-6 / volume[i]
    return data


def cvode(given: Problem, rtol: float = 1e-3) -> float:
    """CVODE, backward differences, banded: time at which the warmest is cold enough. [s]"""
    from sksundae.cvode import CVODE

    work = np.zeros((4, given.start.size))

    def right(t: float, y: np.ndarray, out: np.ndarray) -> None:
        slopes(y, out, work, *given.arguments)

    def event(t: float, y: np.ndarray, out: np.ndarray) -> None:
        out[0] = warmest(y, given, work) - TARGET.temperature

    event.terminal = [True]
    event.direction = [-1]
    solver = CVODE(
        right,
        rtol=rtol,
        atol=1e-3,
        linsolver="band",
        lband=given.bandwidth,
        uband=given.bandwidth,
        eventsfn=event,
        num_events=1,
        max_num_steps=20000,
    )
    answer = solver.solve(np.array([0.0, 20000.0]), given.start)
    return float(answer.t_events[0])


def bdf(given: Problem, rtol: float = 1e-3) -> float:
    """scipy's BDF with a sparse analytic Jacobian; the same time. [s]"""
    n = given.start.size
    work = np.zeros((4, n))
    one, two = given.arguments[6], given.arguments[7]
    rows = np.concatenate([np.arange(n), one, two])
    columns = np.concatenate([np.arange(n), two, one])

    def right(t: float, y: np.ndarray) -> np.ndarray:
        out = np.zeros(n)
        slopes(y, out, work, *given.arguments)
        return out

    def jac(t: float, y: np.ndarray) -> csc_matrix:
        return csc_matrix((jacobian(y, work, *given.arguments), (rows, columns)), shape=(n, n))

    def event(t: float, y: np.ndarray) -> float:
        return warmest(y, given, work) - TARGET.temperature

    event.terminal = True
    answer = solve_ivp(
        right, (0.0, 20000.0), given.start, "BDF", jac=jac, rtol=rtol, atol=1e-2, events=event
    )
    return float(answer.t_events[0][0])


def warmest(y: np.ndarray, given: Problem, work: np.ndarray) -> float:
    """Temperature of the warmest watched cell. [K]"""
    look_up(y, *given.arguments[1:6], work[0], work[1], work[2], work[3])
    return float(work[0][given.watched].max())


@njit(fastmath=FAST)
def five_point(a, b, width, times):
    """Bare sweeps of the five-point stencil, there and back."""
    n = a.size - 2 * width
    for _ in range(times // 2):
        for source, target in ((a, b), (b, a)):
            middle, out = source[width : width + n], target[width : width + n]
            left, right = source[width - 1 : width - 1 + n], source[width + 1 : width + 1 + n]
            below, above = source[:n], source[2 * width : 2 * width + n]
            for i in range(n):
                out[i] = 0.6 * middle[i] + 0.1 * (left[i] + right[i] + below[i] + above[i])
