"""From enthalpy to temperature, heat capacity and conductivity."""

from __future__ import annotations

import numpy as np

from entremetry.physics.conduction.cells import Cells, Fields, Tables
from entremetry.physics.conduction.compiled import compiled


@compiled
def look_up(cells: Cells, tables: Tables, fields: Fields) -> None:
    """Fill temperature, capacity, conduction and resistivity from the enthalpy.

    Finding the rows is apart from reading them: only the former can go in whole vectors. Slices
    that start at the first cell let the compiler see that no index is negative; the other loops
    over cells are written so for the same reason.
    """
    find_rows(cells, fields)
    first = cells.pad
    last = cells.volume.size - first
    place, row = fields.place[first:last], fields.row[first:last]
    temperature, capacity = fields.temperature[first:last], fields.capacity[first:last]
    conduction, resistivity = fields.conduction[first:last], fields.resistivity[first:last]
    bulk, rows = cells.bulk[first:last], tables.rows
    for c in range(place.size):
        at, there = np.uintp(row[c]), place[c]
        temperature[c] = rows[at, 0] + there * rows[at, 1]
        conduction[c] = rows[at, 2] + there * rows[at, 3]
        resistivity[c] = rows[at, 4] + there * rows[at, 5]
        capacity[c] = bulk[c] * rows[at, 6]


@compiled
def find_rows(cells: Cells, fields: Fields) -> None:
    """Place of each cell in its table, and the row that it falls on; NaN falls on the first."""
    first = cells.pad
    last = cells.volume.size - first
    enthalpy, place = fields.enthalpy[first:last], fields.place[first:last]
    gain, shift = cells.gain[first:last], cells.shift[first:last]
    for c in range(enthalpy.size):
        place[c] = enthalpy[c] * gain[c] - shift[c]
    end, offset, row = cells.end[first:last], cells.offset[first:last], fields.row[first:last]
    for c in range(place.size):
        whole = np.floor(place[c])
        whole = whole if whole > -1.0 else -1.0
        whole = whole if whole < end[c] else end[c]
        row[c] = np.int64(whole + offset[c])
