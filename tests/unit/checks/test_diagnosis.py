"""Causes are ranked by how little room a dessert leaves before them."""

from __future__ import annotations

import pytest

from bench_texts import DOME, changed, reckoned_bench
from entremetry.checks import RULES, SYMPTOMS, Outcome, check, diagnose, find_symptom
from entremetry.checks.diagnosis import Diagnosis
from entremetry.errors import UnknownName


def of(symptom: str, changes: dict[str, object], component: str | None = None) -> Diagnosis:
    verdicts = check(reckoned_bench(changed(DOME, changes)))
    return diagnose(find_symptom(symptom), verdicts, component)


@pytest.mark.parametrize(
    ("symptom", "changes", "rule"),
    [
        ("grainy", {"components/mousse/method/2/temperature": "26 °C"}, "fold-temperature"),
        ("rubbery", {"components/mousse/formula/gelatine-sheet-gold": "14 g"}, "rubbery"),
        ("collapsed", {"components/mousse/formula/gelatine-sheet-gold": "0.1 g"}, "sets"),
        ("ran-off", {"assembly/1/temperature": "-2 °C"}, "glazed-frozen"),
        ("ran-off", {"assembly/3/temperature": "45 °C"}, "glaze-temperature"),
        ("see-through", {"placement/2/pour": "20 g"}, "glaze-poured"),
        ("stuck", {"assembly/1/temperature": "-3 °C"}, "unmould-temperature"),
        ("soggy", {"assembly/5/time": "60 h"}, "stays-crisp"),
        ("sank", {"components/insert/method/5/temperature": "2 °C"}, "insert-frozen"),
        ("too-hard", {"assembly/5/temperature": "-6 °C"}, "ice-at-service"),
        ("dull", {"components/glaze/formula/water": "250 g"}, "glaze-syrup"),
    ],
)
def test_what_is_wrong_here_comes_first(
    symptom: str, changes: dict[str, object], rule: str
) -> None:
    first = of(symptom, changes).suspects[0]
    assert first.cause.rule == rule
    assert first.verdict is not None and first.verdict.verdict is not Outcome.PASS


def test_likelihoods_add_up_and_fall() -> None:
    found = [s.likelihood for s in of("weeping", {}).suspects]
    assert sum(found) == pytest.approx(1.0)
    assert found == sorted(found, reverse=True) and min(found) > 0.0


def test_a_cause_that_cannot_be_here_is_left_out() -> None:
    names = {s.cause.rule for s in of("grainy", {}).suspects}
    assert "starch-cooked" not in names and "fold-temperature" in names


def test_one_component_alone_can_be_asked_about() -> None:
    found = of("grainy", {}, component="glaze")
    assert {s.verdict.component for s in found.suspects if s.verdict} == {"glaze"}


def test_a_cause_that_nothing_computes_keeps_its_measurement() -> None:
    (dew,) = [s for s in of("weeping", {}).suspects if not s.cause.rule]
    assert dew.verdict is None and dew.margin is None and dew.cause.measure


def test_a_symptom_is_found_by_id_by_words_and_by_a_part_of_them() -> None:
    assert find_symptom("too-hard") is find_symptom("Too hard")
    assert find_symptom("soggy") is find_symptom("The base is soggy")


def test_an_unknown_symptom_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="weeping"):
        find_symptom("weepin")


def test_every_cause_rests_on_a_rule_there_is_and_says_what_to_measure() -> None:
    rules = {rule.id for rule in RULES} | {""}
    for symptom in SYMPTOMS:
        assert len(symptom.causes) >= 3
        for cause in symptom.causes:
            assert cause.rule in rules and cause.measure and cause.advice
            assert 0.0 < cause.weight <= 1.0


def test_the_ten_symptoms_that_were_asked_for_are_there() -> None:
    wanted = [
        "weeping",
        "grainy",
        "rubbery",
        "ran-off",
        "sank",
        "stuck",
        "soggy",
        "too-hard",
        "cracked",
        "dull",
    ]
    assert {*wanted} <= {symptom.id for symptom in SYMPTOMS}
