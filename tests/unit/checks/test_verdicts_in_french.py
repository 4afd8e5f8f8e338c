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


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_both_sides_of_a_rule_have_french_words(rule) -> None:  # type: ignore[no-untyped-def]
    sides = [side for side in (rule.too_low, rule.too_high) if side]
    ours = [rule.title, rule.formula, *(text for s in sides for text in (s.why, s.advice))]
    with speaking("fr"):
        assert [text for text in ours if say(text) == text or ENGLISH_WORDS.search(say(text))] == []


@pytest.mark.parametrize(
    "constant",
    [*geometry.WALLS.values(), geometry.PAST, geometry.SHORT, *composition.PARTS.values()],
)
def test_what_is_chosen_by_the_case_has_french_words(constant: str) -> None:
    with speaking("fr"):
        assert say(constant) != constant or constant in ALIKE


def test_limits_and_numbers_have_the_signs_of_french() -> None:
    with speaking("fr"):
        assert said(Band(unit="mm", low=0.8, high=2.5)) == "0,8 à 2,5 mm"
        assert said(Band(unit="mm", low=8.0)) == "au moins 8 mm"
        assert said(Band(unit="%", high=2.5)) == "au plus 2,5 %"
        assert number(-0.001) == "0" and amount(-18.0, "°C") == "-18 °C"


def test_a_verdict_reads_as_one_french_sentence() -> None:
    with speaking("fr"):
        (sound,) = verdicts_of("glaze-water", bench_of(DOME))
        thin = changed(DOME, {"components/glaze/formula/water": "150 g"})
        (wet,) = verdicts_of("glaze-water", bench_of(thin))
    assert re.fullmatch(
        r"Le glaçage contient [\d,]+ % d’eau \(valeur visée : 24 à 42 %\)\.", sound.because
    )
    assert sound.advice == "" and sound.title == "L’eau du glaçage"
    assert wet.because.endswith(" % d’eau, si bien qu’il coule en couche trop fine et ternit.")
    assert wet.advice.startswith("Cuire davantage le sirop, ou mettre moins d’eau ; ")


def test_one_language_leaves_nothing_to_another() -> None:
    bench = bench_of(DOME)
    before = verdicts_of("foam-reheated", bench)
    with speaking("fr"):
        french = verdicts_of("foam-reheated", bench)
    assert verdicts_of("foam-reheated", bench) == before
    assert french[0].because != before[0].because
