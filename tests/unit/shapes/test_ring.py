"""Rings with a hole."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import OutsideRange, UnknownName
from entremetry.shapes import Ring, half_torus


def test_a_half_torus_is_as_high_as_half_its_band() -> None:
    assert half_torus(0.18, 0.06).height == pytest.approx(0.03)


def test_a_ring_higher_than_its_round_has_upright_walls() -> None:
    tall = Ring(diameter=0.18, hole_diameter=0.06, height=0.05)
    walls = math.pi * (0.09**2 - 0.03**2) * 0.02
    assert tall.volume == pytest.approx(half_torus(0.18, 0.06).volume + walls, rel=1e-12)


def test_a_lower_ring_is_a_flatter_arc() -> None:
    low = Ring(diameter=0.18, hole_diameter=0.06, height=0.02)
    radius = (0.03**2 + 0.02**2) / 0.04
    part = math.acos((radius - 0.02) / radius)
    segment = radius**2 * part - (radius - 0.02) * 0.03
    assert low.volume == pytest.approx(2 * math.pi * 0.06 * segment, rel=1e-12)


def test_a_ring_shows_two_outlines_in_its_section_and_a_hole_in_its_plan() -> None:
    ring = Ring(diameter=0.18, hole_diameter=0.06, height=0.04, cross_section="flat")
    right, left = ring.section()
    assert right[:, 0].min() == pytest.approx(0.03) and left[:, 0].max() == pytest.approx(-0.03)
    outer, hole = ring.plan(0.02)
    assert outer.max() == pytest.approx(0.09) and hole.max() == pytest.approx(0.03)


def test_the_hole_of_a_ring_is_outside_it() -> None:
    ring = Ring(diameter=0.18, hole_diameter=0.06, height=0.04, cross_section="flat")
    points = np.array([(0.0, 0.0, 0.02), (0.06, 0.0, 0.035), (0.035, 0.0, 0.02)])
    assert ring.clearance(points) == pytest.approx([-0.03, 0.03, 0.005])


@pytest.mark.parametrize("hole", [0.18, 0.2])
def test_a_hole_as_wide_as_the_ring_is_refused(hole: float) -> None:
    with pytest.raises(OutsideRange, match="diameter of the hole: found .* less than the ring"):
        Ring(diameter=0.18, hole_diameter=hole, height=0.03)


def test_the_opening_of_a_ring_is_sampled_between_its_rims() -> None:
    points = half_torus(0.18, 0.06).surface(0.003)
    face = points[points[:, 2] == 0.03]
    radii = np.hypot(face[:, 0], face[:, 1])
    assert radii.min() == pytest.approx(0.03) and radii.max() == pytest.approx(0.09)
    assert np.max(np.diff(np.unique(np.round(radii, 9)))) <= 0.003 + 1e-9


def test_an_unknown_section_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="did you mean half-round"):
        Ring(diameter=0.18, hole_diameter=0.06, height=0.03, cross_section="halfround")  # type: ignore[arg-type]
