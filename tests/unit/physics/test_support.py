"""What a piece stands on."""

from __future__ import annotations

import pytest

from entremetry.physics.support import BOXED_AIR, CONTACT, Support, contact_coefficient


@pytest.mark.parametrize("support", list(Support))
def test_every_support_lets_some_heat_through(support: Support) -> None:
    assert 0.0 < contact_coefficient(support) <= 40.0


def test_the_better_a_support_conducts_the_more_it_lets_through() -> None:
    order = (Support.METAL_SHELF, Support.GLASS_SHELF, Support.BOARD)
    values = [contact_coefficient(support) for support in order]
    assert values == sorted(values, reverse=True)
    assert set(CONTACT) == set(Support)


def test_a_box_leaves_less_than_still_air_has_with_its_radiation() -> None:
    assert 3.0 < BOXED_AIR < 8.5
