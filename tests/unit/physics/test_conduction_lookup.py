"""From the heat of a cell to its temperature, inside its table and beyond its ends."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.lookup import look_up
from entremetry.physics.conduction.outline import Region, arc, outline, rectangle
from entremetry.physics.conduction.probe import probes
from entremetry.physics.conduction.section_body import round_body
from entremetry.physics.conduction.state import State, new_state
from entremetry.physics.conduction.variation import Variation
from entremetry.physics.material import Material, constant_material, material

ZERO = 273.15


def ice(t: np.ndarray) -> np.ndarray:
    return 1.0 + 3.5 / np.minimum(t - ZERO, -3.5)


MOUSSE = material(
    "mousse",
    lambda t: 600.0 * (3100 * (t - ZERO) - 0.534 * ice(t) * (2130 * (t - ZERO) + 333600)),
    lambda t: 0.23 + 0.30 * ice(t),
    freezing_point=ZERO - 3.5,
)
FRUIT = constant_material("fruit", 0.5, 3.8e6)


@pytest.fixture(name="state")
def made() -> State:
    edge = outline(
        ("base", [(0.0, 0.0), (0.02, 0.0)]),
        ("skin", arc((0.0, 0.0), 0.02, 0.0, np.pi / 2)),
        ("axis", [(0.0, 0.02), (0.0, 0.0)]),
    )
    core = Region(name="core", material=FRUIT, points=rectangle(0.0, 0.004, 0.0055, 0.0095))
    body = round_body(edge, MOUSSE, (core,), 2e-3)
    return new_state(body, {"body": ZERO + 5.0}, probes(body, {}), Variation())


def filled(state: State, number: int, heights: Floats) -> Floats:
    """Cells of one table, set to enthalpies per volume and looked up."""
    cells = state.cells
    pure = np.flatnonzero((cells.table == number) & (cells.volume > 0.0))
    state.fields.enthalpy[pure] = np.resize(heights, pure.size) * cells.volume[pure]
    look_up(cells, state.tables, state.fields)
    return pure


@pytest.mark.parametrize(("number", "stuff"), [(0, MOUSSE), (1, FRUIT)])
def test_cells_of_one_material_read_its_table(state: State, number: int, stuff: Material) -> None:
    heights = np.linspace(stuff.enthalpies[0], stuff.enthalpies[-1], 9)
    pure = filled(state, number, heights)
    expected = stuff.temperature(np.resize(heights, pure.size))
    assert pure.size > 2
    assert state.fields.temperature[pure] == pytest.approx(expected, abs=1e-9)
    between = np.interp(expected, stuff.temperatures, stuff.conduction)
    assert state.fields.conduction[pure] == pytest.approx(between, abs=1e-9)


def test_beyond_a_table_temperature_runs_on_and_resistivity_stays(state: State) -> None:
    rows, step = MOUSSE.temperatures, MOUSSE.enthalpy_step
    ends = np.array([MOUSSE.enthalpies[0] - 3.0 * step, MOUSSE.enthalpies[-1] + 3.0 * step])
    pure = filled(state, 0, ends)[:2]
    below, above = 4.0 * rows[0] - 3.0 * rows[1], 4.0 * rows[-1] - 3.0 * rows[-2]
    assert state.fields.temperature[pure] == pytest.approx([below, above], abs=1e-9)
    kept = 1.0 / MOUSSE.conductivities[[0, -1]]
    assert state.fields.resistivity[pure] == pytest.approx(kept, rel=1e-12)


def test_heat_that_is_no_number_gives_no_temperature(state: State) -> None:
    pure = filled(state, 0, np.array([np.nan]))
    assert np.isnan(state.fields.temperature[pure]).all()
    assert (state.fields.capacity[pure] > 0.0).all()
