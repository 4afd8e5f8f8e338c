from itertools import combinations

import pytest

from entremetry.dessert.batch_sheet import Position
from entremetry.publish.colour import difference, luminance
from entremetry.publish.palette import (
    FLAVOUR_COLOURS,
    FRENCH_FLAVOURS,
    KIND_COLOURS,
    colours,
    flavour,
    own_colour,
)
from unit.publish.sections import SECTIONS, part


@pytest.mark.parametrize("name", SECTIONS)
def test_no_two_parts_of_a_dessert_look_alike(name: str) -> None:
    chosen = colours(SECTIONS[name]().parts)
    assert all(difference(a, b) >= 40.0 for a, b in combinations(chosen, 2))


def test_the_first_flavour_named_gives_the_colour() -> None:
    assert flavour("Mango and lime jelly") == FLAVOUR_COLOURS["mango"]
    assert flavour("Roasted Hazelnuts") == FLAVOUR_COLOURS["hazelnut"]
    assert flavour("Cherries in syrup") == FLAVOUR_COLOURS["cherry"]
    assert flavour("Secret heart") is None


def test_a_french_name_tells_its_flavour_too() -> None:
    assert flavour("Mousse au cassis") == FLAVOUR_COLOURS["blackcurrant"]
    assert flavour("Crémeux au citron vert") == FLAVOUR_COLOURS["lime"]
    assert flavour("Crumble à la noix de coco") == FLAVOUR_COLOURS["coconut"]
    assert set(FRENCH_FLAVOURS.values()) <= set(FLAVOUR_COLOURS)


def test_a_part_without_a_flavour_has_the_colour_of_its_kind() -> None:
    assert own_colour(part("a", "Heart", "insert", Position.INSERT)) == KIND_COLOURS["insert"]
    assert own_colour(part("a", "Heart", "new kind", Position.INSERT))


def test_a_plain_glaze_is_darker_than_what_it_covers() -> None:
    filling = part("m", "Raspberry mousse", "mousse", Position.FILLING, high=0.03)
    glaze = part("g", "Neutral", "glaze", Position.COATING, thickness=0.002)
    first, second = colours([filling, glaze])
    assert luminance(second) < luminance(first)
