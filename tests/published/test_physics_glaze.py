"""Draining films against closed laws and a published coating experiment."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad

from entremetry.physics.glaze_film import (
    film_thickness,
    held_thickness,
    pole_thickness,
    profile,
    wall_thickness,
)

G = 4e-4  # the numbers were worked with g = 9.81, we have the standard 9.80665


@pytest.mark.parametrize(
    ("seconds", "millimetres"),
    [(10, 1.49279), (30, 0.88867), (60, 0.63341), (120, 0.44969), (300, 0.28510)],
)
def test_pole_of_a_dome(seconds: float, millimetres: float) -> None:
    """5 Pa s, 1250 kg/m3, R 8 cm, 5 mm at first: h0 / sqrt(1 + 4 rho g h0^2 t / (3 mu R))."""
    found = pole_thickness(5e-3, seconds / 5.0, 1250.0, 0.08)
    assert found * 1e3 == pytest.approx(millimetres, rel=G)


@pytest.mark.parametrize(
    ("degrees", "ratio"),
    [(30, 1.028073), (45, 1.065122), (60, 1.121033), (75, 1.200897), (90, 1.313293)],
)
def test_late_profile(degrees: float, ratio: float) -> None:
    """Similarity solution; the integral once more by another rule."""
    a = np.radians(degrees)
    assert profile(float(a)) == pytest.approx(ratio, rel=2e-6)
    integral = quad(lambda s: np.sin(s) ** (1 / 3), 0.0, a)[0]
    assert profile(float(a)) == pytest.approx(
        np.sqrt(4 / 3 * integral) * np.sin(a) ** (-2 / 3), rel=1e-5
    )


def test_small_angles_follow_lee() -> None:
    """Lee et al. (2016): thickness over that at the pole is 1 + a^2 / 10."""
    assert profile(0.2) == pytest.approx(1.0 + 0.004, abs=2e-5)


def test_equator_after_a_minute() -> None:
    """Lubrication equation solved from an even 5 mm film: 0.8320 mm at 60 s."""
    found = film_thickness(np.pi / 2, 5e-3, 12.0, 1250.0, 0.08)
    assert found * 1e3 == pytest.approx(0.8320, rel=0.01)


def test_even_film_drains_as_the_lubrication_equation_says() -> None:
    """Method of characteristics, written apart: d(h sin)/... integrated along the falling film.

    On a sphere h_t + (rho g / 3 mu R sin a) (h^3 sin^2 a)_a = 0 from an even film.
    """
    rho, mu, radius, start, time = 1250.0, 5.0, 0.08, 5e-3, 60.0
    k = rho * 9.80665 / (3.0 * mu * radius)
    cells = 600
    edges = np.linspace(0.0, np.pi / 2, cells + 1)
    middle = 0.5 * (edges[1:] + edges[:-1])
    width = np.cos(edges[:-1]) - np.cos(edges[1:])
    h = np.full(cells, start)
    clock = 0.0
    while clock < time:
        step = min(0.4 * (edges[1] / (3.0 * k * h.max() ** 2)), time - clock)
        flux = k * np.concatenate([[0.0], h**3]) * np.sin(edges) ** 2
        h = h - step * np.diff(flux) / width
        clock += step
    for angle in (0.0, np.pi / 6, np.pi / 3, np.pi / 2):
        found = film_thickness(float(angle), start, time / mu, rho, radius)
        assert found == pytest.approx(float(np.interp(angle, middle, h)), rel=0.015)


def test_upright_wall() -> None:
    """Jeffreys: 5 cm below the edge after 60 s, 0.58291 mm."""
    assert wall_thickness(0.05, 12.0, 1250.0) * 1e3 == pytest.approx(0.58291, rel=G)


def test_curing_film_forgets_what_was_poured() -> None:
    """mu = exp(t / 20 s) Pa s: final 0.49462 mm on R 8 cm, 0.39103 mm on 5 cm."""
    assert pole_thickness(1.0, 20.0, 1250.0, 0.08) * 1e3 == pytest.approx(0.49462, rel=G)
    assert pole_thickness(1.0, 20.0, 1250.0, 0.05) * 1e3 == pytest.approx(0.39103, rel=G)


@pytest.mark.parametrize(("radius", "micrometres"), [(0.038, 217.0), (0.020, 157.4)])
def test_silicone_shells(radius: float, micrometres: float) -> None:
    """Lee et al. (2016): 7.1 Pa s, growth 2.06e-3 1/s to 574 s, then power 5.3."""
    mu, beta, tau, power = 7.1, 2.06e-3, 574.0, 5.3
    first = (1.0 - np.exp(-beta * tau)) / beta
    second = np.exp(-beta * tau) * tau / (power - 1.0)
    assert first + second == pytest.approx(377.55, abs=0.5)
    found = pole_thickness(1.0, float(first + second) / mu, 1160.0, radius)
    assert found * 1e6 == pytest.approx(micrometres, rel=0.01)


def test_yield_stress_on_a_wall() -> None:
    """10 Pa holds 0.81549 mm of 1250 kg/m3."""
    assert held_thickness(10.0, 1250.0) * 1e3 == pytest.approx(0.81549, rel=G)
