"""Hands of one dessert in a plan, counted by hand."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from entremetry.errors import QuantityError, StoreError, UnknownName
from entremetry.store.demo import demo_texts
from entremetry.usecases.labelling import Prices, label_of, label_of_text
from entremetry.usecases.planned_hands import planned_hands

GLASS = "mango-coconut-lime-glass"


def task(name: str, minutes: int, *together: str) -> dict[str, Any]:
    return {
        "id": name,
        "dessert": name.partition("/")[0],
        "hands_on_min": minutes,
        "together": list(together),
    }


# 12 + 8 of its own, and half of 10 that it weighs together with the bars; 30 are the bars' alone.
PLAN = {
    "served": [{"dessert": GLASS, "pieces": 10}, {"dessert": "bars", "pieces": 36}],
    "tasks": [
        task(f"{GLASS}/compote/simmer-2", 12),
        task(f"{GLASS}/assembly/fill-1", 8),
        task(f"{GLASS}/compote/weigh-1+1", 10, f"{GLASS}/compote/weigh-1", "bars/jelly/weigh-1"),
        task("bars/jelly/pour-4", 30),
    ],
}
PRICES = "entremetry_prices: 1\ncurrency: EUR\nlabour_per_hour: 24\nprices: {}\n"


def test_its_own_tasks_and_its_share_of_those_done_together() -> None:
    found = planned_hands(json.dumps(PLAN), GLASS)
    assert (found.minutes, found.pieces) == (25.0, 10)
    assert planned_hands(json.dumps(PLAN), "bars").minutes == 35.0


def test_labour_is_priced_from_the_plan() -> None:
    prices = Prices(text=PRICES, plan=json.dumps(PLAN))
    cost: Any = label_of_text(demo_texts()[GLASS], pieces=10, prices=prices).cost
    assert cost.labour == pytest.approx(25 / 60 * 24)  # 10.00
    assert cost.labour_because == "this dessert's hands-on time in the plan for 10 pieces"


def test_another_number_of_pieces_is_in_proportion_and_says_so() -> None:
    prices = Prices(text=PRICES, plan=json.dumps(PLAN))
    cost: Any = label_of_text(demo_texts()[GLASS], pieces=20, prices=prices).cost
    assert cost.labour_minutes == pytest.approx(50.0)
    assert "in proportion to the pieces" in cost.labour_because


def test_without_a_plan_it_is_the_method_and_says_so() -> None:
    cost: Any = label_of_text(demo_texts()[GLASS], prices=Prices(text=PRICES)).cost
    assert "steps of the method" in cost.labour_because


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("no plan", StoreError),
        ("{}", StoreError),
        ("[]", StoreError),
        (json.dumps({**PLAN, "tasks": [{"id": "x"}]}), StoreError),
        (json.dumps({**PLAN, "tasks": []}), QuantityError),
        (json.dumps({**PLAN, "served": PLAN["served"][1:]}), UnknownName),
    ],
)
def test_what_is_no_plan_of_this_dessert_is_refused(text: str, error: type[Exception]) -> None:
    with pytest.raises(error):
        planned_hands(text, GLASS)


def test_a_plan_without_prices_is_refused_in_words(tmp_path: Path) -> None:
    dessert, plan = tmp_path / "glass.yaml", tmp_path / "plan.json"
    dessert.write_text(demo_texts()[GLASS], encoding="utf-8")
    plan.write_text(json.dumps(PLAN), encoding="utf-8")
    with pytest.raises(QuantityError, match="--prices FILE"):
        label_of(dessert, plan=plan)
