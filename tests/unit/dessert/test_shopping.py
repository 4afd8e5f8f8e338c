"""What to buy, in the units it is sold in."""

from __future__ import annotations

import pytest

from entremetry.dessert.shopping import shopping
from entremetry.store.larder_file import open_larder
from entremetry.words import speaking
from small_larder import SMALL_LARDER

CREAM, GELATINE = SMALL_LARDER.find("cream-35"), SMALL_LARDER.find("gelatine-sheet-gold")


def test_an_ingredient_of_several_components_is_bought_once() -> None:
    (purchase,) = shopping([(CREAM, 0.300), (CREAM, 0.400)], "us")
    assert purchase.mass == pytest.approx(0.700)
    assert purchase.buy == "2 × carton (500 g)"
    assert purchase.left_over == pytest.approx(0.300)


def test_whole_sheets_say_what_rounding_does() -> None:
    (purchase,) = shopping([(GELATINE, 0.0073)], "us")
    assert purchase.buy == "4 × sheet"
    assert "needs 3.6" in purchase.effect or "needs 3.7" in purchase.effect
    assert "10% more" in purchase.effect and "weigh 7.3 g" in purchase.effect
    (exact,) = shopping([(GELATINE, 0.008)], "us")
    assert exact.effect == "4 whole: exact"


def test_fruit_is_bought_with_its_stones() -> None:
    (purchase,) = shopping([(SMALL_LARDER.find("whole-fruit"), 0.400)], "us")
    assert purchase.bought_mass == pytest.approx(0.500)
    assert purchase.buy == "500 g as bought"


def test_water_comes_from_the_tap() -> None:
    assert shopping([(SMALL_LARDER.find("water"), 1.0)], "us") == ()


def test_eggs_are_bought_in_the_sizes_of_the_reader() -> None:
    eggs = open_larder().find("egg-whole")
    (american,) = shopping([(eggs, 0.150)], "us")
    (european,) = shopping([(eggs, 0.150)], "metric")
    assert american.buy == "3 × large egg (US)"
    assert european.buy == "3 × medium egg (EU)"


def test_what_to_buy_is_said_in_french() -> None:
    with speaking("fr"):
        (cream,) = shopping([(CREAM, 0.700)], "metric")
        (sheets,) = shopping([(GELATINE, 0.0073)], "metric")
        (fruit,) = shopping([(SMALL_LARDER.find("whole-fruit"), 0.400)], "metric")
    assert cream.buy == "2 × brique (500 g)"
    assert sheets.buy == "4 × feuille"
    assert sheets.effect.endswith("en prendre 4, c’est 10 % de plus ; peser 7,3 g pour être exact")
    assert fruit.buy == "500 g à l’achat, avant parage"
