"""Distances from the wall: they change no faster than a point moves, and agree with the surface."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.shapes import Cylinder, Floats, Solid, gap_between, thinnest_wall, volume_within
from properties.strategies_shapes import BOXES, ELLIPSOIDS, LOGS, PLAIN, ROUND


def around(solid: Solid, count: int = 60) -> Floats:
    """Points in and about a solid."""
    box = np.array([solid.length, solid.width, solid.height])
    spread = np.random.default_rng(2).uniform(-0.7, 0.7, (count, 3))
    return spread * box + (0.0, 0.0, solid.height / 2)


def spacing_for(solid: Solid) -> float:
    """A spacing that gives some thousand points."""
    return max(float(np.sqrt(solid.wall_area / 800)), max(solid.length, solid.height) / 200)


@given(PLAIN)
def test_clearance_is_a_number_and_changes_no_faster_than_a_point_moves(solid: Solid) -> None:
    points = around(solid)
    steps = np.random.default_rng(3).normal(0.0, 0.05 * solid.height, points.shape)
    here, there = solid.clearance(points), solid.clearance(points + steps)
    assert np.all(np.isfinite(here)) and here.shape == (len(points),)
    scale = 1e-8 * (solid.length + solid.height)
    below = points[:, 2] + np.maximum(steps[:, 2], 0.0) <= solid.height
    moved = np.linalg.norm(steps, axis=1)
    assert np.all((np.abs(there - here) <= moved + scale)[below])


@settings(max_examples=60)
@given(PLAIN)
def test_the_surface_lies_on_the_wall_or_in_the_opening(solid: Solid) -> None:
    points = solid.surface(spacing_for(solid))
    in_opening = points[:, 2] >= solid.height * (1 - 1e-12)
    scale = 1e-8 * (solid.length + solid.height)
    assert np.all(np.abs(solid.clearance(points[~in_opening])) <= scale)
    assert np.all(solid.clearance(points[in_opening]) >= -scale)
    assert points[:, 2].min() == pytest.approx(0.0, abs=scale)
    assert points[:, 2].max() == pytest.approx(solid.height, abs=scale)


@settings(max_examples=60)
@given(st.one_of(ROUND, LOGS, BOXES, ELLIPSOIDS))
def test_clearance_agrees_with_the_nearest_surface_point(solid: Solid) -> None:
    spacing = spacing_for(solid)
    wall = solid.surface(spacing)
    closed = np.isclose(solid.clearance(wall), 0.0, atol=1e-8 * (solid.length + solid.height))
    wall = wall[closed]
    points = around(solid)
    points = points[(points[:, 2] < solid.height) & (solid.clearance(points) > 0.0)]
    if not len(points):
        return
    sampled = np.linalg.norm(points[:, None, :] - wall, axis=2).min(axis=1)
    exact = solid.clearance(points)
    assert np.all(exact <= sampled + 1e-9)
    assert np.all(sampled <= exact + spacing)


@settings(max_examples=60)
@given(st.one_of(ROUND, LOGS, BOXES, ELLIPSOIDS), st.floats(0.3, 0.9))
def test_a_smaller_copy_with_room_below_keeps_off_the_wall(solid: Solid, factor: float) -> None:
    copy = solid.scaled(factor)
    points = copy.surface(spacing_for(copy))
    middle = 0.5 * solid.height * (1 - factor)
    shrunk = points + (0.0, 0.0, middle)
    walls = solid.clearance(shrunk)
    assert np.all(np.isfinite(walls))
    radial = solid.plan(solid.height / 2)
    if len(radial) == 1 and _widens_upward(solid):
        assert walls.min() > 0.0


def _widens_upward(solid: Solid) -> bool:
    """Whether the body is convex from its closed end to its rim, without bulge."""
    areas = np.array([solid.area_at(share * solid.height) for share in np.linspace(0, 1, 9)])
    roots = np.sqrt(areas)
    return bool(np.all(np.diff(roots) >= -1e-9) and np.all(np.diff(roots, 2) <= 1e-9))


@settings(max_examples=30)
@given(st.one_of(ROUND, LOGS, BOXES), st.floats(0.2, 0.6), st.booleans())
def test_an_insert_turned_over_keeps_its_volume(solid: Solid, part: float, turned: bool) -> None:
    insert = solid.scaled(0.5)
    cut = part * insert.height
    lower = volume_within(insert, 0.01, turned, 0.0, 0.01 + cut)
    upper = volume_within(insert, 0.01, turned, 0.01 + cut, 10.0)
    assert lower + upper == pytest.approx(insert.volume, rel=1e-9)
    assert min(lower, upper) >= 0.0


@settings(max_examples=30)
@given(ROUND, st.floats(0.0, 0.5))
def test_the_gap_between_two_inserts_is_the_same_both_ways(solid: Solid, away: float) -> None:
    other, spacing = solid.scaled(0.5), spacing_for(solid)
    at = (solid.length * 0.75 + away, 0.0)
    one_way = gap_between(solid, 0.0, (0.0, 0.0), other, 0.0, at, spacing=spacing)
    back = gap_between(other, 0.0, at, solid, 0.0, (0.0, 0.0), spacing=spacing)
    assert one_way == pytest.approx(back, abs=1e-12)
    assert one_way >= away - spacing


@settings(max_examples=30)
@given(ROUND, st.floats(0.001, 0.05))
def test_raising_an_insert_in_an_upright_wall_changes_nothing_at_the_side(
    solid: Solid, lift: float
) -> None:
    cavity = Cylinder(diameter=2 * solid.length, height=8 * solid.height + solid.length)
    start = solid.length
    spacing = spacing_for(solid)
    low = thinnest_wall(cavity, solid, level=start, spacing=spacing)
    high = thinnest_wall(cavity, solid, level=start + min(lift, solid.height), spacing=spacing)
    assert low.towards == "side"
    assert low.thinnest == pytest.approx(solid.length / 2, rel=1e-6)
    assert high.thinnest == pytest.approx(low.thinnest, rel=1e-6)
