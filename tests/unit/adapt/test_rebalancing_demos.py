"""The demo desserts rebalanced: every component, and swaps through all of them."""

from __future__ import annotations

import pytest

from entremetry.adapt.adapting import adapted_text
from entremetry.adapt.asking import Asked
from entremetry.adapt.rebalancing import rebalanced_text
from entremetry.adapt.swap import read_swap
from entremetry.store.demo import demo_texts
from unit.adapt.mousse_texts import opened

DEMOS = dict(demo_texts())
COMPONENTS = [(name, each.id) for name, text in DEMOS.items() for each in opened(text).components]


@pytest.mark.parametrize(("name", "component"), COMPONENTS)
def test_nothing_asked_changes_nothing(name: str, component: str) -> None:
    assert rebalanced_text(DEMOS[name], Asked(component=component), opened).text == DEMOS[name]


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize(
    "swap", ["caster-sugar=trehalose", "gelatine-sheet-gold=agar-powder", "cream-35=cream-30"]
)
def test_a_swapped_demo_can_be_made(name: str, swap: str) -> None:
    old = swap.partition("=")[0]
    if f"{old}:" not in DEMOS[name]:
        pytest.fail(f"{name} has no {old}")
    adapted = adapted_text(DEMOS[name], [read_swap(swap)], opened)
    lines = [ln for component in opened(adapted.text).components for ln in component.lines]
    assert old not in {line.ingredient.id for line in lines if line.ingredient}


def test_a_method_that_cannot_follow_is_said_without_a_proof() -> None:
    text = DEMOS["pear-caramel-log"]
    result = rebalanced_text(text, Asked(component="caramel-glaze", targets=("brix=40",)), opened)
    assert result.conflict is not None and not result.conflict.proved
    assert "cannot evaporate" in result.conflict.demands[-1]
    assert result.text == text
