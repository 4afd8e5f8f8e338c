"""Cells whose ice ends within a step: their heat capacity falls to a fraction at once.

The flows into them do not. Sweeps along one axis after the other are slow to call such a cell
back from where its old capacity sent it, and it would swing about its neighbours for many steps.
So it starts its next pass from near a balance with them.
"""

from __future__ import annotations

from entremetry.physics.conduction.cells import Cells, Fields
from entremetry.physics.conduction.compiled import compiled

STIFF = 1.0  # flow per kelvin through a cell in a step, over its capacity; beyond, it would swing


@compiled
def free(cells: Cells, fields: Fields, rate: float, mismatch: float) -> int:
    """Mark the stiff cells that went further than the matrix foresaw; their number."""
    f = fields
    count = 0
    f.freed[:] = 0.0
    for c in range(cells.pad, cells.volume.size - cells.pad):
        moved = abs(f.temperature[c] - f.old_temperature[c])
        if moved < abs(f.change[c] - f.old_temperature[c]) + mismatch:
            continue
        if through(cells, fields, c) > STIFF * f.capacity[c] * rate:
            f.freed[c] = 1.0
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
def relax(cells: Cells, fields: Fields, rate: float) -> None:
    """Take marked cells back towards balance with their neighbours, at most to where they were.

    This is but a better start of the next pass, which closes the heat balance of all cells.
    """
    f = fields
    for c in range(cells.pad, cells.volume.size - cells.pad):
        if f.freed[c] > 0.0:
            skin = f.surface0[c] + f.surface1[c] + f.surface2[c]
            stiffness = f.capacity[c] * rate + through(cells, fields, c) + skin
            back = f.old_temperature[c] - f.temperature[c]
            change = f.residual[c] / stiffness
            change = min(max(change, min(back, 0.0)), max(back, 0.0))
            f.temperature[c] += change
            f.enthalpy[c] += f.capacity[c] * change
