"""Strategies that draw plain data, documents and paths into them."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from entremetry.documents import Path, Tree, read_tree, written

texts = st.text(
    st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn", "Co"]), max_size=20
)
_CONTENTS = st.one_of(
    texts,
    st.sampled_from(
        ["yes", "null", "1.0", "~", "a: b", "# a", "- a", "'", '"', "{", " a ", "240 g"]
    ),
    st.text("ab\n\t é:#-{}[],&*!|>'\"%@`\u2028", max_size=8),
)
scalars = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-(10**15), 10**15),
    st.floats(allow_nan=False, allow_infinity=False),
    _CONTENTS,
)
keys = st.one_of(
    st.sampled_from(["name", "on", "1", "formula", "a b", "true", "60 °C"]),
    texts.filter(lambda key: key != "<<"),
)
values = st.recursive(
    scalars,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(keys, inner, max_size=4),
    max_leaves=12,
)
data = st.dictionaries(keys, values, min_size=1, max_size=5)
trees: st.SearchStrategy[Tree] = data.map(lambda each: read_tree(written(each), file="drawn.yaml"))


def paths(content: Any) -> list[Path]:
    """Every path into plain data."""
    members = (
        content.items()
        if isinstance(content, dict)
        else enumerate(content)
        if isinstance(content, list)
        else ()
    )
    found: list[Path] = []
    for part, inside in members:
        found += [(part,), *((part, *path) for path in paths(inside))]
    return found
