"""The American serving."""

from __future__ import annotations

import pytest

from entremetry.labels.serving import metric_mass, serving


def test_a_piece_for_one_is_one_serving() -> None:
    found = serving(0.111, 1, one="piece")
    assert (found.household, found.mass, found.per_container) == ("1 piece", 0.111, 1)


def test_a_cake_is_divided_among_those_it_serves() -> None:
    found = serving(1.2, 8, one="piece")
    assert (found.household, found.per_container, found.note) == ("1/8 piece", 8, "")
    assert found.mass == pytest.approx(0.15)


def test_a_seventh_is_no_fraction_of_a_label() -> None:
    assert "1/7" in serving(1.2, 7, one="piece").note


@pytest.mark.parametrize(
    ("kilograms", "text"),
    [(0.0964, "96 g"), (0.0965, "97 g"), (0.0031, "3 g"), (0.0034, "3.5 g"), (0.00144, "1.4 g")],
)
def test_the_metric_mass_is_rounded_by_its_size(kilograms: float, text: str) -> None:
    assert metric_mass(kilograms) == text
