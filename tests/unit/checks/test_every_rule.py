"""Each rule passes where it should, cautions where it should, and fails where it should."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from bench_texts import DOME, LAYERS, bench_of, changed, verdicts_of
from entremetry.checks.registry import RULES
from entremetry.kitchen.kitchen_document import KitchenDocument
from rule_cases import CASES, KITCHENS, TIMES, Case

LEVELS = ("pass", "caution", "fail")


def kitchen(owned: Mapping[str, Any]) -> KitchenDocument:
    """A kitchen with these machines."""
    return KitchenDocument.model_validate({"entremetry_kitchen": 1, "name": "Mine", **owned})


def by_case() -> list[tuple[str, str, Case]]:
    """Rule, verdict and what brings it about."""
    return [
        (rule, level, case)
        for rule, cases in CASES.items()
        for level, case in zip(LEVELS, cases, strict=True)
    ]


@pytest.mark.parametrize(("rule", "level", "case"), by_case(), ids=lambda v: str(v)[:24])
def test_a_rule_gives_its_verdict(rule: str, level: str, case: Case) -> None:
    document = changed({"dome": DOME, "layers": LAYERS}[case.start], case.changes)
    found = [v for v in verdicts_of(rule, bench_of(document)) if v.component == case.component]
    assert found, "the rule says nothing"
    worst = min(found, key=lambda verdict: verdict.margin)
    assert worst.verdict == level, worst.because
    assert bool(worst.advice) == (level != "pass")


@pytest.mark.parametrize("rule", KITCHENS)
@pytest.mark.parametrize("index", range(3))
def test_a_rule_about_the_kitchen(rule: str, index: int) -> None:
    (verdict,) = verdicts_of(rule, bench_of(DOME, kitchen(KITCHENS[rule][index])))
    assert verdict.verdict == LEVELS[index], verdict.because


@pytest.mark.parametrize("rule", TIMES)
@pytest.mark.parametrize("index", range(3))
def test_a_rule_about_times(rule: str, index: int) -> None:
    bench = bench_of(DOME, temperatures={"assembly-2": TIMES[rule][index]})
    (verdict,) = verdicts_of(rule, bench)
    assert verdict.verdict == LEVELS[index], verdict.because


def test_every_rule_has_its_three_cases() -> None:
    assert {rule.id for rule in RULES} == {*CASES, *KITCHENS, *TIMES}


def test_there_are_forty_rules_at_least_and_each_has_its_own_name() -> None:
    names = [rule.id for rule in RULES]
    assert len(names) >= 40 and len(set(names)) == len(names)
