"""Tags say something, and the larder uses no others."""

from __future__ import annotations

import pytest

from entremetry.larder import TAGS
from entremetry.store.larder_file import open_larder


def test_the_larder_uses_known_tags_only() -> None:
    assert {tag for ingredient in open_larder() for tag in ingredient.tags} <= set(TAGS)


def test_every_tag_marks_something() -> None:
    assert set(TAGS) <= {tag for ingredient in open_larder() for tag in ingredient.tags}


@pytest.mark.parametrize("name", ["pineapple", "kiwi", "papaya", "fig", "mango"])
def test_raw_fruit_that_digests_gelatine_is_marked(name: str) -> None:
    assert "proteolytic" in open_larder().find(name).tags


@pytest.mark.parametrize("name", ["pineapple-puree", "pineapple-tinned-juice", "mango-puree"])
def test_heated_fruit_is_not_marked(name: str) -> None:
    assert "proteolytic" not in open_larder().find(name).tags


@pytest.mark.parametrize(
    "name", ["gelatine-sheet-gold", "honey", "couverture-milk-40", "egg-yolk", "marshmallow"]
)
def test_what_comes_from_animals_is_not_vegan(name: str) -> None:
    assert "vegan" not in open_larder().find(name).tags


@pytest.mark.parametrize("name", ["agar-powder", "raspberry", "couverture-dark-70", "soya-milk"])
def test_what_does_not_is_vegan(name: str) -> None:
    assert "vegan" in open_larder().find(name).tags
