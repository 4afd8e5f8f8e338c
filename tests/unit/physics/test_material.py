from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.material import constant_material, material

FREEZING = 270.15


def mousse_enthalpy(t: np.ndarray) -> np.ndarray:
    c = t - 273.15
    ice = 0.534 * np.maximum(1.0 - -3.0 / np.minimum(c, -3.0), 0.0)
    return 600.0 * (3100.0 * c - ice * (2130.0 * c + 333600.0))


def mousse_conductivity(t: np.ndarray) -> np.ndarray:
    return 0.23 + 0.30 * (1.0 - -3.0 / np.minimum(t - 273.15, -3.0))


def mousse():
    return material("mousse", mousse_enthalpy, mousse_conductivity, freezing_point=FREEZING)


def test_temperature_and_enthalpy_invert_to_1e_9() -> None:
    made = mousse()
    t = np.linspace(made.lowest, made.highest, 5001)
    assert np.max(np.abs(made.temperature(made.enthalpy(t)) - t)) < 1e-9


def test_the_freezing_point_is_a_row() -> None:
    made = mousse()
    assert np.min(np.abs(made.temperatures - FREEZING)) < 1e-9


def test_rows_lie_on_the_law() -> None:
    made = mousse()
    inside = made.temperatures < 373.0
    law = mousse_enthalpy(made.temperatures)[inside]
    assert made.enthalpies[inside] == pytest.approx(law, abs=2e-6 * np.ptp(law))


def test_conduction_is_the_integral_of_the_conductivity() -> None:
    made = mousse()
    t = np.linspace(made.lowest, FREEZING, 200001)
    k = mousse_conductivity(t)
    exact = np.sum(0.5 * (k[1:] + k[:-1]) * np.diff(t))
    row = int(np.argmin(np.abs(made.temperatures - FREEZING)))
    assert made.conduction[row] == pytest.approx(exact, rel=1e-7)


def test_the_table_does_not_go_flat_at_its_ends() -> None:
    slopes = np.diff(mousse().temperatures)
    assert np.all(slopes > 0.0)


def test_temperatures_outside_are_refused_with_the_name() -> None:
    with pytest.raises(OutsideRange, match="mousse"):
        mousse().enthalpy(150.0)
    with pytest.raises(OutsideRange, match="mousse"):
        mousse().conductivity(float("nan"))
    with pytest.raises(OutsideRange, match="mousse"):
        mousse().temperature(1e12)


def test_a_law_that_falls_is_refused() -> None:
    with pytest.raises(OutsideRange, match="does not rise"):
        material("odd", lambda t: -t, lambda t: np.ones_like(t))


@pytest.mark.parametrize("k", [0.0, -1.0, float("nan")])
def test_a_conductivity_that_is_no_positive_number_is_refused(k: float) -> None:
    with pytest.raises(OutsideRange):
        constant_material("odd", k, 1e6)


def test_a_constant_material_is_straight() -> None:
    made = constant_material("silicone", 0.24, 1.5e6)
    assert float(made.enthalpy(293.15)) == pytest.approx(20.0 * 1.5e6)
    assert float(made.temperature(-1.5e7)) == pytest.approx(263.15)
