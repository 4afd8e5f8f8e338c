"""The version of a document."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.documents import at_current_version, read_tree
from entremetry.errors import DocumentError


def lifted(data: dict[str, Any]) -> dict[str, Any]:
    return {**data, "entremetry": 2, "title": data["name"]}


def test_the_current_version_is_left_alone() -> None:
    tree = read_tree("entremetry: 1", file="a.yaml")
    assert at_current_version(tree, key="entremetry", file="a.yaml").data == {"entremetry": 1}


def test_an_older_version_is_lifted() -> None:
    tree = read_tree("entremetry: 1\nname: Pear", file="a.yaml")
    data = at_current_version(tree, key="entremetry", file="a.yaml", migrations=(lifted,)).data
    assert (data["entremetry"], data["title"]) == (2, "Pear")


def test_a_newer_version_is_refused_clearly() -> None:
    tree = read_tree("name: Pear\nentremetry: 2", file="a.yaml")
    with pytest.raises(DocumentError, match="line 2, entremetry: found version 2, made by a newer"):
        at_current_version(tree, key="entremetry", file="a.yaml")


@pytest.mark.parametrize(
    "text", ["name: Pear", 'entremetry: "1"', "entremetry: true", "entremetry: 0"]
)
def test_a_document_without_a_version_is_refused(text: str) -> None:
    with pytest.raises(DocumentError, match="first line 'entremetry: 1'"):
        at_current_version(read_tree(text, file="a.yaml"), key="entremetry", file="a.yaml")
