"""Verdicts in French: every text of ours is said in it, and no number or outcome changes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest

from bench_texts import DOME, LAYERS, bench_of, changed, verdicts_of
from entremetry.checks import RULES, Band, Verdict, composition, geometry
from entremetry.checks.saying import amount, number, said
from entremetry.store.demo import demo_texts
from entremetry.usecases.checking import checks_of_text
from entremetry.words import say, speaking
from rule_cases import CASES, Case

ALIKE = {"fructose", "galactose", "glucose", "insert", "lactose", "maltose", "polyols"}
"""Names that are the same in both languages."""
ENGLISH_WORDS = re.compile(
    r"\b(the|of|it|its|is|and|with|at|to|be|so|too|should|where|than|what|water|fat|baked)\b",
    re.IGNORECASE,
)
ENGLISH_POINT = re.compile(r"\d\.\d")


def texts(verdict: Verdict) -> Iterator[str]:
    """All that a verdict says in words of ours, without the names that an author gave."""
    yield from (verdict.title, verdict.formula, verdict.because, verdict.advice)
    yield from (text for each in verdict.inputs for text in (each.name, each.said))


def assert_said_in_french(english: Verdict, french: Verdict) -> None:
    for one, other in zip(texts(english), texts(french), strict=True):
        left = other.replace(french.name, "")
        assert not ENGLISH_POINT.search(left), left
        assert not ENGLISH_WORDS.search(left), left
        is_amount = one in {each.said for each in english.inputs}
        assert one != other or not one or one in ALIKE or is_amount, one


def assert_same_finding(english: Verdict, french: Verdict) -> None:
    words = {"title": "", "formula": "", "because": "", "advice": "", "inputs": ()}
    assert replace(english, **words) == replace(french, **words)  # type: ignore[arg-type]


@pytest.mark.parametrize("rule", CASES)
@pytest.mark.parametrize("index", range(3))
def test_a_rule_says_its_verdict_in_french(rule: str, index: int) -> None:
    case: Case = CASES[rule][index]
    document = changed({"dome": DOME, "layers": LAYERS}[case.start], case.changes)
    english = verdicts_of(rule, bench_of(document))
    with speaking("fr"):
        french = verdicts_of(rule, bench_of(document))
    assert english and len(english) == len(french)
    for one, other in zip(english, french, strict=True):
        assert_said_in_french(one, other)
        assert_same_finding(one, other)


@pytest.mark.parametrize("name", demo_texts())
def test_checks_of_a_dessert_that_ships_speak_french(name: str) -> None:
    english = checks_of_text(demo_texts()[name], file=name, times=False).verdicts
    with speaking("fr"):
        french = checks_of_text(demo_texts()[name], file=name, times=False).verdicts
    assert [v.id for v in english] == [v.id for v in french]
    assert len(english) > 10
    for one, other in zip(english, french, strict=True):
        assert_said_in_french(one, other)
        assert one.name in demo_texts()[name]
        assert_same_finding(replace(one, name=other.name), other)  # named by its translation
