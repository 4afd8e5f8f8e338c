"""Which steps can be timed."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.timings.timed_step import find_step, timed_steps
from timed_desserts import reckoning_of

DESSERT = reckoning_of().dessert


def test_every_step_that_waits_or_warms_is_listed_in_the_order_of_the_work() -> None:
    assert [step.id for step in timed_steps(DESSERT)] == [
        "cool-heart",
        "freeze-heart",
        "simmer-milk",
        "cool-base",
        "fold-cream",
        "cool-glaze",
        "freeze",
        "glaze-it",
        "thaw",
    ]


def test_a_step_without_an_id_is_named_by_component_and_number() -> None:
    dessert = reckoning_of((", id: cool-heart", ""), (", id: thaw,", ",")).dessert
    ids = [step.id for step in timed_steps(dessert)]
    assert "heart-3" in ids and "assembly-5" in ids
    assert find_step(dessert, "heart-3").sentence.startswith("Cool to 30")


def test_the_only_step_of_a_kind_goes_by_its_kind() -> None:
    assert find_step(DESSERT, "thaw-until").id == "thaw"


def test_a_kind_that_occurs_twice_is_no_name() -> None:
    with pytest.raises(UnknownName, match="step that can be timed"):
        find_step(DESSERT, "freeze-until")


def test_a_slip_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="freeze-heart"):
        find_step(DESSERT, "freeze-hart")


def test_a_step_that_lacks_what_physics_needs_is_not_listed() -> None:
    dessert = reckoning_of(("evaporates: 10 g", "note: Just warm.")).dessert
    assert "simmer-milk" not in [step.id for step in timed_steps(dessert)]
    loose = reckoning_of(
        ("  - {component: glaze, as: coating, film: 2 mm, pour: 60 g}\n", "")
    ).dessert
    assert "glaze-it" not in [step.id for step in timed_steps(loose)]
    baked = reckoning_of(
        (
            "bake, at: 160 °C, loss: 10 %}",
            "bake, at: 160 °C, loss: 10 %}\n"
            "      - {step: cool-to, id: cool-crust, temperature: 20 °C}",
        )
    ).dessert
    assert "cool-crust" not in [step.id for step in timed_steps(baked)]
