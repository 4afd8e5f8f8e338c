"""The conduction kernel against exact solutions and the reference set."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from entremetry.physics.conduction.box_body import box_body
from entremetry.physics.conduction.history import History
from entremetry.physics.conduction.outline import Region, arc
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.material import constant_material
from published.physics_bodies import (
    ZERO,
    air,
    cylinder,
    lasting,
    short_cylinder,
    slab,
    sphere,
    until,
)
from published.physics_exact import cooled, layered_sphere, neumann, plank
from published.physics_materials import gel, mousse, straight

HERE = Path(__file__).parent
FINE = Course(accuracy=0.002)


def centre_rows() -> list[dict[str, str]]:
    with (HERE / "carslaw_jaeger_1959_centre.csv").open(newline="") as file:
        return list(csv.DictReader(file))


@cache
def cooling(shape: str, biot: float) -> History:
    """100 cells, half-size 0.05 m, alpha 1.25e-7: 100 degrees fall to 0."""
    size, k, heat = 0.05, 0.25, 2e6
    made = constant_material("test", k, heat)
    body = {"slab": slab, "cylinder": cylinder, "sphere": sphere}[shape](made, size, 100)
    stage = lasting(size**2 * heat / k, skin=air(0.0, biot * k / size))
    keep = [fo * size**2 * heat / k for fo in (0.1, 0.3, 0.5, 1.0)]
    course = Course(accuracy=0.004, keep=keep)
    return run(body, {"body": 40.0 + ZERO}, [stage], {"centre": (0.0, 0.0)}, course)


@pytest.mark.parametrize(
    "row", centre_rows(), ids=lambda r: f"{r['shape']}-{r['biot']}-{r['fourier']}"
)
def test_cooling_of_simple_shapes(row: dict[str, str]) -> None:
    biot, fourier = float(row["biot"]), float(row["fourier"])
    exact = cooled(row["shape"], biot, fourier)
    assert exact == pytest.approx(float(row["centre"]), rel=2e-6, abs=1e-6)
    history = cooling(row["shape"], biot)
    time = fourier * 0.05**2 * 2e6 / 0.25
    assert (history.at("centre", time) - ZERO) / 40.0 == pytest.approx(exact, abs=1e-4)
    mean = (history.at("mean", time) - ZERO) / 40.0
    assert mean == pytest.approx(float(row["mean"]), abs=2e-4)
    assert history.balance_error < 1e-12


TEST_BODY = constant_material("mousse-like", 0.25, 550.0 * 3000.0)


def test_hemisphere_on_an_insulated_base_is_a_sphere() -> None:
    body = sphere(TEST_BODY, 0.05, 50)
    course = Course(accuracy=0.002, keep=(1800.0, 3600.0, 7200.0))
    points = {"centre": (0.0, 0.0), "half": (0.025, 0.0)}
    stages = [until("centre", 5.0, skin=air(4.0, 10.0))]
    history = run(body, {"body": 20.0 + ZERO}, stages, points, course)
    assert history.end == pytest.approx(12684.8, rel=3e-3)
    for time, centre, half in (
        (1800.0, 18.2328, 16.4179),
        (3600.0, 13.5790, 12.0555),
        (7200.0, 7.92779, 7.28820),
    ):
        assert history.at("centre", time) - ZERO == pytest.approx(centre, abs=0.02)
        assert history.at("half", time) - ZERO == pytest.approx(half, abs=0.02)


def order(errors: list[float]) -> list[float]:
    return [float(np.log2(abs(a / b))) for a, b in zip(errors, errors[1:], strict=False)]


def test_the_sphere_converges_at_second_order() -> None:
    exact = 4.0 + 16.0 * cooled("sphere", 2.0, 0.25 / (550 * 3000) * 3600 / 0.05**2)
    errors = []
    for cells in (12, 24, 48):
        body = sphere(TEST_BODY, 0.05, cells)
        stages = [lasting(3600.0, skin=air(4.0, 10.0))]
        centre = {"centre": (0.0, 0.0)}
        history = run(body, {"body": 20 + ZERO}, stages, centre, Course(accuracy=5e-4))
        errors.append(float(history.curve("centre")[-1]) - ZERO - exact)
    assert order(errors) == pytest.approx([2.0, 2.0], abs=0.25)
    assert abs(errors[-1]) < 2e-3


def test_a_cylinder_on_a_shelf_converges_at_second_order() -> None:
    """With corners and two coefficients there is no short series: grids against each other."""
    means = []
    for spacing in (5e-3, 2.5e-3, 1.25e-3, 0.625e-3):
        body = short_cylinder(TEST_BODY, 0.04, 0.05, spacing)
        stages = [lasting(1800.0, base=air(4.0, 100.0), skin=air(4.0, 10.0))]
        history = run(body, {"body": 20 + ZERO}, stages, None, Course(accuracy=5e-4))
        means.append(float(history.curve("mean")[-1]))
    assert order(list(np.diff(means))) == pytest.approx([2.0, 2.0], abs=0.1)


def test_a_cube_is_the_product_of_three_slabs() -> None:
    size, alpha = 0.05, 0.25 / (550 * 3000)
    exact = 4.0 + 16.0 * cooled("slab", 2.0, alpha * 3600 / size**2) ** 3
    errors = []
    for spacing in (5e-3, 2.5e-3, 1.25e-3):
        body = box_body((size, size, size), TEST_BODY, spacing=spacing)
        stages = [lasting(3600.0, right=air(4, 10), back=air(4, 10), top=air(4, 10))]
        centre = {"centre": (0.0, 0.0, 0.0)}
        history = run(body, {"body": 20 + ZERO}, stages, centre, Course(accuracy=1e-3))
        errors.append(float(history.curve("centre")[-1]) - ZERO - exact)
    assert order(errors) == pytest.approx([2.0, 2.0], abs=0.1)
    assert abs(errors[-1]) < 1e-2


CORE, SHELL = (0.02, 0.5, 3.9e6), (0.05, 0.25, 1.65e6)


def layered(start: tuple[float, float], times: tuple[float, ...]) -> History:
    core = Region(
        name="core",
        material=constant_material("core", CORE[1], CORE[2]),
        points=np.vstack([[[0.0, 0.0]], arc((0, 0), CORE[0], 0, np.pi / 2)]),
    )
    shell = constant_material("shell", SHELL[1], SHELL[2])
    body = sphere(shell, SHELL[0], 50, (core,))
    stages = [lasting(max(times), skin=air(4.0, 10.0))]
    points = {"centre": (0.0, 0.0), "shell": (0.035, 0.0)}
    begin = {"body": start[1] + ZERO, "core": start[0] + ZERO}
    return run(body, begin, stages, points, Course(accuracy=0.002, keep=times))


def test_layered_sphere() -> None:
    history = layered((20.0, 20.0), (1800.0, 3600.0, 7200.0))
    for time, centre, shell in (
        (1800.0, 18.8471, 14.6979),
        (3600.0, 14.9915, 11.1173),
        (7200.0, 9.24652, 7.30648),
    ):
        exact = 4.0 + layered_sphere(CORE, SHELL, 10.0, (16.0, 16.0), 0.0, time)
        assert exact == pytest.approx(centre, abs=1e-4)
        assert history.at("centre", time) - ZERO == pytest.approx(centre, abs=0.02)
        assert history.at("shell", time) - ZERO == pytest.approx(shell, abs=0.02)


def test_frozen_core_in_a_warm_shell() -> None:
    """Mixed starting temperatures: core at -18 °C, shell at 20 °C, air at 4 °C."""
    history = layered((-18.0, 20.0), (1800.0, 3600.0))
    for time in (1800.0, 3600.0):
        exact = 4.0 + layered_sphere(CORE, SHELL, 10.0, (-22.0, 16.0), 0.0, time, count=20)
        assert history.at("centre", time) - ZERO == pytest.approx(exact, abs=0.03)


@pytest.mark.parametrize(
    ("numbers", "front", "heat", "depths"),
    [
        (
            ((2.2, 1000, 2000), (0.6, 1000, 4200), 334e3, 0.0, 10.0, -20.0),
            27.588732e-3,
            11667.161e3,
            {5e-3: -16.319121, 10e-3: -12.649839, 20e-3: -5.391803, 40e-3: 4.551253},
        ),
        (
            ((0.8, 600, 2000), (0.3, 600, 3000), 130e3, -3.0, 15.0, -25.0),
            30.135029e-3,
            4338.065e3,
            {5e-3: -21.237585, 10e-3: -17.494707, 20e-3: -10.143891, 40e-3: 3.375374},
        ),
    ],
)
def test_neumann(
    numbers: tuple[object, ...], front: float, heat: float, depths: dict[float, float]
) -> None:
    solid, liquid, latent, melting, start, wall = numbers
    exact = neumann(*numbers, 3600.0)  # type: ignore[arg-type]
    assert exact["front"] == pytest.approx(front, rel=1e-6)
    assert exact["heat"] == pytest.approx(heat, rel=1e-6)
    rho, width = solid[1], 0.05  # type: ignore[index]
    made = straight(
        "water",
        [melting - width, melting],  # type: ignore[operator, list-item]
        [rho * solid[2], rho * latent / width + rho * solid[2], rho * liquid[2]],  # type: ignore
        [solid[0], solid[0], liquid[0]],  # type: ignore[index]
        melting,  # type: ignore[arg-type]
    )
    body = slab(made, 0.2, 200)
    points = {str(depth): (0.0, 0.2 - depth) for depth in depths}
    stages = [lasting(3600.0, skin=air(wall, 1e6))]  # type: ignore[arg-type]
    history = run(body, {"body": start + ZERO}, stages, points, Course(accuracy=0.005))  # type: ignore
    assert -history.heat / body.area("skin") == pytest.approx(heat, rel=2e-3)
    for depth, value in depths.items():
        assert exact["temperature"](depth) == pytest.approx(value, abs=1e-5)
        found = float(history.curve(str(depth))[-1]) - ZERO
        assert found == pytest.approx(value, abs=0.15)
    assert history.balance_error < 1e-12


def three_regions(cells: int) -> tuple[History, float]:
    mush = (2000.0 + 3500.0) / 2 + 250e3 / 8
    made = straight("mush", [-10.0, -2.0], [2e6, 1e3 * mush, 3.5e6], [1.5, 1.0, 0.5], -2.0)
    body = slab(made, 0.2, cells)
    points = {f"{d}": (0.0, 0.2 - d * 1e-3) for d in (5, 10, 20, 30, 40)}
    course = Course(accuracy=0.002)
    history = run(body, {"body": 10 + ZERO}, [lasting(3600.0, skin=air(-30, 1e6))], points, course)
    return history, body.area("skin")


def test_freezing_over_a_range_has_three_regions() -> None:
    """Exact similarity solution: solid below -10, mush to -2, liquid; the sharpest test of all."""
    history, area = three_regions(400)
    assert -history.heat / area == pytest.approx(9807.309e3, rel=1e-3)
    expected = {5: -25.463080, 10: -20.947108, 20: -12.060065, 30: -3.426758, 40: 1.339340}
    for depth, value in expected.items():
        found = float(history.curve(str(depth))[-1]) - ZERO
        assert found == pytest.approx(value, abs=0.03)


@pytest.mark.parametrize(
    ("shape", "expected"), [("slab", 51238.6), ("cylinder", 25619.3), ("sphere", 17079.5)]
)
def test_planks_limit(shape: str, expected: float) -> None:
    """Almost no sensible heat: 0.1 m thick, h 20, k 2.2, from 0 to -20 °C."""
    assert plank(shape, 0.1, 1000, 334000, 2.2, 20, 20) == pytest.approx(expected, rel=1e-5)
    made = straight("plank", [-0.02, 0.0], [2e4, 3.34e8 / 0.02, 2e4], [2.2, 2.2, 2.2], 0.0)
    build = {"slab": slab, "cylinder": cylinder, "sphere": sphere}[shape]
    body = build(made, 0.05, 25 if shape == "sphere" else 50)
    stages = [until("warmest", -0.1, skin=air(-20, 20))]
    history = run(body, {"body": 0.0001 + ZERO}, stages, None, Course(accuracy=0.01))
    assert history.end == pytest.approx(expected, rel=3e-3)


REFERENCE = [
    ("gel", "slab", 0.025, 30, 20, -30, -10, 10181.7),
    ("gel", "slab", 0.05, 30, 20, -30, -18, 26860.7),
    ("gel", "cylinder", 0.05, 30, 20, -30, -10, 12028.5),
    ("gel", "sphere", 0.05, 30, 20, -30, -10, 8128.2),
    ("gel", "sphere", 0.05, 60, 10, -30, -10, 4998.9),
    ("gel", "slab", 0.025, 30, -20, 10, 0, 24096.3),
    ("mousse", "sphere", 0.05, 10, 10, -20, -15, 21405.3),
    ("mousse", "sphere", 0.05, 25, 10, -35, -18, 6973.2),
    ("mousse", "sphere", 0.05, 9, -18, 4, -2, 33082.5),
    ("mousse", "sphere", 0.05, 9, -18, 4, 0, 33707.9),
]


@pytest.mark.parametrize("case", REFERENCE, ids=str)
def test_reference_set(case: tuple[str, str, float, float, float, float, float, float]) -> None:
    """Gel and mousse by an independent one-dimensional solver, converged to 0.01 %."""
    stuff, shape, half, h, start, around, stop, expected = case
    made = {"gel": gel, "mousse": mousse}[stuff]()
    body = {"slab": slab, "cylinder": cylinder, "sphere": sphere}[shape](made, half, 50)
    stages = [until("centre", stop, stop < start, skin=air(around, h))]
    history = run(body, {"body": start + ZERO}, stages, {"centre": (0.0, 0.0)})
    assert history.end == pytest.approx(expected, rel=2e-3)
    assert history.balance_error < 1e-12
