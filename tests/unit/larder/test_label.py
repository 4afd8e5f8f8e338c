"""A label is turned into parts that add up, and never into more than it states."""

from __future__ import annotations

import pytest

from entremetry.larder import Constituents
from entremetry.larder.label import closed, replaced

CREAM = Constituents(water=0.59, milk_fat=0.35, protein=0.023, lactose=0.032, ash=0.005)


def test_a_total_takes_what_its_parts_leave() -> None:
    parts = closed({"sugars": 0.5, "sucrose": 0.3, "carbohydrate": 0.7, "starch": 0.1})
    assert parts.sucrose == pytest.approx(0.3)
    assert parts.unsplit_sugars == pytest.approx(0.2)
    assert parts.other_carbohydrate == pytest.approx(0.1)
    assert parts.water == pytest.approx(0.3)


def test_rounding_of_a_label_is_closed() -> None:
    parts = closed({"water": 0.602, "fat": 0.401})
    assert parts.total == pytest.approx(1.0, abs=1e-12)
    assert parts.other_fat == pytest.approx(0.401 / 1.003)


def test_what_does_not_add_up_is_refused_with_its_sum() -> None:
    with pytest.raises(ValueError, match=r"98\.0 g"):
        closed({"water": 0.6, "fat": 0.38})


def test_replacing_the_whole_is_closed() -> None:
    parts = replaced(CREAM, {"water": 0.6, "fat": 0.4})
    assert parts.milk_fat == pytest.approx(0.4)
    assert parts.lactose == pytest.approx(0.0)


def test_a_total_that_was_not_there_goes_where_it_is_not_divided() -> None:
    water = Constituents(water=1.0)
    assert replaced(water, {"fat": 0.1}).other_fat == pytest.approx(0.1)
    assert replaced(water, {"sugars": 0.1}).unsplit_sugars == pytest.approx(0.1)


def test_a_named_part_and_its_total_hold_together() -> None:
    parts = replaced(CREAM, {"sugars": 0.1, "sucrose": 0.06})
    assert parts.sucrose == pytest.approx(0.06)
    assert parts.lactose == pytest.approx(0.04)
    assert parts.total == pytest.approx(1.0, abs=1e-12)


def test_salt_is_counted_in_the_ash() -> None:
    assert closed({"fat": 0.8, "salt": 0.015}).ash == pytest.approx(0.015)
    assert replaced(CREAM, {"salt": 0.002}).ash == pytest.approx(0.005)
    assert replaced(CREAM, {"salt": 0.02}).ash == pytest.approx(0.02)
    with pytest.raises(ValueError, match="no more salt than ash"):
        closed({"salt": 0.02, "ash": 0.01})
