"""Headings split a pasted text into components."""

from __future__ import annotations

import pytest

from entremetry.dessert.pasted_components import pasted_components


@pytest.mark.parametrize(
    ("heading", "name"),
    [
        ("Mousse:", "Mousse"),
        ("**Mousse:**", "Mousse"),
        ("## Mousse", "Mousse"),
        ("For the mousse:", "Mousse"),
        ("Pour la mousse :", "Mousse"),
        ("Pour l'insert :", "Insert"),
    ],
)
def test_a_heading_ends_in_a_colon_or_starts_with_a_hash(heading: str, name: str) -> None:
    (component,) = pasted_components(f"{heading}\n240 g sugar\n\n", "Dome")
    assert (component.name, component.lines) == (name, ("240 g sugar",))


def test_without_a_heading_all_lines_are_one_component() -> None:
    (component,) = pasted_components("240 g sugar\n\n2 eggs\n", "Dome")
    assert (component.name, component.lines) == ("Dome", ("240 g sugar", "2 eggs"))


def test_a_heading_without_lines_is_left_out() -> None:
    found = pasted_components("Base:\nMousse:\n240 g sugar\n", "Dome")
    assert [component.name for component in found] == ["Mousse"]
