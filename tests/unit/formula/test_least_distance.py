"""The exact solver that stands behind the general one."""

from __future__ import annotations

import numpy as np
import pytest

from entremetry.formula._conflict import smallest_conflict
from entremetry.formula._demand import Demand, demand
from entremetry.formula._least_distance import least_distance
from entremetry.formula._model import Model, Row, limits, model
from unit.formula.formulas import MOUSSE, keep, problem, value, wish

FREE: list[tuple[float, float | None]] = [(-1.0, None), (-1.0, None)]
PLANE = Model(start=np.ones(2), state=np.zeros(21), per_x=np.zeros((21, 2)))


def straight(*rows: tuple[float, float, float]) -> list[Demand]:
    """Demands a x + b y + c >= 0."""
    return [Demand(words="", rows=(Row(slope=np.array([a, b]), level=c),)) for a, b, c in rows]


def test_the_nearest_point_of_a_half_plane_is_its_foot() -> None:
    found = least_distance(PLANE, straight((1.0, 1.0, -2.0)), FREE, np.zeros(2))
    assert found == pytest.approx([1.0, 1.0])


def test_a_point_that_is_inside_already_is_the_answer() -> None:
    found = least_distance(PLANE, straight((1.0, 1.0, 2.0)), FREE, np.zeros(2))
    assert found == pytest.approx([0.0, 0.0], abs=1e-12)


def test_the_corner_of_two_demands() -> None:
    found = least_distance(PLANE, straight((1.0, 0.0, -3.0), (0.0, 1.0, -4.0)), FREE, np.zeros(2))
    assert found == pytest.approx([3.0, 4.0])


def test_what_excludes_each_other_has_no_answer() -> None:
    demands = straight((1.0, 0.0, -3.0), (-1.0, 0.0, 2.0))
    assert least_distance(PLANE, demands, FREE, np.zeros(2)) is None


def test_ends_hold() -> None:
    ends: list[tuple[float, float | None]] = [(-1.0, 0.5), (-1.0, None)]
    found = least_distance(PLANE, straight((1.0, 1.0, -2.0)), ends, np.zeros(2))
    assert found == pytest.approx([0.5, 1.5])


def test_a_curved_demand_is_met() -> None:
    cold = value("freezing_point", MOUSSE) - 1.0
    asked = problem(MOUSSE, [keep("yield", MOUSSE), wish("freezing_point", cold, 0.1)])
    built = model(asked)
    demands = [demand(built, each) for each in asked.wishes]
    found = least_distance(built, demands, limits(asked.lines), np.zeros(len(MOUSSE)))
    assert found is not None
    masses = [float(mass) for mass in built.masses(found)]
    assert value("freezing_point", MOUSSE, masses) == pytest.approx(cold + 0.1, abs=1e-3)


@pytest.mark.parametrize(
    ("conflicts", "smallest"),
    [
        ([{0, 1, 2}, {3, 4}], {3, 4}),
        ([{2}, {0, 1}], {2}),
        ([{0, 1, 2, 3, 4}], {0, 1, 2, 3, 4}),
        ([{0, 1, 2}, {1, 2, 3}, {0, 4}], {0, 4}),
    ],
)
def test_the_smallest_conflict_is_found_not_only_one_that_cannot_shrink(
    conflicts: list[set[int]], smallest: set[int]
) -> None:
    found = smallest_conflict(5, lambda chosen: not any(c <= set(chosen) for c in conflicts))
    assert set(found) == smallest
