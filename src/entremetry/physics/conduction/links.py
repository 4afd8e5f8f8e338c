"""Heat conductance between neighbouring cells, and the heat that flows."""

from __future__ import annotations

from entremetry.physics.arrays import Flags, Floats
from entremetry.physics.conduction.cells import Cells, Fields
from entremetry.physics.conduction.compiled import compiled


@compiled
def connect(cells: Cells, fields: Fields) -> None:
    """Conductances along every axis at the present temperatures."""
    n0, n1, n2 = cells.shape
    if n2 > 1:
        connect_axis(cells, fields, cells.link2, cells.same2, fields.conductance2, 1)
    if n1 > 1:
        connect_axis(cells, fields, cells.link1, cells.same1, fields.conductance1, n2)
    if n0 > 1:
        connect_axis(cells, fields, cells.link0, cells.same0, fields.conductance0, n1 * n2)
    resist(cells, fields)


@compiled
def resist(cells: Cells, fields: Fields) -> None:
    """Put the contact resistances in series with the conductances of their faces."""
    for number in range(cells.resisted.size):
        axis, c = cells.resisted_axis[number], cells.resisted[number]
        conductance = fields.conductance2
        if axis == 1:
            conductance = fields.conductance1
        if axis == 0:
            conductance = fields.conductance0
        conductance[c] /= 1.0 + conductance[c] * cells.resistance[number]


@compiled
def connect_axis(
    cells: Cells, fields: Fields, link: Floats, same: Flags, conductance: Floats, stride: int
) -> None:
    """Inside one material the mean of k over the span (Kirchhoff), else the harmonic mean."""
    first = cells.pad
    last = cells.volume.size - first
    ahead, beyond = first + stride, last + stride
    t, t_next = fields.temperature[first:last], fields.temperature[ahead:beyond]
    f, f_next = fields.conduction[first:last], fields.conduction[ahead:beyond]
    r, r_next = fields.resistivity[first:last], fields.resistivity[ahead:beyond]
    shape, kirchhoff, result = link[first:last], same[first:last], conductance[first:last]
    for c in range(t.size):
        span = t_next[c] - t[c]
        mean = kirchhoff[c] and abs(span) > 1e-3
        upper = f_next[c] - f[c] if mean else 2.0
        lower = span if mean else r[c] + r_next[c]
        result[c] = shape[c] * upper / lower


@compiled
def add_flow(cells: Cells, fields: Fields, balance: Floats, factor: float) -> None:
    """Add `factor` times the heat flowing into each cell to its balance."""
    n0, n1, n2 = cells.shape
    if n2 > 1:
        add_axis_flow(cells, fields, fields.conductance2, balance, 1, factor)
    if n1 > 1:
        add_axis_flow(cells, fields, fields.conductance1, balance, n2, factor)
    if n0 > 1:
        add_axis_flow(cells, fields, fields.conductance0, balance, n1 * n2, factor)


@compiled
def add_axis_flow(
    cells: Cells,
    fields: Fields,
    conductance: Floats,
    balance: Floats,
    stride: int,
    factor: float,
) -> None:
    """The part of one axis: what comes from the next cell less what goes to the one before."""
    first = cells.pad
    last = cells.volume.size - first
    t = fields.temperature[first:last]
    t_next = fields.temperature[first + stride : last + stride]
    t_before = fields.temperature[first - stride : last - stride]
    link, link_before = conductance[first:last], conductance[first - stride : last - stride]
    result = balance[first:last]
    for c in range(t.size):
        forth = link[c] * (t_next[c] - t[c])
        back = link_before[c] * (t[c] - t_before[c])
        result[c] += factor * (forth - back)
