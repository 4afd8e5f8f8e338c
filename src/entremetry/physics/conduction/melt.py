"""Cells whose ice ends within a step: their heat capacity falls to a fraction at once.

The flows into them do not. Sweeps along one axis after the other are slow to call such a cell
back from where its old capacity sent it, and it would swing about its neighbours for many steps.
So it starts its next pass from near a balance with them.
"""

from __future__ import annotations

from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.cells import Cells, Fields
from entremetry.physics.conduction.compiled import compiled

STIFF = 1.0  # flow per kelvin through a cell in a step, over its capacity; beyond, it would swing


@compiled
def free(cells: Cells, fields: Fields, rate: float, mismatch: float) -> int:
    """List the stiff cells that went further than the matrix foresaw; their number."""
    first = cells.pad
    last = cells.volume.size - first
    temperature, old = fields.temperature[first:last], fields.old_temperature[first:last]
    foreseen, capacity = fields.change[first:last], fields.capacity[first:last]
    count = 0
    for c in range(temperature.size):
        moved = abs(temperature[c] - old[c])
        if moved < abs(foreseen[c] - old[c]) + mismatch:
            continue
        if through(cells, fields, first + c) > STIFF * capacity[c] * rate:
            fields.freed[count] = first + c
            count += 1
    return count


@compiled
def through(cells: Cells, fields: Fields, c: int) -> float:
    """Conductance from a cell to all its neighbours. [W/K]"""
    f = fields
    n1, n2 = cells.shape[1:]
    total: float = f.conductance2[c] + f.conductance2[c - 1]
    total += f.conductance1[c] + f.conductance1[c - n2]
    if cells.shape[0] > 1:
        total += f.conductance0[c] + f.conductance0[c - n1 * n2]
    return total


@compiled
def skin(fields: Fields, c: int) -> float:
    """Conductance from a cell to its surroundings. [W/K]"""
    return float(fields.surface0[c] + fields.surface1[c] + fields.surface2[c])


@compiled
def relax(cells: Cells, fields: Fields, count: int, rate: float, theta: float) -> None:
    """Take the listed cells back towards balance with their neighbours, at most to where they were.

    All of them at once, so that their order does not matter. This is but a better start of the
    next pass, which closes the heat balance of all cells.
    """
    f = fields
    for q in range(count):
        f.residual[f.freed[q]] = shortfall(cells, fields, f.freed[q], rate, theta)
    for q in range(count):
        c = f.freed[q]
        stiffness = f.capacity[c] * rate + through(cells, fields, c) + skin(fields, c)
        back = f.old_temperature[c] - f.temperature[c]
        change = f.residual[c] / stiffness
        change = min(max(change, min(back, 0.0)), max(back, 0.0))
        f.temperature[c] += change
        f.enthalpy[c] += f.capacity[c] * change


@compiled
def shortfall(cells: Cells, fields: Fields, c: int, rate: float, theta: float) -> float:
    """What all flows bring to one cell less what it has gained. [W]"""
    f = fields
    n1, n2 = cells.shape[1:]
    flow = inflow(f.conductance2, f.temperature, c, 1)
    flow += inflow(f.conductance1, f.temperature, c, n2)
    if cells.shape[0] > 1:
        flow += inflow(f.conductance0, f.temperature, c, n1 * n2)
    mean = (1.0 - theta) * f.old_temperature[c] + theta * f.temperature[c]
    gained = (f.enthalpy[c] - f.old_enthalpy[c]) * rate
    short: float = f.old_balance[c] + theta * flow + f.pull[c] - skin(fields, c) * mean - gained
    return short


@compiled
def inflow(conductance: Floats, temperature: Floats, c: int, stride: int) -> float:
    """Heat into a cell from both neighbours along an axis. [W]"""
    forth: float = conductance[c] * (temperature[c + stride] - temperature[c])
    back: float = conductance[c - stride] * (temperature[c] - temperature[c - stride])
    return forth - back
