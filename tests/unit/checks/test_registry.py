"""All rules together: order, sources, words, and the desserts that ship."""

from __future__ import annotations

import pytest

from bench_texts import DOME, LAYERS, changed, reckoned_bench
from entremetry.checks import RULES, Outcome, check
from entremetry.sources import BIBLIOGRAPHY
from entremetry.store.demo import demo_texts
from entremetry.usecases.checking import checks_of_text

SPOILT = {"components/mousse/formula/gelatine-sheet-gold": "0.1 g", "assembly/3/within": "8 min"}


@pytest.mark.parametrize("document", [DOME, LAYERS], ids=["dome", "layers"])
def test_a_sound_dessert_passes(document: dict[str, object]) -> None:
    found = check(reckoned_bench(document))
    assert [v.because for v in found if v.verdict is Outcome.FAIL] == []
    assert len(found) > 20


def test_what_fails_comes_first() -> None:
    found = [v.verdict for v in check(reckoned_bench(changed(DOME, SPOILT)))]
    assert found[0] is Outcome.FAIL and found[-1] is Outcome.PASS
    assert found == sorted(found, key=[Outcome.FAIL, Outcome.CAUTION, Outcome.PASS].index)


@pytest.mark.parametrize("name", demo_texts())
def test_no_check_fails_on_a_dessert_that_ships(name: str) -> None:
    checked = checks_of_text(demo_texts()[name], file=name, times=False)
    assert [v.because for v in checked.of(Outcome.FAIL)] == []
    assert len(checked.of(Outcome.CAUTION)) <= 4


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_names_its_sources_and_what_to_do(rule) -> None:  # type: ignore[no-untyped-def]
    assert {rule.source, *rule.sources} <= set(BIBLIOGRAPHY)
    sides = [side for side in (rule.too_low, rule.too_high) if side]
    assert sides and all(side.why and side.advice.endswith(".") for side in sides)
    assert rule.formula and rule.title


def test_nothing_is_ever_called_safe() -> None:
    said = " ".join(
        f"{rule.title} {rule.formula} {side.why} {side.advice}"
        for rule in RULES
        for side in (rule.too_low, rule.too_high)
        if side
    )
    assert "safe" not in said.casefold()


def test_a_verdict_is_one_sentence_with_its_number() -> None:
    for verdict in check(reckoned_bench(DOME)):
        assert verdict.because.endswith(".") and verdict.because.count(". ") == 0
        assert verdict.low <= verdict.value <= verdict.high
        assert verdict.is_sure == all(
            verdict.band.outcome(end) is verdict.verdict for end in (verdict.low, verdict.high)
        )
