"""From fields to one typed question; what contradicts itself or is missing is refused."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from entremetry.errors import QuantityError, UnknownName
from entremetry.physics.gelatine import BloomRule
from entremetry.questions import (
    Contains,
    Instead,
    OtherMould,
    Question,
    Wait,
    WentWrong,
    Without,
)
from entremetry.questions.own_mould import SHAPES, shaped
from entremetry.questions.reading import read_question

ZONE = ZoneInfo("Europe/Rome")
NOW = datetime(2026, 12, 1, 10, 0, tzinfo=ZONE)


def read(**given: str) -> Question:
    told = {name.rstrip("_").replace("_", "-"): text for name, text in given.items()}
    return read_question(told, now=NOW, zone=ZONE)


def test_each_kind_is_read() -> None:
    assert read(instead="a", have="b") == Instead(old="a", have="b")
    root = read(instead="a", have="b", bloom_rule="square-root")
    assert isinstance(root, Instead) and root.rule is BloomRule.SQUARE_ROOT
    assert read(mould="ring-180", pieces="4") == OtherMould(known="ring-180", pieces=4)
    assert read(holds="75 ml", like="cap-80", cavities="8") == OtherMould(
        holds="75 ml", like="cap-80", cavities=8
    )
    assert read(wait="filled", for_="2 days") == Wait(part="filled", time=172800.0, now=NOW)
    until = read(wait="filled", until="2026-12-05T19:00")
    assert isinstance(until, Wait) and until.until == datetime(2026, 12, 5, 19, tzinfo=ZONE)
    assert read(without="glaze", symptom=" ") == Without(name="glaze")
    assert read(symptom="sank", in_="mousse") == WentWrong(symptom="sank", component="mousse")
    assert read(contains="nuts") == Contains(name="nuts")


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, "no question"),
        ({"without": "a", "contains": "b"}, "one question"),
        ({"instead": "a"}, "--instead without --have"),
        ({"have": "a"}, "--have without --instead"),
        ({"shape": "ring"}, "--shape without --size"),
        ({"size": "180 × 45"}, "--size without --shape"),
        ({"like": "cap-80"}, "without --holds"),
        ({"mould": "cap-80", "holds": "75 ml"}, "one of them"),
        ({"mould": "cap-80", "cavities": "3"}, "--cavities with --shape"),
        ({"wait": "filled", "for": "2 days", "until": "2026-12-05 19:00"}, "one of the two"),
        ({"for": "2 days"}, "without --wait"),
        ({"in": "mousse"}, "without --symptom"),
        ({"pieces": "0"}, "1 to 10000 pieces"),
        ({"pieces": "²"}, "1 to 10000 pieces"),
        ({"holds": "75 ml", "cavities": "501"}, "1 to 500 cavities"),
        ({"instead": "a", "have": "b", "bloom-rule": "cube"}, "linear or square-root"),
        ({"wait": "filled", "until": "2026-12-05"}, "without an hour"),
    ],
)
def test_what_is_missing_or_contradicts_is_refused(given: dict[str, str], told: str) -> None:
    with pytest.raises(QuantityError) as refused:
        read_question(given, now=NOW, zone=ZONE)
    assert told in str(refused.value)


@pytest.mark.parametrize(
    ("word", "size", "shape"),
    [
        ("ring", "180 × 45 mm", {"kind": "cylinder", "diameter": "180 mm", "height": "45 mm"}),
        ("ring", "18 x 4.5 cm", {"kind": "cylinder", "diameter": "180 mm", "height": "45 mm"}),
        ("ring", "180mm by 45mm", {"kind": "cylinder", "diameter": "180 mm", "height": "45 mm"}),
        ("dome", "70", {"kind": "hemisphere", "diameter": "70 mm"}),
        ("savarin", "80x30", {"kind": "ring", "diameter": "80 mm", "hole_diameter": "30 mm"}),
    ],
)
def test_sizes_as_people_write_them(word: str, size: str, shape: dict[str, str]) -> None:
    assert shaped(word, size)["shape"] == shape


@pytest.mark.parametrize("size", ["", "180", "180 × 45 × 3", "wide × high", "0 × 0 kg"])
def test_other_sizes_are_refused_with_an_example(size: str) -> None:
    with pytest.raises(QuantityError, match="80 × 45 mm"):
        shaped("ring", size)


def test_an_unknown_shape_is_refused() -> None:
    with pytest.raises(UnknownName, match="savarin"):
        shaped("savarinn", "80 × 30")


def test_every_shape_is_a_mould_that_can_be_made() -> None:
    from entremetry.kitchen.mould import mould
    from entremetry.kitchen.mould_document import MouldDocument
    from entremetry.store.shelf import no_mesh

    sizes = {1: "80", 2: "120 × 50", 3: "120 × 60 × 40"}
    for word, shape in SHAPES.items():
        document = MouldDocument.model_validate(shaped(word, sizes[len(shape.sizes)]))
        assert mould(document, read_mesh=no_mesh).solid.volume > 0.0
