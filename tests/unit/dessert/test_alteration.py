"""Changes of one part of a document, and what they leave alone."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.dessert.alteration import (
    Alteration,
    adding,
    adding_component,
    adding_lines,
    moving,
    part_at,
    setting,
    setting_on_line,
    taking_out,
    taking_out_component,
)
from entremetry.documents import Path
from entremetry.store.demo import demo_texts

DOME = demo_texts()["blackcurrant-vanilla-dome"]
INSERT: Path = ("placement", 1)


def changed(alteration: Alteration, text: str = DOME) -> str:
    return alteration.change(text)


def test_a_value_is_set_and_nothing_else_changes() -> None:
    after = changed(setting((*INSERT, "below_rim"), "7 mm"))
    assert after == DOME.replace("below_rim: 5 mm", "below_rim: 7 mm")


def test_a_measure_takes_the_place_of_its_rival() -> None:
    after = changed(setting((*INSERT, "from_closed_end"), "12 mm"))
    assert "below_rim" not in part_at(after, INSERT)
    assert part_at(after, (*INSERT, "from_closed_end")) == "12 mm"


def test_nothing_takes_a_value_out_and_is_content_if_there_is_none() -> None:
    assert "below_rim" not in part_at(changed(setting((*INSERT, "below_rim"), None)), INSERT)
    assert changed(setting((*INSERT, "aside"), None)) == DOME


@pytest.mark.parametrize(
    ("line", "field", "value", "wanted"),
    [
        ("cream-35", "amount", "70 g", "70 g"),
        ("cream-35", "note", "cold", {"amount": "62 g", "note": "cold"}),
        ("egg-yolk", "amount", "18 g", {"amount": "18 g", "note": "one large yolk"}),
        ("egg-yolk", "note", None, {"amount": "17 g"}),
        ("cream-35", "note", None, "62 g"),
    ],
)
def test_a_line_is_changed_however_it_is_written(
    line: str, field: str, value: str | None, wanted: Any
) -> None:
    after = changed(setting_on_line("vanilla-insert", line, field, value))
    assert part_at(after, ("components", "vanilla-insert", "formula", line)) == wanted


def test_a_component_goes_with_its_places() -> None:
    after = changed(taking_out_component("blackcurrant-glaze"))
    assert "blackcurrant-glaze" not in part_at(after, ("components",))
    places = part_at(after, ("placement",))
    assert "blackcurrant-glaze" not in {place["component"] for place in places}
    assert len(places) == len(part_at(DOME, ("placement",))) - 1


def test_lines_with_a_name_that_is_taken_get_a_number() -> None:
    after = changed(adding_lines("vanilla-insert", {"cream-35": "5 g", "salt": "1 g"}))
    formula = part_at(after, ("components", "vanilla-insert", "formula"))
    assert formula["cream-35"] == "62 g"
    assert (formula["cream-35-2"], formula["salt"]) == ("5 g", "1 g")


def test_a_component_is_added_with_its_place_under_a_free_name() -> None:
    written = {"name": "Jelly", "kind": "insert", "formula": {"water": "9 g"}}
    place = {"component": "", "as": "layer", "height": "4 mm"}
    after = changed(adding_component("vanilla-insert", written, place))
    assert part_at(after, ("components", "vanilla-insert-2")) == written
    assert part_at(after, ("placement",))[-1]["component"] == "vanilla-insert-2"


def test_a_step_is_added_to_a_method_that_was_not_there() -> None:
    path: Path = ("components", "roasted-hazelnuts", "method")
    after = changed(adding(path, {"step": "mix"}))
    assert part_at(after, path) == [{"step": "mix"}]
    assert part_at(changed(adding(path, {"step": "rest"}), after), path)[1] == {"step": "rest"}


def test_moving_touches_the_whole_list() -> None:
    alteration = moving(INSERT, 0)
    assert alteration.touches == ("placement",)
    assert part_at(changed(alteration), ("placement", 0, "component")) == "vanilla-insert"


def test_taking_out_and_asking_for_what_is_not_there() -> None:
    after = changed(taking_out(INSERT))
    assert part_at(after, ("placement", 4)) is None
    assert part_at(after, ("placement", "x", "y")) is None
