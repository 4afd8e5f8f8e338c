"""Documents keep what is in them, whatever that is."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from entremetry.documents import Tree, edited, read_tree, removed, written
from entremetry.errors import DocumentError
from properties.strategies_documents import data, paths, scalars, trees, values

_YAML = st.text("ab1 \n:-#'\"{}[],&*!|>%?~.\té\ud800\x07", max_size=60)


def read(text: str) -> dict[str, Any]:
    return read_tree(text, file="drawn.yaml").data


def at(content: Any, path: tuple[str | int, ...]) -> Any:
    for part in path:
        content = content[part]
    return content


@given(st.one_of(st.text(max_size=80), _YAML))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        assert isinstance(read(text), dict)
    except DocumentError as error:
        assert error.faults and all(fault.found and fault.accepted for fault in error.faults)


@given(data)
def test_what_is_written_reads_back(content: dict[str, Any]) -> None:
    assert repr(read(written(content))) == repr(content)


@given(trees)
def test_every_part_has_a_line(tree: Tree) -> None:
    assert {(), *paths(tree.data)} == set(tree.lines)


@given(data, st.data())
def test_the_same_value_leaves_every_byte(content: dict[str, Any], draw: st.DataObject) -> None:
    text = "# mine\n" + written(content).replace("\n", "  # note\n", 1)
    path = draw.draw(st.sampled_from(paths(content)))
    assert edited(text, path, at(content, path)) == text


@given(data, values, st.data())
def test_an_edit_says_what_was_asked_for(
    content: dict[str, Any], value: Any, draw: st.DataObject
) -> None:
    path = draw.draw(st.sampled_from(paths(content)))
    before = written(content)
    after = read(edited(before, path, value))
    assert repr(at(after, path)) == repr(value)
    assert repr(read(edited(edited(before, path, value), path, at(content, path)))) == repr(content)


@given(data, scalars, st.data())
def test_a_new_entry_comes_last(content: dict[str, Any], value: Any, draw: st.DataObject) -> None:
    inside = [path for path in [(), *paths(content)] if isinstance(at(content, path), dict)]
    path = draw.draw(st.sampled_from(inside))
    after = read(edited(written(content), (*path, "a new key"), value))
    assert list(at(after, path))[-1] == "a new key"


@given(data, st.data())
def test_a_removal_takes_one_part_and_keeps_the_rest(
    content: dict[str, Any], draw: st.DataObject
) -> None:
    path = draw.draw(st.sampled_from(paths(content)))
    if len(content) == 1 and len(path) == 1:
        return
    after = read(removed(written(content), path))
    del at(content, path[:-1])[path[-1]]
    assert repr(after) == repr(content)
