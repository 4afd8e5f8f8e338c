"""What the kernel works on: cells of any geometry, their tables and their surface patches.

Cells lie in a box of n0 x n1 x n2, the last axis contiguous, in flat arrays with a margin of
`pad` cells before and behind. A cell outside the body has no volume and no links. The kernel
knows volumes, areas and distances only, so plane, round and boxed bodies are the same to it.
"""

from __future__ import annotations

from typing import NamedTuple

from entremetry.physics.arrays import Flags, Floats, Integers


class Cells(NamedTuple):
    """Geometry of the cells."""

    shape: tuple[int, int, int]
    pad: int
    volume: Floats  # m3; 0 outside the body
    bulk: Floats  # m3; as `volume`, but never 0
    table: Integers  # which table holds the cell's enthalpy
    gain: Floats  # rows of its table per heat in the cell [1/J]
    shift: Floats  # rows from the table's start to an enthalpy of nought
    end: Floats  # steps of the table
    offset: Floats  # row of the table's first step
    link0: Floats  # area / distance to the next cell along axis 0 [m]
    link1: Floats
    link2: Floats
    same0: Flags  # whether the next cell along the axis has the same table
    same1: Flags
    same2: Flags
    resisted: Integers  # cells before faces with a contact resistance
    resisted_axis: Integers  # along which the next cell lies
    resistance: Floats  # K/W
    watched: Floats  # volume that counts for warmest, coldest and mean [m3]


class Tables(NamedTuple):
    """Tables of all materials, one after another."""

    temperature: Floats  # K
    conduction: Floats  # integral of conductivity [W/m]
    resistivity: Floats  # 1/conductivity [m K/W]
    start: Floats  # first enthalpy of each table [J/m3]
    inverse_step: Floats  # [m3/J]
    offset: Integers
    last: Integers  # number of steps of each table
    rows: Floats  # of each step: the three as a + b * place in the table, then J/(m3 K)


class Patches(NamedTuple):
    """Surface of the body, one patch per cell and face group."""

    cell: Integers
    group: Integers
    area: Floats  # m2
    distance: Floats  # signed, from the cell's centre to the surface [m]
    share0: Floats  # squares of the normal's parts: they add up to one
    share1: Floats
    share2: Floats
    inner: Floats  # resistance from the food to the middle of the wall [m2 K/W]
    outer: Floats  # from the middle of the wall to its outside, per inner area [m2 K/W]
    heat: Floats  # heat capacity of the wall per inner area [J/(m2 K)]; 0 without a wall
    spread: Floats  # outer area / inner area
    axes: tuple[bool, bool, bool]  # along which the surface gives heat


class Fields(NamedTuple):
    """Working arrays of one run, one entry per cell."""

    enthalpy: Floats  # J
    temperature: Floats
    capacity: Floats  # J/K
    conduction: Floats
    resistivity: Floats
    old_enthalpy: Floats
    old_temperature: Floats
    earlier_temperature: Floats
    old_balance: Floats  # W
    residual: Floats
    freed: Integers  # cells whose ice has gone in this step, a list
    place: Floats  # in the cell's table, in steps from its start
    row: Integers  # of all tables that the place falls on
    change: Floats
    inverse: Floats
    diagonal: Floats  # W/K
    conductance0: Floats  # W/K
    conductance1: Floats
    conductance2: Floats
    surface0: Floats  # conductance of the patches, shared over the axes [W/K]
    surface1: Floats
    surface2: Floats
    pull: Floats  # that conductance times the temperature of the surroundings [W]


class Surface(NamedTuple):
    """Working arrays of one run, one entry per patch."""

    wall_temperature: Floats
    outside_temperature: Floats  # of the outermost surface
    conductance: Floats  # cell to its effective surroundings [W/K]
    surroundings: Floats  # effective temperature [K]
    inside: Floats  # cell to wall [W/K]
    outside: Floats  # wall to air [W/K]
    air: Floats  # effective temperature of the air [K]
    flow: Floats  # into the cell, mean of the step [W]
