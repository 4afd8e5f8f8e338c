from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.glaze_film import Fluidity, film_volume
from entremetry.physics.glaze_pour import (
    Dome,
    Glaze,
    Wish,
    contact_temperature,
    pour,
    pour_window,
)
from entremetry.physics.material import Material, constant_material, material

ZERO = 273.15
SYRUP = Fluidity(warm=313.15, warm_viscosity=1.5, cold=298.15, cold_viscosity=6.0, sets_at=295.15)


def frozen() -> Material:
    def ice(t: np.ndarray) -> np.ndarray:
        return 1.0 - -3.0 / np.minimum(t - ZERO, -3.0)

    return material(
        "mousse",
        lambda t: 600 * (3100 * (t - ZERO) - 0.534 * ice(t) * (2130 * (t - ZERO) + 333600)),
        lambda t: 0.23 + 0.30 * ice(t),
        freezing_point=ZERO - 3.0,
    )


GLAZE = Glaze(
    material=constant_material("glaze", 0.35, 1250.0 * 3000.0), density=1250.0, fluidity=SYRUP
)
DOME = Dome(material=frozen(), temperature=ZERO - 18.0, radius=0.035)


def test_contact_temperature_of_thick_bodies() -> None:
    """Mousse (k 0.25, 550 kg/m3, c 3000) at -18 and glaze (0.35, 1250, 3000) at 35: 15.9610 °C."""
    mousse = constant_material("mousse", 0.25, 550.0 * 3000.0)
    found = contact_temperature(GLAZE.material, 35.0 + ZERO, mousse, -18.0 + ZERO)
    assert found - ZERO == pytest.approx(15.9610, abs=1e-4)


def test_a_warmer_glaze_lies_thinner_and_melts_deeper() -> None:
    cool, warm = (pour(GLAZE, DOME, t + ZERO, 0.06) for t in (27.0, 38.0))
    assert warm.pole < cool.pole
    assert warm.stays < cool.stays
    assert warm.runs_off > cool.runs_off
    assert warm.melt_depth >= cool.melt_depth
    assert warm.contact > cool.contact


def test_grams_add_up_and_the_edge_is_thicker() -> None:
    done = pour(GLAZE, DOME, 32.0 + ZERO, 0.06)
    assert done.stays + done.runs_off == pytest.approx(0.06)
    assert done.pole < done.edge < 1.32 * done.pole
    assert done.set_time is not None and 1.0 < done.set_time < 120.0


def test_little_poured_all_stays() -> None:
    done = pour(GLAZE, DOME, 32.0 + ZERO, 0.002)
    assert done.stays == pytest.approx(0.002)
    assert done.runs_off == 0.0


def test_a_thick_pour_is_forgotten() -> None:
    one, two = (pour(GLAZE, DOME, 32.0 + ZERO, 0.2, start=h) for h in (6e-3, 12e-3))
    assert one.pole == pytest.approx(two.pole, rel=0.05)


def test_the_pour_window_lies_inside_what_was_tried() -> None:
    tried = [t + ZERO for t in (24.0, 28.0, 32.0, 36.0, 40.0)]
    wish = Wish(thinnest=0.3e-3, thickest=3e-3, melting=2e-3, setting=300.0)
    window, pours = pour_window(GLAZE, DOME, 0.06, wish, tried)
    assert len(pours) == 5
    assert window is not None
    assert tried[0] <= window[0] <= window[1] <= tried[-1]


def test_no_window_is_none() -> None:
    tried = [30.0 + ZERO]
    window, _ = pour_window(GLAZE, DOME, 0.06, Wish(thinnest=9e-3, thickest=10e-3), tried)
    assert window is None


def test_a_glaze_that_has_set_is_never_poured() -> None:
    with pytest.raises(OutsideRange, match="never"):
        pour(GLAZE, DOME, 290.0, 0.06)


def test_a_glaze_that_thins_as_it_cools_is_refused() -> None:
    with pytest.raises(OutsideRange):
        Fluidity(warm=313.15, warm_viscosity=6.0, cold=298.15, cold_viscosity=1.5, sets_at=295.0)


def test_viscosity_passes_through_both_measurements() -> None:
    assert float(SYRUP.viscosity(313.15)) == pytest.approx(1.5)
    assert float(SYRUP.viscosity(298.15)) == pytest.approx(6.0)
    assert float(SYRUP.fluidity(295.0)) == 0.0


def test_an_even_film_has_the_volume_of_its_shell() -> None:
    thin = film_volume(1e-3, 0.0, 1250.0, 0.05)
    assert thin == pytest.approx(2 * np.pi * 0.05**2 * 1e-3, rel=1e-9)
