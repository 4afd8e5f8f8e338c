"""Masses from which the balance of a swap starts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.formula.swap_mass import starting_masses
from entremetry.larder.constituents import Constituents
from unit.formula.formulas import CREAM_35, CREAM_48, DARK_55, DARK_70, GELATINE, MILK, SUGAR

SWEET = replace(SUGAR, tags=frozenset({"sweetener"}))
SYRUP = replace(
    SWEET, id="syrup", composition=Constituents(water=0.2, glucose=0.3, other_carbohydrate=0.5)
)


def test_most_things_go_weight_for_weight() -> None:
    assert starting_masses(DARK_70, 0.1, [DARK_55], water=0.3) == (0.1,)


def test_sweeteners_go_by_their_dry_solids() -> None:
    assert starting_masses(SWEET, 0.08, [SYRUP], water=0.3) == pytest.approx((0.1,))


def test_gelatine_goes_by_bloom_and_other_agents_by_dose() -> None:
    weaker = replace(GELATINE, id="gelatine-100", bloom=100.0)
    agar = replace(SUGAR, id="agar-powder")
    assert starting_masses(GELATINE, 0.008, [weaker], water=0.3) == pytest.approx((0.016,))
    assert starting_masses(GELATINE, 0.008, [agar], water=0.3) == pytest.approx((0.0015,))
    assert starting_masses(agar, 0.0015, [GELATINE], water=0.5) == pytest.approx((0.008,))


def test_two_for_one_are_mixed_to_resemble_it() -> None:
    cream, milk = starting_masses(CREAM_35, 0.5, [CREAM_48, MILK], water=0.3)
    assert cream + milk == pytest.approx(0.5, rel=0.02)
    assert 0.48 * cream + 0.035 * milk == pytest.approx(0.35 * 0.5, rel=0.01)


def test_one_of_several_that_is_of_no_use_still_gets_a_little() -> None:
    _, chocolate = starting_masses(CREAM_35, 0.5, [CREAM_35, DARK_70], water=0.3)
    assert chocolate == pytest.approx(0.025)
