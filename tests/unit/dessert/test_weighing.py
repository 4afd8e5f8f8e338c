"""An amount as written becomes a mass."""

from __future__ import annotations

import pytest

from entremetry.dessert.weighing import mass_of_amount
from entremetry.errors import QuantityError, UnknownName
from small_larder import SMALL_LARDER

FLOUR = SMALL_LARDER.find("plain-flour")


@pytest.mark.parametrize(
    ("amount", "ingredient", "measures", "kilograms"),
    [
        ("240 g", "puree", None, 0.240),
        ("100 ml", "puree", None, 0.105),  # 1.05 g/ml
        ("1 us cup", "plain-flour", None, 0.125),  # its own household weight
        ("1 cup", "plain-flour", "us", 0.125),
        ("1 cup", "puree", "metric", 0.2625),  # 250 ml at 1.05 g/ml
        ("3 sheets", "gelatine-sheet-gold", None, 0.006),
    ],
)
def test_mass_of_an_amount(
    amount: str, ingredient: str, measures: str | None, kilograms: float
) -> None:
    found = mass_of_amount(amount, SMALL_LARDER.find(ingredient), measures=measures)
    assert found == pytest.approx(kilograms)


def test_another_component_goes_in_by_weight() -> None:
    assert mass_of_amount("20 g", None, measures=None) == pytest.approx(0.020)
    with pytest.raises(QuantityError, match="goes in by weight"):
        mass_of_amount("20 ml", None, measures=None)


def test_a_cup_of_nobody_is_refused() -> None:
    with pytest.raises(QuantityError, match="without whose it is"):
        mass_of_amount("1 cup", FLOUR, measures=None)


def test_a_thing_it_is_not_counted_in_is_refused() -> None:
    with pytest.raises(UnknownName, match="measure of plain flour"):
        mass_of_amount("2 pods", FLOUR, measures=None)
