"""Swaps through a whole document."""

from __future__ import annotations

import pytest

from entremetry.adapt.adapting import adapted_text
from entremetry.adapt.swap import read_swap
from entremetry.errors import UnknownName
from unit.adapt.mousse_texts import MOUSSE, formula_of, opened


def test_every_component_that_holds_it_is_changed() -> None:
    adapted = adapted_text(MOUSSE, [read_swap("caster-sugar=trehalose")], opened)
    assert [each.component for each in adapted.components] == ["raspberry-mousse", "syrup"]
    for component in ("raspberry-mousse", "syrup"):
        made = formula_of(adapted.text, component)
        assert "trehalose" in made and "caster-sugar" not in made
    assert {change.component for change in adapted.changes} == {"raspberry-mousse", "syrup"}


def test_several_swaps_go_one_after_the_other() -> None:
    swaps = [read_swap("cream-35=cream-30"), read_swap("raspberry-puree=strawberry-puree")]
    made = formula_of(adapted_text(MOUSSE, swaps, opened).text)
    assert {"cream-30", "strawberry-puree"} <= set(made)


def test_a_name_of_the_larder_is_as_good_as_an_id() -> None:
    adapted = adapted_text(MOUSSE, [read_swap("Cream 35 % = Cream 30 %")], opened)
    assert "cream-30" in formula_of(adapted.text)


def test_what_is_in_no_formula_is_refused() -> None:
    with pytest.raises(UnknownName, match="cream-35"):
        adapted_text(MOUSSE, [read_swap("cream-36=cream-30")], opened)


def test_a_line_with_a_name_of_its_own_keeps_it() -> None:
    text = MOUSSE.replace("cream-35: {amount", "whipped: {ingredient: cream-35, amount").replace(
        "what: [cream-35]", "what: [whipped]"
    )
    adapted = adapted_text(text, [read_swap("cream-35=cream-30")], opened)
    assert "whipped: {ingredient: cream-30, amount:" in adapted.text
    line = next(each for each in adapted.components[0].lines if each.line == "whipped")
    assert line.ingredient == "cream-35" and line.after is None
