"""How sweet a mix is, with the spread of the sources."""

from __future__ import annotations

import pytest

from entremetry.errors import BalanceError
from entremetry.formula import EMPTY, Mix
from entremetry.formula.sweetness import SWEET_PARTS, mix_sweetness
from entremetry.larder.constituents import NAMES, SUGARS, Constituents


def test_a_syrup_of_sucrose_is_as_sweet_as_its_sugar() -> None:
    told = mix_sweetness(Mix(constituents=Constituents(water=0.6, sucrose=0.4)))
    assert (told.low, told.usual, told.high) == pytest.approx((0.4, 0.4, 0.4))


def test_sugars_add_up_by_mass() -> None:
    parts = Constituents(water=0.5, glucose=0.2, fructose=0.3)
    assert mix_sweetness(Mix(constituents=parts)).usual == pytest.approx(
        0.2 * 0.74 + 0.3 * 1.73, rel=1e-9
    )


def test_the_band_holds_the_usual_figure_for_every_sugar() -> None:
    assert set(SWEET_PARTS) <= set(NAMES)
    assert set(SUGARS) <= set(SWEET_PARTS)
    assert all(each.low <= each.usual <= each.high for each in SWEET_PARTS.values())


def test_what_is_not_sweet_does_not_sweeten() -> None:
    parts = Constituents(water=1.0, milk_fat=1.0, starch=1.0, protein=1.0)
    assert mix_sweetness(Mix(constituents=parts)).high == 0.0


def test_nothing_has_no_taste() -> None:
    with pytest.raises(BalanceError, match="empty"):
        mix_sweetness(EMPTY)
