"""Resistance between two regions, against exact and independent numbers."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest

from entremetry.errors import OutsideRange, UnknownName
from entremetry.physics.conduction import (
    Block,
    Body,
    Contact,
    Course,
    History,
    Region,
    Stage,
    Surroundings,
    Variation,
    Wall,
    arc,
    box_body,
    outline,
    plane_body,
    rectangle,
    round_body,
    run,
)
from entremetry.physics.material import constant_material
from published.physics_materials import mousse

ZERO = 273.15
GAP = 0.02  # m2 K/W
INNER, OUTER = (0.5, 3.9e6), (0.25, 1.65e6)  # W/(m K), J/(m3 K)
AT, SIZE, FILM = 0.02, 0.05, 10.0  # m, m, W/(m2 K)


def gap(resistance: float = GAP) -> tuple[Contact, ...]:
    return (Contact(between=("core", "body"), resistance=resistance),)


def layers(cells: int, contacts: Sequence[Contact]) -> Body:
    """Column of two slabs, the core at the bottom."""
    wide = SIZE / cells
    edge = outline(
        ("bottom", [(0, 0), (wide, 0)]),
        ("side", [(wide, 0), (wide, SIZE)]),
        ("top", [(wide, SIZE), (0, SIZE)]),
        ("side", [(0, SIZE), (0, 0)]),
    )
    core = Region(
        name="core", material=constant_material("core", *INNER), points=rectangle(0, 0, wide, AT)
    )
    return plane_body(edge, constant_material("shell", *OUTER), (core,), wide, contacts)


def ball(cells: int, contacts: Sequence[Contact]) -> Body:
    """Core and shell, a hemisphere on an insulated base."""
    edge = outline(
        ("base", [(0, 0), (SIZE, 0)]),
        ("top", arc((0, 0), SIZE, 0, np.pi / 2)),
        ("axis", [(0, SIZE), (0, 0)]),
    )
    core = Region(
        name="core",
        material=constant_material("core", *INNER),
        points=np.vstack([[[0.0, 0.0]], arc((0, 0), AT, 0, np.pi / 2)]),
    )
    return round_body(edge, constant_material("shell", *OUTER), (core,), SIZE / cells, contacts)


def radial(
    power: int, time: float, resistance: float, count: int = 200, size: float = 1.0
) -> np.ndarray:
    """Temperatures above the air in many cells of core and shell, by eigenvalues.

    A slab is of power 0, a sphere of power 2; core at -22, shell at 16 in the beginning.
    """
    edges = np.linspace(0.0, size * SIZE, count + 1)
    middles = 0.5 * (edges[1:] + edges[:-1])
    inside = middles < size * AT
    k, c = (np.where(inside, *pair) for pair in zip(INNER, OUTER, strict=True))
    halves = 0.5 * (size * SIZE / count) / k
    between = halves[:-1] + halves[1:]
    between[np.flatnonzero(inside)[-1]] += resistance
    links = edges[1:-1] ** power / between
    outer = edges[-1] ** power / (halves[-1] + 1.0 / FILM)
    matrix = np.diag(links, 1) + np.diag(links, -1)
    matrix -= np.diag(np.append(links, outer) + np.append(0.0, links))
    heats = c * np.diff(edges ** (power + 1)) / (power + 1)
    scale = 1.0 / np.sqrt(heats)
    values, vectors = np.linalg.eigh(scale[:, None] * matrix * scale)
    start = np.where(inside, -22.0, 16.0) / scale
    return scale * (vectors @ (np.exp(values * time) * (vectors.T @ start)))


def warmed(body: Body, course: Course | None = None) -> History:
    stage = Stage(
        surroundings={"top": Surroundings(temperature=ZERO + 4.0, coefficient=FILM)},
        duration=1800.0,
    )
    begin = {"body": ZERO + 20.0, "core": ZERO - 18.0}
    points = {"heart": (0.0, 0.0), "shell": (0.0, 0.035)}
    return run(body, begin, (stage,), points, course or Course(accuracy=5e-4))


@pytest.mark.parametrize("resistance", [0.0, 1e-3, GAP, 1.0])
def test_two_slabs_pass_what_their_resistances_let_through(resistance: float) -> None:
    """Steady state, exact: 20 K over 1/h + d/k + R + d/k + 1/h."""
    stage = Stage(
        surroundings={
            "bottom": Surroundings(temperature=ZERO, coefficient=20.0),
            "top": Surroundings(temperature=ZERO + 20.0, coefficient=30.0),
        },
        duration=1e5,
    )
    whole = 1 / 20.0 + AT / INNER[0] + resistance + (SIZE - AT) / OUTER[0] + 1 / 30.0
    history = run(layers(10, gap(resistance)), {"body": ZERO + 10.0}, (stage,), None, Course())
    assert (history.skin["bottom"] - ZERO) * 20.0 == pytest.approx(20.0 / whole, rel=1e-6)
    assert (ZERO + 20.0 - history.skin["top"]) * 30.0 == pytest.approx(20.0 / whole, rel=1e-6)
    assert history.balance_error < 1e-12


def test_slabs_with_a_gap_converge_at_second_order() -> None:
    """Heart after half an hour, against an independent solution by eigenvalues, and its limit."""
    fine, finer = (float(radial(0, 1800.0, GAP, n)[0]) for n in (200, 400))
    exact = finer + (finer - fine) / 3.0
    errors = [
        float(warmed(layers(n, gap())).curve("heart")[-1]) - ZERO - 4.0 - exact
        for n in (10, 20, 40)
    ]
    orders = [np.log2(abs(a / b)) for a, b in zip(errors, errors[1:], strict=False)]
    assert orders == pytest.approx([2.0, 2.0], abs=0.25)
    assert abs(errors[-1]) < 0.02
    perfect = float(warmed(layers(40, ())).curve("heart")[-1]) - ZERO - 4.0
    assert perfect - exact > 1.0


def test_a_core_in_a_gap_stays_cold_as_long_as_it_should() -> None:
    """The gap lies across the grid here: first order, 3 % of what the gap does at 1 mm."""
    exact = float(radial(2, 1800.0, GAP)[0])
    without = float(radial(2, 1800.0, 0.0)[0])
    found = []
    for cells in (25, 50):
        history = warmed(ball(cells, gap()), Course(accuracy=2e-3))
        assert history.balance_error < 1e-12
        found.append(float(history.curve("heart")[-1]) - ZERO - 4.0)
    assert without - exact > 3.0
    assert found[1] == pytest.approx(exact, abs=0.03 * (without - exact))
    assert abs(found[1] - exact) < abs(found[0] - exact)


def test_a_gap_round_the_core_is_as_wide_as_its_surface() -> None:
    """Stairs of cells have 1.5 times a sphere's surface; the resistances make up for it."""
    body = ball(50, gap())
    surface = 2.0 * np.pi * AT**2
    assert np.sum(GAP / body.cells.resistance) == pytest.approx(surface, rel=0.02)


def test_a_base_under_a_box_has_a_gap_all_over() -> None:
    base = Block(
        name="base", material=constant_material("b", *OUTER), low=(0, 0, 0), high=(0.04, 0.03, 0.01)
    )
    contacts = (Contact(between=("body", "base"), resistance=GAP),)
    body = box_body((0.04, 0.03, 0.03), constant_material("a", *INNER), (base,), 5e-3, contacts)
    cells = body.cells
    assert set(cells.resisted_axis) == {2}
    assert np.sum(1.0 / cells.resistance) == pytest.approx(0.04 * 0.03 / GAP, rel=1e-12)


def test_a_gap_keeps_heat_while_ice_melts_and_forms() -> None:
    edge = outline(
        ("base", [(0, 0), (0.035, 0)]),
        ("top", arc((0, 0), 0.035, 0, np.pi / 2)),
        ("axis", [(0, 0.035), (0, 0)]),
    )
    core = Region(name="core", material=mousse(), points=rectangle(0, 0.004, 0.0203, 0.0172))
    body = round_body(edge, mousse(), (core,), 2e-3, gap())
    around = Surroundings(temperature=ZERO - 18.0, coefficient=20.0)
    stage = Stage(surroundings={"base": around, "top": around}, duration=2 * 3600.0)
    history = run(body, {"body": ZERO + 20.0, "core": ZERO - 12.0}, (stage,))
    assert history.balance_error < 1e-12
    assert np.isfinite(history.values).all()


def test_a_varied_size_varies_the_gaps_area() -> None:
    """A body of half the length, so varied, is as slow as one cut so."""
    small = float(radial(0, 1800.0, GAP, size=0.5)[0])
    course = Course(accuracy=2e-3, variation=Variation(size=0.5))
    found = float(warmed(layers(40, gap()), course).curve("heart")[-1]) - ZERO - 4.0
    assert found == pytest.approx(small, abs=0.02)


def test_a_layer_with_a_gap_before_it_keeps_heat_out() -> None:
    """Steady state through a wall with a contact resistance: exact."""
    wall = Wall(thickness=0.004, conductivity=0.1, heat_capacity=1e6, contact=GAP)
    stage = Stage(
        surroundings={
            "bottom": Surroundings(temperature=ZERO, coefficient=20.0),
            "top": Surroundings(temperature=ZERO + 20.0, coefficient=30.0),
        },
        duration=1e5,
        walls={"bottom": wall},
    )
    history = run(layers(10, ()), {"body": ZERO + 10.0}, (stage,))
    whole = 1 / 20.0 + 0.04 + GAP + AT / INNER[0] + (SIZE - AT) / OUTER[0] + 1 / 30.0
    assert (ZERO + 20.0 - history.skin["top"]) * 30.0 == pytest.approx(20.0 / whole, rel=1e-6)
    assert history.balance_error < 1e-12


@pytest.mark.parametrize("bad", [-1e-3, float("nan"), float("inf")])
def test_a_resistance_that_is_none_is_refused(bad: float) -> None:
    with pytest.raises(OutsideRange):
        Contact(between=("core", "body"), resistance=bad)
    with pytest.raises(OutsideRange):
        Wall(thickness=0.004, conductivity=0.1, heat_capacity=1e6, contact=bad)


def test_a_contact_is_between_two_regions_that_are_there() -> None:
    with pytest.raises(OutsideRange):
        Contact(between=("core", "core"), resistance=GAP)
    with pytest.raises(UnknownName, match="core"):
        layers(10, (Contact(between=("cord", "body"), resistance=GAP),))
