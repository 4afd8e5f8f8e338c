"""Lines and components taken out of a document, with all that was there for them alone."""

from __future__ import annotations

import pytest

from entremetry.adapt.leaving_out import without_component, without_line
from entremetry.adapt.method_without import steps_without
from entremetry.documents import read_tree
from entremetry.errors import UnknownName
from entremetry.store.demo import demo_texts

DOME = demo_texts()["blackcurrant-vanilla-dome"]
BARS = demo_texts()["raspberry-pistachio-bars"]


def kinds(text: str, component: str) -> list[str]:
    data = read_tree(text, file="t").data
    return [step["step"] for step in data["components"][component]["method"]]


def test_a_line_goes_from_formula_and_method() -> None:
    found = without_line(DOME, "blackcurrant-mousse", "gelatine-sheet-gold")
    data = read_tree(found.text, file="t").data["components"]["blackcurrant-mousse"]
    assert "gelatine-sheet-gold" not in data["formula"]
    assert data["method"][0]["what"] == ["blackcurrant-puree", "caster-sugar"]
    assert kinds(found.text, "blackcurrant-mousse")[0] == "melt"
    assert [change.text for change in found.changes][:2] == [
        "left out: gelatine-sheet-gold",
        "no step 'soak' with gelatine-sheet-gold any more",
    ]


def test_a_bowl_that_nothing_gets_into_goes_with_its_steps() -> None:
    found = without_line(DOME, "blackcurrant-mousse", "cream-35")
    assert kinds(found.text, "blackcurrant-mousse") == ["soak", "melt", "cool-to", "pour"]


def test_what_a_sieve_takes_out_is_no_longer_named() -> None:
    found = without_line(DOME, "vanilla-insert", "vanilla-bean")
    method = read_tree(found.text, file="t").data["components"]["vanilla-insert"]["method"]
    assert next(step for step in method if step["step"] == "strain").get("removes") is None
    assert method[1]["what"] == ["cream-35", "whole-milk"]


def test_the_rest_stays_as_it_was_written() -> None:
    found = without_line(DOME, "hazelnut-shortcrust", "salt")
    gone = set(DOME.splitlines()) - set(found.text.splitlines())
    assert len(gone) == 2 and all("salt" in line for line in gone)


def test_the_last_line_is_refused() -> None:
    found = without_line(DOME, "roasted-hazelnuts", "hazelnut-roasted")
    assert found.text == DOME and "leave out the component" in found.refused


def test_a_component_goes_from_placement_and_assembly() -> None:
    found = without_component(DOME, "blackcurrant-glaze")
    data = read_tree(found.text, file="t").data
    assert "blackcurrant-glaze" not in data["components"]
    assert all(each["component"] != "blackcurrant-glaze" for each in data["placement"])
    assert "glaze-at" not in [step["step"] for step in data["assembly"]]


def test_a_named_part_of_the_assembly_goes_alone() -> None:
    found = without_component(DOME, "roasted-hazelnuts")
    placing = read_tree(found.text, file="t").data["assembly"][4]
    assert placing["what"] == ["hazelnut-shortcrust"]


def test_a_step_that_placed_nothing_else_goes() -> None:
    found = without_component(BARS, "pistachio-chopped")
    steps = [step["step"] for step in read_tree(found.text, file="t").data["assembly"]]
    assert "place" not in steps


def test_a_syrup_goes_with_the_base_it_is_brushed_on() -> None:
    found = without_component(BARS, "pistachio-sponge")
    components = read_tree(found.text, file="t").data["components"]
    assert not {"pistachio-sponge", "raspberry-soak"} & set(components)
    assert [c.component for c in found.changes if c.kind == "gone"] == [
        "pistachio-sponge",
        "raspberry-soak",
    ]


def test_a_component_in_a_component_goes_as_a_line() -> None:
    text = BARS.replace("neutral-glaze: 200 g", "syrup: {component: raspberry-soak, amount: 200 g}")
    found = without_component(text, "raspberry-soak")
    formula = read_tree(found.text, file="t").data["components"]["raspberry-glaze"]["formula"]
    assert list(formula) == ["raspberry-puree"]


def test_what_fills_the_mould_is_refused() -> None:
    found = without_component(DOME, "blackcurrant-mousse")
    assert found.text == DOME and "takes all the room" in found.refused


@pytest.mark.parametrize(("component", "line"), [("mouse", "x"), ("blackcurrant-mousse", "creme")])
def test_unknown_names_are_refused(component: str, line: str) -> None:
    with pytest.raises(UnknownName):
        without_line(DOME, component, line)


def test_unnamed_lines_keep_the_main_bowl_filled() -> None:
    steps = [{"step": "simmer", "what": ["a"]}, {"step": "pour"}]
    assert steps_without(steps, {"a"}, lines=["a", "b"]) == ({"step": "simmer"}, {"step": "pour"})
    assert steps_without(steps, {"a"}, lines=["a"]) == (None, None)
