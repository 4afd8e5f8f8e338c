"""One time step: passes of alternating implicit sweeps until the heat is where it was sent."""

from __future__ import annotations

from entremetry.physics.conduction.cells import Cells, Fields, Patches, Surface, Tables
from entremetry.physics.conduction.compiled import compiled
from entremetry.physics.conduction.links import add_flow, connect
from entremetry.physics.conduction.lookup import look_up
from entremetry.physics.conduction.melt import free, relax
from entremetry.physics.conduction.surface import add_exchange, correct, find_pull
from entremetry.physics.conduction.sweeps import set_matrix, sweep_across, sweep_along

PASSES = 5
ROUNDS = 6  # of bringing cells without ice near their neighbours


@compiled
def advance(
    cells: Cells,
    tables: Tables,
    patches: Patches,
    fields: Fields,
    surface: Surface,
    step: float,
    theta: float,
    mismatch: float,
) -> int:
    """Try one step; number of passes it took, or 0 if the tables did not follow the matrix."""
    rate = 1.0 / step
    remember(cells, fields)
    connect(cells, fields)
    begin_residual(cells, fields, theta)
    add_exchange(patches, fields, surface, fields.residual, theta)
    for number in range(1, PASSES + 1):
        if number > 1:
            again(cells, patches, fields, surface, rate, theta, mismatch)
        solve_axes(cells, patches, fields, surface, rate, theta)
        apply_change(cells, fields)
        look_up(cells, tables, fields)
        if follows(cells, fields, mismatch):
            return number
    return 0


@compiled
def again(
    cells: Cells,
    patches: Patches,
    fields: Fields,
    surface: Surface,
    rate: float,
    theta: float,
    mismatch: float,
) -> None:
    """Residual of a further pass, at the temperatures that the pass before has found."""
    freed = free(cells, fields, rate, mismatch)
    connect(cells, fields)
    if freed > 0:
        find_pull(patches, fields, surface)
        for _ in range(ROUNDS):
            relax(cells, fields, freed, rate, theta)
    find_residual(cells, patches, fields, surface, rate, theta)


@compiled
def find_residual(
    cells: Cells, patches: Patches, fields: Fields, surface: Surface, rate: float, theta: float
) -> None:
    """What all flows bring less what the cells have gained."""
    start_residual(cells, fields, rate)
    add_flow(cells, fields, fields.residual, theta)
    add_exchange(patches, fields, surface, fields.residual, theta)


@compiled
def begin_residual(cells: Cells, fields: Fields, theta: float) -> None:
    """Residual of the first pass, whose old and new flows are the same; keep the old share."""
    first = cells.pad
    last = cells.volume.size - first
    residual, balance = fields.residual[first:last], fields.old_balance[first:last]
    residual[:] = 0.0
    add_flow(cells, fields, fields.residual, 1.0)
    for c in range(residual.size):
        balance[c] = (1.0 - theta) * residual[c]


@compiled
def remember(cells: Cells, fields: Fields) -> None:
    """Keep the state before the step."""
    first = cells.pad
    last = cells.volume.size - first
    fields.old_enthalpy[first:last] = fields.enthalpy[first:last]
    fields.old_temperature[first:last] = fields.temperature[first:last]


@compiled
def start_residual(cells: Cells, fields: Fields, rate: float) -> None:
    """What the old flows bring, less the heat that has been gained so far."""
    first = cells.pad
    last = cells.volume.size - first
    enthalpy, old = fields.enthalpy[first:last], fields.old_enthalpy[first:last]
    balance, residual = fields.old_balance[first:last], fields.residual[first:last]
    for c in range(enthalpy.size):
        residual[c] = balance[c] - (enthalpy[c] - old[c]) * rate


@compiled
def apply_change(cells: Cells, fields: Fields) -> None:
    """Give each cell its heat; `change` becomes the temperature that the matrix foresees."""
    first = cells.pad
    last = cells.volume.size - first
    enthalpy, capacity = fields.enthalpy[first:last], fields.capacity[first:last]
    change, temperature = fields.change[first:last], fields.temperature[first:last]
    for c in range(enthalpy.size):
        enthalpy[c] += capacity[c] * change[c]
        change[c] += temperature[c]


@compiled
def solve_axes(
    cells: Cells,
    patches: Patches,
    fields: Fields,
    surface: Surface,
    rate: float,
    theta: float,
) -> None:
    """Sweep along every axis in which heat can move; the change lands in `change`.

    All systems are divided by theta, so that the conductances themselves stand in them.
    """
    n0, n1, n2 = cells.shape
    first, plane = cells.pad, n1 * n2
    f, steep = fields, rate / theta
    fresh = True
    if n2 > 1 or patches.axes[2]:
        carry_on(cells, fields, fresh, steep, theta)
        set_matrix(cells, fields, f.conductance2, f.surface2, 1, steep)
        sweep_along(n2, n0 * n1, first, fields, f.conductance2)
        correct(patches, surface, patches.share2, f.change, theta)
        fresh = False
    if n1 > 1 or patches.axes[1]:
        carry_on(cells, fields, fresh, steep, theta)
        set_matrix(cells, fields, f.conductance1, f.surface1, n2, steep)
        for i in range(n0):
            sweep_across(n1, n2, first + i * plane, fields, f.conductance1)
        correct(patches, surface, patches.share1, f.change, theta)
        fresh = False
    if n0 > 1 or patches.axes[0]:
        carry_on(cells, fields, fresh, steep, theta)
        set_matrix(cells, fields, f.conductance0, f.surface0, plane, steep)
        sweep_across(n0, plane, first, fields, f.conductance0)
        correct(patches, surface, patches.share0, f.change, theta)
        fresh = False
    if fresh:
        last = cells.volume.size - first
        f.change[first:last] = f.residual[first:last] / (f.capacity[first:last] * rate)


@compiled
def carry_on(cells: Cells, fields: Fields, fresh: bool, steep: float, theta: float) -> None:
    """Right side of an axis: the residual if it is the first one, else what the last one left."""
    if fresh:
        magnify(cells, fields, 1.0 / theta)
    else:
        carry_over(cells, fields, steep)


@compiled
def magnify(cells: Cells, fields: Fields, factor: float) -> None:
    """Multiply the residual."""
    residual = fields.residual[cells.pad : cells.volume.size - cells.pad]
    for c in range(residual.size):
        residual[c] *= factor


@compiled
def carry_over(cells: Cells, fields: Fields, rate: float) -> None:
    """Make the change along one axis the right side of the next."""
    first = cells.pad
    last = cells.volume.size - first
    residual, capacity = fields.residual[first:last], fields.capacity[first:last]
    change = fields.change[first:last]
    for c in range(residual.size):
        residual[c] = capacity[c] * rate * change[c]


@compiled
def follows(cells: Cells, fields: Fields, mismatch: float) -> bool:
    """Tell whether every looked-up temperature is what the matrix foresaw."""
    first = cells.pad
    last = cells.volume.size - first
    temperature, foreseen = fields.temperature[first:last], fields.change[first:last]
    astray = 0
    for c in range(temperature.size):
        astray += 0 if abs(temperature[c] - foreseen[c]) < mismatch else 1
    return astray == 0


@compiled
def take_back(cells: Cells, fields: Fields, tables: Tables) -> None:
    """Return to the state before the step."""
    first = cells.pad
    last = cells.volume.size - first
    fields.enthalpy[first:last] = fields.old_enthalpy[first:last]
    look_up(cells, tables, fields)
