"""Laws of leaving out: what is left can be made, and its mass balances."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from entremetry.adapt.leaving_out import without_component, without_line
from entremetry.adapt.rebalanced import Adapted
from entremetry.documents import read_tree
from entremetry.errors import BalanceError, EntremetryError
from entremetry.store.demo import demo_texts
from entremetry.usecases.adapting import consistent
from entremetry.usecases.batch import batch_of_text
from properties.strategies_dessert import case_of, texts

DEMOS = demo_texts()
LINES = [
    (demo, component, line)
    for demo, text in DEMOS.items()
    for component, each in read_tree(text, file=demo).data["components"].items()
    for line in each["formula"]
]
PARTS = list(dict.fromkeys((demo, component) for demo, component, _ in LINES))


def balances(text: str) -> None:
    """Weighed less lost is what is there, for every component; or a step asks for what is gone."""
    try:
        left = consistent(Adapted(text=text, changes=(), components=()))
        sheet = batch_of_text(left.text)
    except BalanceError as error:
        assert "there are only" in str(error) or "cannot" in str(error)
        return
    for component in sheet.components:
        weighed = sum(line.mass for line in component.lines)
        gone = sum(change.mass for change in component.changes if change.mass < 0.0)
        assert weighed + gone == pytest.approx(component.ready_mass, rel=1e-6)


@pytest.mark.parametrize(("demo", "component", "line"), LINES)
def test_a_line_left_out_keeps_the_mass_balance(demo: str, component: str, line: str) -> None:
    found = without_line(DEMOS[demo], component, line)
    if found.refused:
        assert found.text == DEMOS[demo]
        return
    left = read_tree(found.text, file=demo).data["components"][component]
    assert line not in left["formula"]
    named = {name for step in left.get("method") or () for name in step.get("what") or ()}
    assert line not in named
    balances(found.text)


@pytest.mark.parametrize(("demo", "component"), PARTS)
def test_a_component_left_out_keeps_the_mass_balance(demo: str, component: str) -> None:
    found = without_component(DEMOS[demo], component)
    if found.refused:
        assert found.text == DEMOS[demo]
        return
    assert component not in read_tree(found.text, file=demo).data["components"]
    balances(found.text)


@settings(max_examples=30)
@given(texts)
def test_drawn_desserts_lose_any_placed_part_or_say_why(text: str) -> None:
    case = case_of(text)
    for component in case.reckoning.dessert.components:
        found = without_component(text, component.id)
        if found.refused:
            assert found.text == text
            continue
        try:
            after = case_of(found.text)
        except EntremetryError as error:
            assert str(error)
            continue
        assert component.id not in after.reckoning.makings
        for each in after.sheet.components:
            weighed = sum(line.mass for line in each.lines)
            gone = sum(change.mass for change in each.changes if change.mass < 0.0)
            assert weighed + gone == pytest.approx(each.ready_mass, rel=1e-6, abs=1e-9)
