"""Closed formulas of freezing and thawing times, and the kernel against them.

Times by the kernel's reference set (gel, mousse) are by an independent one-dimensional solver,
converged to 0.01 %; `test_physics_conduction` holds the kernel to them. The formulas' own numbers
were worked out apart from this program. Both formulas of freezing claim 10 %, that of thawing 10 %
of 104 runs (cleland_1986).
"""

from __future__ import annotations

import pytest

from entremetry.errors import OutsideRange
from entremetry.physics import (
    Form,
    FreezingFood,
    cleland_earle_time,
    cleland_thawing_time,
    pham_time,
)
from entremetry.physics.conduction import run
from published.physics_bodies import ZERO, air, cylinder, slab, sphere, until
from published.physics_exact import plank
from published.physics_materials import gel, mousse

BAND = 0.10
DIMENSIONS = {Form.SLAB: 1.0, Form.CYLINDER: 2.0, Form.SPHERE: 3.0}
BODIES = {Form.SLAB: slab, Form.CYLINDER: cylinder, Form.SPHERE: sphere}

# half, coefficient, start, air, end [m, W/(m2 K), °C]; Pham, Cleland and Earle, kernel [s]
GEL = [
    (Form.SLAB, 0.025, 30, 20, -30, -10, 10565, 9755, 10181.7),
    (Form.SLAB, 0.05, 30, 20, -30, -18, 29122, None, 26860.7),
    (Form.CYLINDER, 0.05, 30, 20, -30, -10, 12522, 12733, 12028.5),
    (Form.SPHERE, 0.05, 30, 20, -30, -10, 8348, 8811, 8128.2),
    (Form.SPHERE, 0.05, 60, 10, -30, -10, 5070, 5115, 4998.9),
]


def tylose(coldest: float) -> FreezingFood:
    """The gel, with the latent heat that it gives off down to a temperature. [°C]"""
    return FreezingFood(
        freezing_point=ZERO - 0.6,
        warm_heat=3.71e6,
        cold_heat=1.90e6,
        latent=209e6 * (1.0 - 0.6 / -coldest),
        heat_to_ten=209e6 * (1.0 - 0.6 / 10.0) + 1.90e6 * 9.4,
        warm_conductivity=0.55,
        cold_conductivity=1.65,
    )


def foam() -> FreezingFood:
    """The mousse, with the heat of all its water that freezes."""
    return FreezingFood(
        freezing_point=ZERO - 3.0,
        warm_heat=600 * 3097.774,
        cold_heat=600 * 2117.0,
        latent=600 * 0.534 * 333600.0,
        heat_to_ten=600 * (0.534 * 333600.0 * 0.7 + 2117.0 * 7.0),
        warm_conductivity=0.23,
        cold_conductivity=0.53,
    )


@pytest.mark.parametrize("case", GEL, ids=str)
def test_the_gel_freezes_as_both_formulas_say(case: tuple[float, ...]) -> None:
    form, half, h, start, around, end, by_pham, by_cleland, by_kernel = case
    assert isinstance(form, Form)
    kelvin = {"start": start + ZERO, "air": around + ZERO, "end": end + ZERO}
    food = tylose(end)
    found = pham_time(DIMENSIONS[form], half, h, food, **kelvin)
    assert found == pytest.approx(by_pham, abs=0.5)
    other = cleland_earle_time(form, half, h, food, **kelvin)
    if by_cleland is not None:
        assert other == pytest.approx(by_cleland, abs=0.5)
    body = BODIES[form](gel(), half, 50)
    stages = [until("centre", end, True, skin=air(around, h))]
    history = run(body, {"body": start + ZERO}, stages, {"centre": (0.0, 0.0)})
    assert history.end == pytest.approx(by_kernel, rel=2e-3)
    assert found == pytest.approx(history.end, rel=BAND)
    assert other == pytest.approx(history.end, rel=BAND)


def test_the_gel_thaws_as_clelands_formula_says() -> None:
    """With all latent heat counted the formula's own number; counted down to -10 °C, its band."""
    way = {"start": ZERO - 20.0, "air": ZERO + 10.0}
    whole = tylose(-1e9)
    all_of_it = FreezingFood(
        freezing_point=whole.freezing_point,
        warm_heat=whole.warm_heat,
        cold_heat=whole.cold_heat,
        latent=whole.latent,
        heat_to_ten=209e6 + 1.90e6 * 9.4,
        warm_conductivity=0.55,
        cold_conductivity=1.65,
    )
    assert cleland_thawing_time(1.0, 0.025, 30.0, all_of_it, **way) == pytest.approx(24100, abs=0.5)
    body = slab(gel(), 0.025, 50)
    stages = [until("centre", 0.0, False, skin=air(10.0, 30.0))]
    history = run(body, {"body": ZERO - 20.0}, stages, {"centre": (0.0, 0.0)})
    assert cleland_thawing_time(1.0, 0.025, 30.0, whole, **way) == pytest.approx(
        history.end, rel=BAND
    )


def test_the_mousse_freezes_as_phams_formula_says() -> None:
    """Hemisphere on an insulated base: 21 606 s by the formula, 21 405.3 s by the other solver."""
    found = pham_time(3.0, 0.05, 10.0, foam(), start=ZERO + 10, air=ZERO - 20, end=ZERO - 15)
    assert found == pytest.approx(21606, abs=0.5)
    body = sphere(mousse(), 0.05, 50)
    stages = [until("centre", -15.0, True, skin=air(-20.0, 10.0))]
    history = run(body, {"body": ZERO + 10.0}, stages, {"centre": (0.0, 0.0)})
    assert found == pytest.approx(history.end, rel=BAND)


def test_a_mousse_in_a_blast_of_minus_35_lies_beyond_phams_range() -> None:
    with pytest.raises(OutsideRange, match="Stefan"):
        pham_time(3.0, 0.05, 25.0, foam(), start=ZERO + 10, air=ZERO - 35, end=ZERO - 18)


def test_phams_printed_sphere() -> None:
    """ashrae_refrigeration's kind: 7 cm, 1.04 h; worked out to 3743.2 s."""
    food = FreezingFood(
        freezing_point=ZERO - 1.25,
        warm_heat=1000 * 3600.0,
        cold_heat=950 * 1800.0,
        latent=950 * 0.75 * 333.2e3,
        heat_to_ten=950 * (0.75 * 333.2e3 + 1800.0 * 8.75),
        warm_conductivity=0.5,
        cold_conductivity=1.2,
    )
    time = pham_time(3.0, 0.035, 50.0, food, start=ZERO + 10, air=ZERO - 40, end=ZERO - 18)
    assert time == pytest.approx(3743.2, rel=1e-4)
    assert time / 3600.0 == pytest.approx(1.04, abs=0.005)


def test_phams_printed_slab_and_planks() -> None:
    """Public check of a refrigeration load: 10 cm, Plank 7.86 h, Pham 11.48 h."""
    coefficient = 1.0 / (1.0 / 20.0 + 0.01)
    food = FreezingFood(
        freezing_point=ZERO - 1.0,
        warm_heat=1050 * 3349.0,
        cold_heat=1000 * 1800.0,
        latent=1000 * 247e3,
        heat_to_ten=1000 * (247e3 + 1800.0 * 9.0),
        warm_conductivity=0.5,
        cold_conductivity=1.4,
    )
    time = pham_time(1.0, 0.05, coefficient, food, start=ZERO + 5, air=ZERO - 35, end=ZERO - 18)
    assert time / 3600.0 == pytest.approx(11.48, abs=0.005)
    bare = plank("slab", 0.10, 1000, 247e3, 1.4, coefficient, 34.0)
    assert bare / 3600.0 == pytest.approx(7.86, abs=0.005)
    assert time > bare


@pytest.mark.parametrize(("form", "shape"), [(f, f.value) for f in Form])
def test_phams_formula_is_planks_where_only_latent_heat_counts(form: Form, shape: str) -> None:
    """At the low end of its Stefan number; the rest are its sensible heats and its mean point."""
    food = FreezingFood(
        freezing_point=ZERO - 1.0,
        warm_heat=1.7e6,
        cold_heat=1.7e6,
        latent=3.34e8,
        heat_to_ten=3.5e8,
        warm_conductivity=0.55,
        cold_conductivity=2.2,
    )
    way = {"start": ZERO + 5.0, "air": ZERO - 24.0, "end": ZERO - 5.0}
    found = pham_time(DIMENSIONS[form], 0.05, 20.0, food, **way)
    middle = 1.8 + 0.263 * -5.0 + 0.105 * -24.0
    bare = plank(shape, 0.1, 1.0, 3.34e8, 2.2, 20.0, middle + 24.0)
    sensible = (5.0 - middle) * 1.7e6 / ((5.0 + middle) / 2.0 + 24.0)
    sensible += 1.7e6 * (middle + 5.0) / (middle + 24.0)
    assert found == pytest.approx(bare * (1.0 + sensible / (3.34e8 / (middle + 24.0))), rel=1e-12)
