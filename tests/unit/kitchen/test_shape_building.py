"""Shapes as written become bodies of the right size, described in the words of the trade."""

from __future__ import annotations

import re
from math import pi
from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.errors import OutsideRange, StoreError
from entremetry.kitchen import ShapeDocument, build, described
from entremetry.kitchen.shape_fault import shape_fault
from entremetry.store.shelf import no_mesh
from entremetry.words import speaking

SHAPE: TypeAdapter[Any] = TypeAdapter(ShapeDocument)
CASES = [
    # closed forms, in mm3
    ({"kind": "hemisphere", "diameter": "70 mm"}, 2 / 3 * pi * 35**3, "70 mm across"),
    ({"kind": "sphere", "diameter": "50 mm"}, 4 / 3 * pi * 25**3, "50 mm across"),
    (
        {"kind": "cap", "diameter": "80 mm", "height": "30 mm"},
        pi * 30 * (3 * 40**2 + 30**2) / 6,
        "80 mm across, 30 mm high",
    ),
    (
        {"kind": "cylinder", "diameter": "60 mm", "height": "40 mm"},
        pi * 30**2 * 40,
        "60 mm across, 40 mm high",
    ),
    (
        {"kind": "cone", "diameter": "70 mm", "base_diameter": "45 mm", "height": "50 mm"},
        pi * 50 / 12 * (70**2 + 70 * 45 + 45**2),
        "70 mm across, 50 mm high",
    ),
    (
        {"kind": "ellipsoid", "length": "80 mm", "width": "50 mm", "height": "30 mm"},
        2 / 3 * pi * 40 * 25 * 30,
        "80 mm × 50 mm, 30 mm high",
    ),
    (
        {"kind": "box", "length": "300 mm", "width": "200 mm", "height": "40 mm"},
        300 * 200 * 40,
        "300 mm × 200 mm, 40 mm high",
    ),
    (
        {"kind": "log", "length": "250 mm", "width": "80 mm"},
        pi * 40**2 / 2 * 250,
        "250 mm long, 80 mm wide",
    ),
    (
        {"kind": "ring", "diameter": "80 mm", "hole_diameter": "30 mm"},
        pi * 12.5**2 / 2 * 2 * pi * 27.5,  # Pappus: half a disc round the axis
        "80 mm across with a hole of 30 mm",
    ),
    (
        {
            "kind": "profile",
            "points": [
                {"radius": "20 mm", "level": "0 mm"},
                {"radius": "20 mm", "level": "30 mm"},
            ],
        },
        pi * 20**2 * 30,
        "40 mm across, by a measured profile",
    ),
    (
        {"kind": "prism", "outline": "M0 0 L40 0 L40 30 L0 30 Z", "height": "20 mm"},
        40 * 30 * 20,
        "20 mm high over a drawn outline",
    ),
    (
        {"kind": "measured", "holds": "75 ml", "like": {"kind": "hemisphere", "diameter": "7 cm"}},
        75_000,
        "holds 75 ml of water, 70 mm across or like it",
    ),
]


@pytest.mark.parametrize(
    ("shape", "volume", "words"), CASES, ids=[str(case[0]["kind"]) for case in CASES]
)
def test_volume_and_words_of_a_shape(shape: Any, volume: float, words: str) -> None:
    document = SHAPE.validate_python(shape)
    assert build(document, read_mesh=no_mesh).volume * 1e9 == pytest.approx(volume, rel=1e-6)
    assert described(document) == words


def test_a_mesh_is_read_by_its_name() -> None:
    document = SHAPE.validate_python({"kind": "mesh", "file": "pebble.stl"})
    asked: list[str] = []

    def read_mesh(name: str) -> bytes:
        asked.append(name)
        raise StoreError("there is no such mesh")

    with pytest.raises(StoreError):
        build(document, read_mesh=read_mesh)
    assert asked == ["pebble.stl"]
    assert described(document) == "as in pebble.stl"


def test_a_shape_that_cannot_be_says_what_is_accepted() -> None:
    flat = SHAPE.validate_python({"kind": "cap", "diameter": "40 mm", "height": "60 mm"})
    with pytest.raises(OutsideRange) as caught:
        build(flat, read_mesh=no_mesh)
    found, accepted = shape_fault(caught.value)
    assert found == "height of the cap: 60 mm"
    assert accepted.startswith("at most 20 mm")
    assert shape_fault(StoreError("gone")) == ("gone", "measures that make a shape")


def test_sizes_are_described_in_french_without_any_english_word() -> None:
    english = re.compile(r"\b(?:across|high|long|wide|with|hole|holds|of|or|like|by|over|as)\b")
    with speaking("fr"):
        said = [described(SHAPE.validate_python(shape)) for shape, _, _ in CASES]
    assert "60 mm de diamètre, 40 mm de haut" in said
    assert [text for text in said if english.search(text.replace(" de long", ""))] == []
