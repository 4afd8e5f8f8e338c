"""Masses in cups, spoons and things."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from entremetry.quantities import Household, Measures, MeasureWeight, Method, household
from entremetry.quantities.household import LIMIT
from entremetry.quantities.spoonfuls import spoonfuls, volume_of

SUGAR = (
    MeasureWeight(measure="cup", volume=236.588e-6, mass=0.200),
    MeasureWeight(measure="tsp", volume=4.929e-6, mass=0.0042),
)
SHEETS = (MeasureWeight(measure="sheet", volume=None, mass=0.002),)
EGGS = (MeasureWeight(measure="large egg", volume=None, mass=0.050),)
BUTTER = (
    MeasureWeight(measure="cup", volume=236.588e-6, mass=0.227),
    MeasureWeight(measure="stick", volume=None, mass=0.113),
)


def sugar(grams: float, system: str = "us") -> Household:
    return household(grams / 1000, weights=SUGAR, system=system)


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (200, "1 cup"),
        (100, "½ cup"),
        (150, "¾ cup"),
        (225, "1 cup + 2 tbsp"),
        (500, "2½ cups"),
        (50, "¼ cup"),
        (25, "2 tbsp"),
        (4.2, "1 tsp"),
        (2.1, "½ tsp"),
    ],
)
def test_the_simplest_measure_is_taken(grams: float, text: str) -> None:
    assert sugar(grams).text == text


def test_a_drift_beyond_the_limit_is_said() -> None:
    result = sugar(0.61)
    assert result.text == "about ⅛ tsp (14 % less)"
    assert result.relative_error == pytest.approx(0.525 / 0.61 - 1, abs=0.001)


def test_what_no_spoon_can_measure_is_weighed() -> None:
    assert sugar(0.2).text == "weigh: 0.20 g"


def test_cups_are_those_of_the_country() -> None:
    metric = sugar(211.3, Measures.METRIC)
    assert metric.text == "1 cup"
    assert metric.mass == pytest.approx(0.200 * 250 / 236.588)


@pytest.mark.parametrize(
    ("grams", "weights", "text"),
    [
        (4, SHEETS, "2 sheets"),
        (3, SHEETS, "1½ sheets"),
        (1, SHEETS, "½ sheet"),
        (100, EGGS, "2 large eggs"),
        (113, BUTTER, "1 stick"),
        (57, BUTTER, "½ stick"),
    ],
)
def test_things_are_counted(grams: float, weights: tuple[MeasureWeight, ...], text: str) -> None:
    result = household(grams / 1000, weights=weights, system="us")
    assert (result.text, result.method) == (text, Method.COUNTED)


def test_half_an_egg_is_weighed() -> None:
    assert household(0.075, weights=EGGS, system="us").text == "weigh: 75 g"


def test_gelatine_is_weighed_even_if_sheets_are_named() -> None:
    result = household(0.004, weights=SHEETS, system="us", weigh_only=True)
    assert (result.text, result.method) == ("2 sheets (weigh: 4.0 g)", Method.SCALES)
    assert household(0.0042, weights=SUGAR, system="us", weigh_only=True).text == "weigh: 4.2 g"


def test_without_weights_the_density_gives_millilitres() -> None:
    result = household(0.250, weights=(), system="us", density=1010.0)
    assert (result.text, result.method) == ("250 ml", Method.JUG)
    assert result.relative_error == pytest.approx(250 * 1.010 / 250 - 1)


def test_without_anything_it_is_weighed() -> None:
    assert household(0.1, weights=(), system="us").text == "weigh: 100 g"


def test_nothing_is_no_amount() -> None:
    with pytest.raises(QuantityError):
        household(0.0, weights=SUGAR, system="us")


def test_the_simplest_is_the_first_of_all_that_are_near_enough() -> None:
    cup = SUGAR[0]
    assert cup.volume is not None
    per_volume = cup.mass / cup.volume
    for grams in range(1, 400, 7):
        mass = grams / 1000.0
        groups = spoonfuls(mass / per_volume / volume_of("cup", Measures.US), Measures.US)
        drifts = [
            (awkward, abs(sum(t.number * t.volume for t in each.terms) * per_volume / mass - 1))
            for awkward, alike in groups
            for each in alike
        ]
        near = [found for found in drifts if found[1] <= LIMIT]
        found = household(mass, weights=[cup], system="us")
        if near:
            assert abs(found.relative_error) == pytest.approx(min(near)[1], abs=1e-9)
        else:
            assert abs(found.relative_error) == pytest.approx(min(d for _, d in drifts), abs=1e-9)
