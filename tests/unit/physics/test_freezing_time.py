from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.freezing_time import (
    Form,
    FreezingFood,
    cleland_earle_time,
    pham_time,
)
from entremetry.physics.thawing_time import cleland_thawing_time

ZERO = 273.15
FRUIT = FreezingFood(
    freezing_point=ZERO - 1.5,
    warm_heat=3.6e6,
    cold_heat=1.9e6,
    latent=2.4e8,
    heat_to_ten=2.2e8,
    warm_conductivity=0.5,
    cold_conductivity=1.5,
)
DOWN = {"start": ZERO + 15, "air": ZERO - 25, "end": ZERO - 15}
UP = {"start": ZERO - 18, "air": ZERO + 10}


def by_pham(**changes: Any) -> float:
    return pham_time(3.0, 0.03, 25.0, FRUIT, **(DOWN | changes))


def by_cleland(form: Form = Form.SPHERE, **changes: Any) -> float:
    return cleland_earle_time(form, 0.03, 25.0, FRUIT, **(DOWN | changes))


def test_colder_air_a_better_coefficient_and_a_warmer_end_shorten_every_freezing() -> None:
    for way in (by_pham, by_cleland):
        assert way(air=ZERO - 28) < way() < way(end=ZERO - 18)
    assert pham_time(3.0, 0.03, 40.0, FRUIT, **DOWN) < by_pham()
    assert cleland_earle_time(Form.SPHERE, 0.03, 40.0, FRUIT, **DOWN) < by_cleland()


def test_a_slab_takes_longer_than_a_cylinder_and_that_longer_than_a_sphere() -> None:
    times = [by_cleland(form) for form in Form]
    assert times == sorted(times, reverse=True)
    assert pham_time(1.0, 0.03, 25.0, FRUIT, **DOWN) == pytest.approx(3.0 * by_pham())


def test_warmer_air_shortens_a_thaw() -> None:
    cool, warm = (
        cleland_thawing_time(2.0, 0.03, 25.0, FRUIT, **(UP | {"air": ZERO + t})) for t in (8, 16)
    )
    assert 0.0 < warm < cool


BAD = [math.nan, math.inf, -math.inf, -1.0, 0.0]


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize("place", range(3))
def test_no_number_that_is_none_comes_through(bad: float, place: int) -> None:
    numbers = [3.0, 0.03, 25.0]
    numbers[place] = bad
    with pytest.raises(OutsideRange):
        pham_time(*numbers, FRUIT, **DOWN)  # type: ignore[arg-type, misc]
    with pytest.raises(OutsideRange):
        cleland_thawing_time(*numbers, FRUIT, **UP)  # type: ignore[arg-type, misc]
    if place > 0:
        with pytest.raises(OutsideRange):
            cleland_earle_time(Form.SLAB, numbers[1], numbers[2], FRUIT, **DOWN)


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize("name", ["start", "air", "end"])
def test_temperatures_that_are_none_are_refused(bad: float, name: str) -> None:
    for way in (by_pham, by_cleland):
        with pytest.raises(OutsideRange):
            way(**{name: bad})
    if name != "end":
        with pytest.raises(OutsideRange):
            cleland_thawing_time(3.0, 0.03, 25.0, FRUIT, **(UP | {name: bad}))


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize("name", FreezingFood.__slots__)
def test_a_food_has_numbers(bad: float, name: str) -> None:
    with pytest.raises(OutsideRange):
        replace(FRUIT, **{name: bad})


@pytest.mark.parametrize(
    "change",
    [
        {"air": ZERO - 10},  # warmer than the end
        {"end": ZERO - 1},  # not frozen
        {"start": ZERO - 5},  # frozen before
    ],
)
def test_what_is_no_freezing_is_refused(change: dict[str, float]) -> None:
    for way in (by_pham, by_cleland):
        with pytest.raises(OutsideRange):
            way(**change)


def test_air_that_does_not_reach_minus_ten_is_beyond_cleland_and_earle() -> None:
    with pytest.raises(OutsideRange):
        by_cleland(air=ZERO - 9, end=ZERO - 8)


def test_a_food_too_sweet_for_phams_mean_freezing_temperature_is_refused() -> None:
    sweet = replace(FRUIT, freezing_point=ZERO - 5.0)
    with pytest.raises(OutsideRange, match="mean freezing temperature"):
        pham_time(3.0, 0.03, 25.0, sweet, **(DOWN | {"end": ZERO - 12}))


@pytest.mark.parametrize(
    ("half", "coefficient", "start", "air", "word"),
    [
        (0.07, 25.0, 15, -25, "thickness"),
        (0.03, 8.0, 15, -25, "coefficient"),
        (0.03, 25.0, 50, -25, "start"),
        (0.03, 25.0, 15, -50, "air"),
    ],
)
def test_a_slab_outside_the_measured_ranges_is_refused(
    half: float, coefficient: float, start: float, air: float, word: str
) -> None:
    way = {"start": ZERO + start, "air": ZERO + air, "end": ZERO - 15}
    with pytest.raises(OutsideRange, match=word):
        cleland_earle_time(Form.SLAB, half, coefficient, FRUIT, **way)


def test_nothing_thaws_in_cold_air() -> None:
    with pytest.raises(OutsideRange, match="thaws"):
        cleland_thawing_time(3.0, 0.03, 25.0, FRUIT, **(UP | {"air": ZERO - 1}))
