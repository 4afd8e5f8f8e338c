"""Names are followed from the scale to the last bowl."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.errors import DocumentError
from entremetry.method import AnyStep, Route, Step, route

STEPS: TypeAdapter[tuple[AnyStep, ...]] = TypeAdapter(tuple[Step, ...])


def follow(lines: Sequence[str], *steps: dict[str, Any]) -> Route:
    return route(lines, STEPS.validate_python(steps), component="heart")


def faults(lines: Sequence[str], *steps: dict[str, Any]) -> list[str]:
    with pytest.raises(DocumentError) as raised:
        follow(lines, *steps)
    return [str(fault) for fault in raised.value.faults]


def test_lines_that_no_step_names_enter_at_the_first_step() -> None:
    way = follow(["milk", "sugar", "yolk"], {"step": "mix"}, {"step": "mix", "what": ["yolk"]})
    assert way.stops[0].lines == ("milk", "sugar")
    assert way.stops[1].lines == ("yolk",)
    assert way.last_bowl == "main"


def test_they_wait_for_the_soaking_to_be_over() -> None:
    way = follow(["gelatine", "milk"], {"step": "soak", "what": ["gelatine"]}, {"step": "mix"})
    assert way.stops[0].lines == ("gelatine",)
    assert way.stops[1].lines == ("milk",)
    assert way.stops[1].soaked == ("gelatine",)
    assert not way.stops[1].adds


def test_they_do_not_enter_a_side_bowl() -> None:
    way = follow(
        ["fruit", "cream"],
        {"step": "whip", "what": ["cream"], "bowl": "foam"},
        {"step": "fold", "what": ["foam"]},
    )
    assert way.stops[0].lines == ("cream",)
    assert way.stops[1].lines == ("fruit",)
    assert way.stops[1].bowls == ("foam",)


def test_without_a_main_bowl_the_last_filled_bowl_is_the_end() -> None:
    way = follow(["flour", "butter"], {"step": "mix", "bowl": "dough"})
    assert way.last_bowl == "dough"
    assert way.stops[0].lines == ("flour", "butter")


def test_a_line_named_again_was_set_aside_under_its_name() -> None:
    way = follow(
        ["gelatine", "milk"],
        {"step": "soak", "what": ["gelatine"]},
        {"step": "cook-to", "what": ["milk"], "temperature": "60 °C"},
        {"step": "mix", "what": ["gelatine"]},
    )
    assert [stop.bowl for stop in way.stops] == ["gelatine", "main", "main"]
    assert way.stops[2].bowls == ("gelatine",)


def test_a_bowl_may_bear_the_name_of_a_line() -> None:
    way = follow(
        ["fruit", "cream"],
        {"step": "whip", "what": ["cream"], "bowl": "cream"},
        {"step": "fold", "what": ["cream", "fruit"]},
    )
    assert way.stops[1].bowls == ("cream",)
    assert way.stops[1].lines == ("fruit",)


def test_no_steps_leave_everything_in_the_main_bowl() -> None:
    assert follow(["nuts"]) == Route(stops=(), last_bowl="main")


def test_an_unknown_name_is_answered_with_the_nearest() -> None:
    (fault,) = faults(["cream", "sugar"], {"step": "mix", "what": ["craem"]})
    assert "components.heart.method.0.what" in fault
    assert "found 'craem'" in fault
    assert "did you mean cream?" in fault


def test_a_line_used_twice_is_refused() -> None:
    (fault,) = faults(
        ["milk", "sugar"],
        {"step": "mix", "what": ["milk", "sugar"]},
        {"step": "mix", "what": ["milk", "sugar"]},
    )[:1]
    assert "'milk', which has been used already" in fault


def test_a_line_named_twice_in_one_step_is_refused() -> None:
    (fault,) = faults(["milk"], {"step": "mix", "what": ["milk", "milk"]})
    assert "used already" in fault


def test_a_bowl_that_never_joins_is_refused() -> None:
    (fault,) = faults(
        ["fruit", "cream"],
        {"step": "mix", "what": ["fruit"]},
        {"step": "whip", "what": ["cream"], "bowl": "foam"},
    )
    assert "'foam', a bowl that never joins the others" in fault
    assert "a later step with what: [foam]" in fault


def test_a_step_in_an_empty_bowl_is_refused() -> None:
    found = faults(["cream"], {"step": "mix"}, {"step": "whip", "bowl": "foam"})
    assert "'foam', a bowl with nothing in it" in found[0]


def test_a_bowl_that_was_poured_out_is_empty() -> None:
    found = faults(
        ["fruit", "cream"],
        {"step": "whip", "what": ["cream"], "bowl": "foam"},
        {"step": "fold", "what": ["foam"]},
        {"step": "whip", "bowl": "foam"},
    )
    assert "'foam', a bowl with nothing in it" in found[0]


def test_only_what_is_in_the_bowl_can_be_strained_out() -> None:
    steps = ({"step": "mix"}, {"step": "strain", "removes": ["pod", "pdo"]})
    (fault,) = faults(["milk", "pod"], *steps)
    assert "components.heart.method.1.removes" in fault
    assert "'pdo', which is not in this bowl" in fault


def test_nothing_is_strained_out_twice() -> None:
    strain = {"step": "strain", "removes": ["pod"]}
    (fault,) = faults(["milk", "pod"], {"step": "mix"}, strain, strain)
    assert "method.2.removes" in fault


def test_all_faults_come_at_once() -> None:
    found = faults(
        ["cream", "milk"],
        {"step": "mix", "what": ["craem"]},
        {"step": "strain", "removes": ["pod"]},
        {"step": "whip", "what": ["cream"], "bowl": "foam"},
    )
    assert len(found) == 3
