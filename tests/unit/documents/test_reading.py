"""YAML text into plain data; what could harm or mislead is refused by name."""

from __future__ import annotations

import pytest

from entremetry.documents import read_tree
from entremetry.documents.tree import field_text, shown
from entremetry.errors import DocumentError

TEXT = """\
# our first
name: Pear log
pieces: 6
share: 0.5
on: yes
date: 2024-03-01
nothing: ~
quoted: "1"
components:
  mousse:
    formula: {cream: 240 g, egg: 2 yolks}
    method:
      - {step: soak, water: 20 g}
      - step: bake
        fan: true
"""


def faults(text: str) -> list[str]:
    with pytest.raises(DocumentError) as caught:
        read_tree(text, file="pear.yaml")
    assert all(fault.file == "pear.yaml" for fault in caught.value.faults)
    return [str(fault) for fault in caught.value.faults]


def test_a_document_is_plain_data() -> None:
    data = read_tree(TEXT, file="pear.yaml").data
    assert data["components"]["mousse"]["method"][1] == {"step": "bake", "fan": True}
    assert (data["pieces"], data["share"], data["nothing"], data["quoted"]) == (6, 0.5, None, "1")


def test_yes_on_and_dates_stay_texts() -> None:
    data = read_tree(TEXT, file="pear.yaml").data
    assert (data["on"], data["date"]) == ("yes", "2024-03-01")


@pytest.mark.parametrize(
    ("word", "value"),
    [
        ("0x1F", 31),
        ("0o17", 15),
        ("-7", -7),
        ("+1.5e3", 1500.0),
        ("1_000", "1_000"),
        ("12:30", "12:30"),
        ("TRUE", True),
        ("off", "off"),
        ("NULL", None),
        ("nan", "nan"),
    ],
)
def test_bare_words_mean_what_the_core_schema_says(word: str, value: object) -> None:
    read = read_tree(f"a: {word}", file="pear.yaml").data["a"]
    assert read == value and type(read) is type(value)


def test_every_part_knows_its_line() -> None:
    lines = read_tree(TEXT, file="pear.yaml").lines
    assert lines["name",] == 2
    assert lines["components", "mousse", "formula", "egg"] == 11
    assert lines["components", "mousse", "method", 1, "fan"] == 15


def test_the_line_of_a_part_that_is_not_there_is_that_of_the_part_around() -> None:
    tree = read_tree(TEXT, file="pear.yaml")
    assert tree.line(("components", "mousse", "method", 0, "what")) == 13
    assert tree.line(("nowhere",)) == 2


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "an empty document"),
        ("# only a comment", "an empty document"),
        ("- a\n- b", "a list of 2"),
        ("just words", "'just words'"),
        ("a: 1\na: 2", "line 2, a: found the key 'a' a second time (first on line 1)"),
        ("b: &x 1", "the anchor '&x'"),
        ("a: {<<: {b: 1}}", "the merge key"),
        ("d: !!python/object:os.system x", "the tag"),
        ("a: !mine x", "the tag"),
        ("a: .nan", "no finite number"),
        ("a: -.inf", "no finite number"),
        ("a: 1e999", "no finite number"),
        ("a: 1\n---\nb: 2", "line 2: found a second document"),
        ("a\x07: 1", "control character U+0007"),
        ('a: "\\0"', "a control character"),
        ("a: \ud800", "control character U+D800"),
        ("? [a]\n: b", "a mapping or list as a key"),
        ("a: [1,", "line 1: found no YAML"),
        ("a: 1\n b: 2", "no YAML"),
        ("a: " + "[" * 25 + "]" * 25, "nested more than 20 deep"),
        ("a: [" + "1," * 25_000 + "]", "more than 20000 parts"),
        ("a: " + "x" * 1_000_001, "at most 1 MB"),
        ("a: " + "é" * 600_000, "at most 1 MB"),
        ("a: " + "9" * 30, "no finite number"),
    ],
)
def test_what_could_harm_or_mislead_is_refused_by_name(text: str, words: str) -> None:
    assert words in faults(text)[0]


def test_an_alias_is_refused_before_it_can_grow() -> None:
    bomb = "a: &a [x, x]\n" + "".join(
        f"{chr(98 + i)}: &{chr(98 + i)} [*{chr(97 + i)}, *{chr(97 + i)}]\n" for i in range(20)
    )
    found = faults(bomb)
    assert any("alias '*a'" in fault for fault in found)
    assert len(found) <= 50


def test_all_faults_are_reported_at_once() -> None:
    assert len(faults("a: 1\na: 2\nb: .nan\nc: &x 1\nd: *x\ne: !t x")) == 5


def test_a_byte_order_mark_is_no_fault() -> None:
    assert read_tree("\ufeffa: 1", file="pear.yaml").data == {"a": 1}


def test_paths_and_values_read_well() -> None:
    assert field_text(("placement", 1, "height")) == "placement[2].height"
    assert shown("x" * 100).endswith("…'") and len(shown("x" * 100)) < 70
    assert [shown(v) for v in (None, True, {"a": 1}, [1], 2)] == [
        "nothing",
        "true",
        "a mapping of 1",
        "a list of 1",
        "2",
    ]


def test_what_is_read_is_the_readers_own() -> None:
    mine = read_tree(TEXT, file="pear.yaml").data
    mine["components"]["mousse"]["method"][0]["water"] = "1 kg"
    del mine["components"]["mousse"]["formula"]["cream"]
    again = read_tree(TEXT, file="pear.yaml").data["components"]["mousse"]
    assert again["method"][0] == {"step": "soak", "water": "20 g"}
    assert list(again["formula"]) == ["cream", "egg"]
