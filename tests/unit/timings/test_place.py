"""Places of a kitchen."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from entremetry.kitchen.reading import read_kitchen
from entremetry.physics.support import BOXED_AIR, Support
from entremetry.timings.place import BLAST_AIR, FAN_AIR, STILL_AIR, place
from timed_desserts import KITCHEN

HOME = read_kitchen(KITCHEN, file="kitchen")
NAMES = ("freezer", "blast freezer", "fridge", "room")


@pytest.mark.parametrize(
    ("kind", "celsius"), list(zip(NAMES, (-18.0, -30.0, 4.0, 20.0), strict=True))
)
def test_without_a_kitchen_a_usual_place_is_assumed_and_said(kind: str, celsius: float) -> None:
    found = place(kind, None, None)
    assert found.temperature == pytest.approx(celsius + 273.15)
    assert len(found.assumptions) == 1 and "describe your kitchen" in found.assumptions[0]
    assert str(found.support) in found.assumptions[0]


@pytest.mark.parametrize(
    ("kind", "name", "celsius", "support"),
    [
        ("freezer", "chest", -20.0, Support.METAL_SHELF),
        ("blast freezer", "cabinet", -35.0, Support.WIRE_SHELF),
        ("fridge", "larder fridge", 5.0, Support.BOARD),
        ("room", "room", 21.0, Support.BOARD),
    ],
)
def test_the_kitchen_says_what_there_is(
    kind: str, name: str, celsius: float, support: Support
) -> None:
    found = place(kind, None, HOME)
    assert (found.name, found.support) == (name, support)
    assert found.temperature == pytest.approx(celsius + 273.15)
    assert found.assumptions == ()


def test_a_step_may_say_what_the_piece_stands_on() -> None:
    assert place("fridge", Support.METAL_SHELF, HOME).support is Support.METAL_SHELF


def test_fans_move_the_air_and_still_air_grows_with_the_difference() -> None:
    assert place("freezer", None, HOME).air.exponent == 0.25
    assert place("freezer", None, HOME).convection == STILL_AIR
    assert place("blast freezer", None, HOME).convection == BLAST_AIR
    fan = place("fridge", None, HOME)
    assert (fan.convection, fan.air.exponent) == (FAN_AIR, 0.0)


def test_in_a_box_no_air_passes_and_nothing_condenses() -> None:
    air = place("fridge", Support.BOX, None).air
    assert (air.coefficient, air.emissivity, air.humidity) == (BOXED_AIR, 0.0, None)


def test_metal_takes_more_heat_than_a_board() -> None:
    metal = place("fridge", Support.METAL_SHELF, None).foot.coefficient
    assert metal > 5.0 * place("fridge", Support.BOARD, None).foot.coefficient


@pytest.mark.parametrize("celsius", [-60, 90])
def test_air_in_which_no_food_is_known_is_refused(celsius: int) -> None:
    kitchen = read_kitchen(
        f"entremetry_kitchen: 1\nname: k\nroom_temperature: {celsius} °C\n", file="kitchen"
    )
    with pytest.raises(QuantityError, match="air from -38 °C to 60 °C"):
        place("room", None, kitchen)
