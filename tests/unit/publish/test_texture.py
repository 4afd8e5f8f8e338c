from xml.etree import ElementTree

import pytest

from entremetry.dessert.batch_sheet import Position
from entremetry.publish.texture import MARKS, pattern, texture
from unit.publish.sections import part


def base(name: str) -> str:
    return texture(part("b", name, "base", Position.BASE))


def test_sponges_have_pores_and_crusts_have_grains() -> None:
    assert base("Almond joconde") == "sponge"
    assert base("Hazelnut shortcrust") == "crumb"


def test_kinds_that_touch_have_textures_of_their_own() -> None:
    kinds = ("mousse", "insert", "base", "glaze", "crumble")
    names = {texture(part("x", "plain", kind, Position.FILLING)) for kind in kinds}
    assert len(names) == len(kinds)


@pytest.mark.parametrize("name", [*MARKS, "smooth"])
def test_a_pattern_is_the_same_every_time_and_well_formed(name: str) -> None:
    first = pattern(name, (200, 100, 50), id_="a", scale=2.5)
    assert first == pattern(name, (200, 100, 50), id_="a", scale=2.5)
    tree = ElementTree.fromstring(first)
    assert tree.get("id") == "a"
    assert len(tree) >= 1
