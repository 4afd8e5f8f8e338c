"""More or less of the same."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import Mix, density, factor_for_mass, scaled, whip
from entremetry.larder.constituents import Constituents

CREAM = Mix(constituents=Constituents(water=0.6, milk_fat=0.36, protein=0.04))


def test_the_factor_leads_from_what_is_there_to_what_is_wanted() -> None:
    assert scaled(CREAM, factor_for_mass(0.41, CREAM.mass)).mass == pytest.approx(0.41)


def test_scaling_keeps_the_density() -> None:
    foam = whip(CREAM, 0.9)
    assert density(scaled(foam, 2.6)) == pytest.approx(density(foam))


@pytest.mark.parametrize(("wanted", "available"), [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0)])
def test_nothing_cannot_be_scaled(wanted: float, available: float) -> None:
    with pytest.raises(BalanceError, match="more than nothing"):
        factor_for_mass(wanted, available)


def test_a_negative_factor_is_refused() -> None:
    with pytest.raises(BalanceError, match="zero or more"):
        scaled(CREAM, -1.0)
