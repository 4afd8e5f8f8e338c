"""The highest stated temperature of each line."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.method import AnyStep, Step, peaks

STEPS: TypeAdapter[tuple[AnyStep, ...]] = TypeAdapter(tuple[Step, ...])


def celsius(lines: list[str], *steps: dict[str, Any]) -> dict[str, float]:
    found = peaks(lines, STEPS.validate_python(steps), component="x")
    return {name: round(kelvin - 273.15, 6) for name, kelvin in found.items()}


def test_a_line_that_enters_later_misses_the_heat_before() -> None:
    found = celsius(
        ["milk", "fruit"],
        {"step": "cook-to", "what": ["milk"], "temperature": "82 °C"},
        {"step": "cool-to", "temperature": "30 °C"},
        {"step": "mix", "what": ["fruit"]},
    )
    assert found == {"milk": 82.0, "fruit": 20.0}


def test_what_is_poured_in_shares_the_heat_that_follows() -> None:
    found = celsius(
        ["milk", "yolk"],
        {"step": "mix", "what": ["yolk"], "bowl": "side"},
        {"step": "cook-to", "what": ["milk"], "temperature": "60 °C"},
        {"step": "cook-to", "what": ["side"], "temperature": "84 °C"},
    )
    assert found == {"milk": 84.0, "yolk": 84.0}


def test_hot_syrup_onto_a_bowl_is_not_credited_to_it() -> None:
    found = celsius(
        ["sugar", "white"],
        {"step": "cook-to", "what": ["sugar"], "bowl": "pan", "temperature": "118 °C"},
        {"step": "whip", "what": ["white"], "overrun": "500 %"},
        {"step": "fold", "what": ["pan"]},
    )
    assert found == {"sugar": 118.0, "white": 20.0}


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        ({"step": "simmer"}, 95.0),
        ({"step": "simmer", "temperature": "88 °C"}, 88.0),
        ({"step": "bake", "at": "170 °C"}, 90.0),
        ({"step": "bake", "at": "80 °C"}, 80.0),
        ({"step": "melt"}, 20.0),
        ({"step": "rest", "temperature": "40 °C"}, 20.0),
    ],
)
def test_what_each_step_reaches(step: dict[str, Any], expected: float) -> None:
    assert celsius(["x"], step) == {"x": expected}
