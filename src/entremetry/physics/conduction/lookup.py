"""From enthalpy to temperature, heat capacity and conductivity."""

from __future__ import annotations

import numpy as np

from entremetry.physics.conduction.cells import Cells, Fields, Tables
from entremetry.physics.conduction.compiled import compiled


@compiled
def look_up(cells: Cells, tables: Tables, fields: Fields) -> None:
    """Fill temperature, capacity, conduction and resistivity from the enthalpy.

    Slices that start at the first cell let the compiler see that no index is negative, and so
    use whole vectors; the other loops over cells are written so for the same reason.
    """
    first = cells.pad
    last = cells.volume.size - first
    enthalpy, bulk = fields.enthalpy[first:last], cells.bulk[first:last]
    gain, shift = cells.gain[first:last], cells.shift[first:last]
    steps, offset = cells.steps[first:last], cells.offset[first:last]
    temperature, capacity = fields.temperature[first:last], fields.capacity[first:last]
    conduction, resistivity = fields.conduction[first:last], fields.resistivity[first:last]
    rows = tables.rows
    for c in range(enthalpy.size):
        place = enthalpy[c] * gain[c] - shift[c]
        step = min(max(int(place), 0), steps[c])
        part = place - step
        row = np.uintp(offset[c] + step)
        after = np.uintp(offset[c] + step + 1)
        temperature[c] = rows[row, 0] + part * (rows[after, 0] - rows[row, 0])
        conduction[c] = rows[row, 1] + part * (rows[after, 1] - rows[row, 1])
        bounded = min(max(part, 0.0), 1.0)
        resistivity[c] = rows[row, 2] + bounded * (rows[after, 2] - rows[row, 2])
        capacity[c] = bulk[c] * rows[row, 3]
