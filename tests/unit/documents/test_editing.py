"""Edits that leave every other character as its author wrote it."""

from __future__ import annotations

import difflib
from typing import Any

import pytest

from entremetry.documents import Path, edited, moved, read_tree, removed, renamed, written
from entremetry.errors import DocumentError

TEXT = """\
# A café dome
entremetry: 1
name:   Pear log      # our first
note: 'it''s'
about: "quoted é"

components:
  mousse:
    name: Mousse
    formula:          # the lines
      cream: 240 g    # cold
      sugar: 40 g

    # the method
    method:
      - {step: soak, what: [gelatine, b], water: 20 g}   # soak
      - step: bake
        at: 180 °C
  other:
    text: |
      long
      text
    empty:
    bag: {}
pieces: 6
"""
MOUSSE = ("components", "mousse")


def changes(after: str, before: str = TEXT) -> list[str]:
    lines = difflib.ndiff(before.splitlines(), after.splitlines())
    return [f"{line[0]} {line[2:].strip()}" for line in lines if line[0] in "+-"]


@pytest.mark.parametrize(
    ("path", "value", "expected"),
    [
        (("pieces",), 12, ["- pieces: 6", "+ pieces: 12"]),
        (
            ("name",),
            "Apple: log",
            ["- name:   Pear log      # our first", '+ name:   "Apple: log"      # our first'],
        ),
        (("note",), "he's", ["- note: 'it''s'", "+ note: 'he''s'"]),
        (("about",), "né", ['- about: "quoted é"', '+ about: "né"']),
        (
            (*MOUSSE, "formula", "cream"),
            "250 g",
            ["- cream: 240 g    # cold", "+ cream: 250 g    # cold"],
        ),
        ((*MOUSSE, "formula", "milk"), "30 g", ["+ milk: 30 g"]),
        ((*MOUSSE, "method", 1, "fan"), True, ["+ fan: true"]),
        ((*MOUSSE, "method", 2), {"step": "rest", "time": "4 h"}, ["+ - {step: rest, time: 4 h}"]),
        (("components", "other", "empty"), "x", ["- empty:", "+ empty: x"]),
        (("components", "other", "bag", "a"), 1, ["- bag: {}", "+ bag: {a: 1}"]),
        (
            ("components", "other", "text"),
            "short",
            ["- text: |", "+ text: short", "- long", "- text"],
        ),
        (("new", "a"), "b c", ["+ new: {a: b c}"]),
        (
            (*MOUSSE, "formula"),
            {"a": "1 g"},
            [
                "- formula:          # the lines",
                "- cream: 240 g    # cold",
                "- sugar: 40 g",
                "+ formula:",
                "+ a: 1 g",
            ],
        ),
    ],
)
def test_an_edit_touches_only_its_part(path: Path, value: Any, expected: list[str]) -> None:
    assert sorted(changes(edited(TEXT, path, value))) == sorted(expected)


def test_an_edit_within_braces() -> None:
    after = edited(TEXT, (*MOUSSE, "method", 0, "note"), "slowly, please")
    assert 'water: 20 g, note: "slowly, please"}   # soak' in after
    assert "what: [x, b]" in edited(TEXT, (*MOUSSE, "method", 0, "what", 0), "x")
    assert "what: [gelatine, b, c]" in edited(TEXT, (*MOUSSE, "method", 0, "what", 2), "c")


@pytest.mark.parametrize("path", [("pieces",), ("note",), (*MOUSSE, "formula"), ("components",)])
def test_the_same_value_leaves_the_text_as_it_is(path: Path) -> None:
    value: Any = read_tree(TEXT, file="p.yaml").data
    for part in path:
        value = value[part]
    assert edited(TEXT, path, value) == TEXT


def test_one_is_not_true() -> None:
    assert "pieces: true" in edited("pieces: 1\n", ("pieces",), True)


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        (("pieces",), ["- pieces: 6"]),
        ((*MOUSSE, "formula", "cream"), ["- cream: 240 g    # cold"]),
        ((*MOUSSE, "method", 1), ["- - step: bake", "- at: 180 °C"]),
        (("components", "other", "text"), ["- text: |", "- long", "- text"]),
    ],
)
def test_a_removal_takes_only_its_lines(path: Path, expected: list[str]) -> None:
    assert changes(removed(TEXT, path)) == expected


def test_a_removal_within_braces_takes_one_comma() -> None:
    assert "what: [gelatine], water" in removed(TEXT, (*MOUSSE, "method", 0, "what", 1))
    assert "{what: [gelatine, b], water" in removed(TEXT, (*MOUSSE, "method", 0, "step"))


def test_the_last_entry_leaves_an_empty_mapping() -> None:
    after = removed("a:\n  b: 1 # one\nc: 2\n", ("a", "b"))
    assert read_tree(after, file="a.yaml").data == {"a": {}, "c": 2}


def test_the_first_entry_behind_a_dash() -> None:
    after = removed(TEXT, (*MOUSSE, "method", 1, "step"))
    assert changes(after) == ["- - step: bake", "- at: 180 °C", "+ - at: 180 °C"]


def test_a_layout_that_cannot_be_cut_goes_through_a_round_trip_with_its_comments() -> None:
    text = "# top\n? a\n: 1\nb: 2  # two\n"
    after = removed(text, ("a",))
    assert read_tree(after, file="a.yaml").data == {"b": 2}
    assert "# two" in after


def test_windows_line_ends_and_a_byte_order_mark_are_kept() -> None:
    text = "\ufeff" + TEXT.replace("\n", "\r\n")
    assert edited(text, ("pieces",), 12) == text.replace("pieces: 6", "pieces: 12")
    assert "\r\n      milk: 30 g\r\n" in edited(text, (*MOUSSE, "formula", "milk"), "30 g")


def test_a_text_without_a_last_line_end() -> None:
    assert edited("a: 1", ("b",), 2) == "a: 1\nb: 2\n"
    assert removed("a: 1\nb: 2", ("b",)) == "a: 1\n"


@pytest.mark.parametrize("path", [("nope",), (*MOUSSE, "method", 7), ("pieces", "a"), ()])
def test_a_path_that_leads_nowhere_is_refused(path: Path) -> None:
    with pytest.raises(DocumentError, match="no such part"):
        removed(TEXT, path)


def test_a_new_document_is_written_as_a_person_would() -> None:
    data = {
        "entremetry": 1,
        "name": "Pear: a log",
        "on": "x",
        "components": {
            "mousse": {
                "formula": {"cream": "240 g", "egg": {"ingredient": "egg", "amount": "20 g"}},
                "method": [{"step": "soak", "what": ["egg"], "water": "20 g"}, {"step": "x" * 99}],
            }
        },
        "portions": {"length": "90 mm", "width": "30 mm"},
        "nothing": None,
        "word": "null",
        "none": {},
    }
    assert written(data) == (
        "entremetry: 1\n"
        'name: "Pear: a log"\n'
        '"on": x\n'
        "components:\n"
        "  mousse:\n"
        "    formula:\n"
        "      cream: 240 g\n"
        "      egg: {ingredient: egg, amount: 20 g}\n"
        "    method:\n"
        "      - {step: soak, what: [egg], water: 20 g}\n"
        f"      - step: {'x' * 99}\n"
        "portions: {length: 90 mm, width: 30 mm}\n"
        "nothing: null\n"
        'word: "null"\n'
        "none: {}\n"
    )


def test_data_that_no_document_can_hold_is_refused() -> None:
    with pytest.raises(DocumentError):
        written({"a": float("nan")})


def test_a_renamed_part_stays_in_its_place_with_its_comment() -> None:
    after = renamed(TEXT, (*MOUSSE, "formula", "cream"), "cream-48")
    assert changes(after) == ["- cream: 240 g    # cold", "+ cream-48: 240 g    # cold"]


def test_a_part_within_braces_can_be_renamed() -> None:
    after = renamed(TEXT, (*MOUSSE, "method", 0, "water"), "with")
    assert "{step: soak, what: [gelatine, b], with: 20 g}   # soak" in after


def test_a_name_that_is_taken_or_not_there_is_refused() -> None:
    with pytest.raises(DocumentError, match="free in components.mousse.formula"):
        renamed(TEXT, (*MOUSSE, "formula", "cream"), "sugar")
    with pytest.raises(DocumentError, match="no such part"):
        renamed(TEXT, (*MOUSSE, "formula", "milk"), "cream-48")
    with pytest.raises(DocumentError, match="no such part"):
        renamed(TEXT, (), "x")


def test_a_name_that_needs_quotes_gets_them() -> None:
    after = renamed(TEXT, ("pieces",), "a: b")
    assert read_tree(after, file="x").data["a: b"] == 6


ORDERED = """\
# a dessert
placement:
  - {component: mousse, as: filling}  # last
  - component: heart
    as: insert  # frozen

  - {component: glaze, as: coating}
formula:
  cream: 200 g  # cold
  sugar: 20 g
note: done
"""


@pytest.mark.parametrize("to", range(3))
@pytest.mark.parametrize("index", range(3))
def test_an_item_moves_with_its_comments_and_all_else_stays(index: int, to: int) -> None:
    after = moved(ORDERED, ("placement", index), to)
    before = read_tree(ORDERED, file="t").data["placement"]
    wanted = [*before]
    wanted.insert(to, wanted.pop(index))
    assert read_tree(after, file="t").data["placement"] == wanted
    assert sorted(after.splitlines()) == sorted(ORDERED.splitlines())
    assert moved(after, ("placement", to), index) == ORDERED or "" in after.splitlines()


def test_an_entry_moves_among_its_neighbours() -> None:
    after = moved(ORDERED, ("formula", "sugar"), 0)
    assert "formula:\n  sugar: 20 g\n  cream: 200 g  # cold\nnote: done\n" in after


def test_a_list_in_brackets_is_put_in_order_too() -> None:
    assert moved("what: [a, b, c]\n", ("what", 2), 0) == "what: [c, a, b]\n"


def test_the_last_line_of_a_text_may_lack_its_end() -> None:
    assert moved("a:\n  - 1\n  - 2", ("a", 1), 0) == "a:\n  - 2\n  - 1\n"


@pytest.mark.parametrize(("path", "to"), [(("placement", 0), 3), (("placement", 0), -1)])
def test_no_part_moves_beyond_its_neighbours(path: Path, to: int) -> None:
    with pytest.raises(DocumentError, match="a place from 1 to 3"):
        moved(ORDERED, path, to)


def test_a_part_that_is_not_there_does_not_move() -> None:
    with pytest.raises(DocumentError, match="no such part"):
        moved(ORDERED, ("placement", 7), 0)
