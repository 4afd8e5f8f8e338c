"""One setting agent in the place of another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.errors import BalanceError
from entremetry.formula.gelatine_swap import dry_part, in_place_of, strength, usual_dose
from entremetry.physics.gelatine import BloomRule
from unit.formula.formulas import GELATINE, SUGAR

AGAR = replace(SUGAR, id="agar-powder", name="agar powder", tags=frozenset({"gelling"}))
WEAKER = replace(GELATINE, id="gelatine-160", bloom=160.0)


def test_both_rules_are_told_and_one_can_be_chosen() -> None:
    both = in_place_of(0.012, GELATINE, WEAKER)
    assert both.by(BloomRule.LINEAR) == both.linear == pytest.approx(0.015)
    assert both.by(BloomRule.SQUARE_ROOT) == both.square_root == pytest.approx(0.013416, rel=1e-4)


def test_there_and_back_is_the_same() -> None:
    there = in_place_of(0.012, GELATINE, WEAKER)
    assert in_place_of(there.square_root, WEAKER, GELATINE).square_root == pytest.approx(0.012)


def test_a_gelatine_mass_counts_for_its_dry_part() -> None:
    parts = replace(GELATINE.composition, protein=0.856 / 7.0, water=1.0 - 0.856 / 7.0 - 0.013)
    mass = replace(GELATINE, id="mass", composition=parts)
    assert dry_part(mass) == pytest.approx(1.0 / 7.0)
    assert in_place_of(0.005, GELATINE, mass).linear == pytest.approx(0.035)


def test_only_gelatine_has_a_strength() -> None:
    assert strength(GELATINE, BloomRule.LINEAR) == pytest.approx(1.0)
    assert strength(SUGAR, BloomRule.LINEAR) == 0.0
    with pytest.raises(BalanceError, match="Bloom of both"):
        in_place_of(0.01, GELATINE, SUGAR)


def test_agents_have_a_usual_dose_on_the_water() -> None:
    assert usual_dose(AGAR, BloomRule.LINEAR) == pytest.approx(0.005)
    assert usual_dose(WEAKER, BloomRule.LINEAR) == pytest.approx(0.016 * 200.0 / 160.0)
    assert usual_dose(SUGAR, BloomRule.LINEAR) is None
