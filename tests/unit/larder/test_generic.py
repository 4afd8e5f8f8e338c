"""Words that could be several ingredients are asked about, with answers that exist."""

from __future__ import annotations

import pytest

from entremetry.larder import Generic, all_generics, generic_for
from entremetry.store.larder_file import open_larder


@pytest.mark.parametrize(
    "name",
    [
        "gelatine",
        "Gelatin",
        "gélatine",
        "leaves gelatine",
        "gelatine leaves",
        "leaf gelatine",
        "chocolate",
        "dark chocolate",
        "cream",
        "crème",
        "flour",
        "cocoa",
        "cocoa powder",
        "pectin",
        "blackcurrant purée",
        "blackcurrant puree",
        "Passion-fruit purée",
    ],
)
def test_a_word_for_several_is_asked_about(name: str) -> None:
    asked = generic_for(name)
    assert asked is not None
    assert len(asked.choices) > 1
    assert asked.question.endswith("?")


@pytest.mark.parametrize("name", ["gelatine-sheet-gold", "cream 35 %", "caster sugar", "sugar"])
def test_a_name_of_one_is_not_asked_about(name: str) -> None:
    assert generic_for(name) is None


def test_leaves_are_asked_about_as_sheets_only() -> None:
    asked = generic_for("leaves gelatine")
    assert asked is not None
    assert all(choice.startswith("gelatine-sheet-") for choice in asked.choices)


def test_every_answer_is_in_the_larder() -> None:
    larder = open_larder()
    missing = {c for asked in all_generics() for c in asked.choices if c not in larder}
    assert not missing


def test_every_size_of_egg_can_be_weighed() -> None:
    larder = open_larder()
    for name in ("egg", "egg yolk", "egg white"):
        asked = generic_for(name)
        assert asked is not None
        found = larder.find(asked.choices[0])
        masses = [found.mass_of(1.0, measure) for measure in asked.measures]
        assert len(masses) == 9
        assert masses[:4] == sorted(masses[:4])
        assert masses[4:] == sorted(masses[4:])


def test_no_word_asks_two_questions() -> None:
    words = [word for asked in all_generics() for word in asked.words]
    for word in words:
        found = generic_for(word)
        assert isinstance(found, Generic)
        assert word in found.words
