"""A diagnosis is told in the language that is spoken; its figures stay what they are."""

from __future__ import annotations

import pytest

from bench_texts import DOME, LAYERS, bench_of, reckoned_bench
from entremetry.checks import SYMPTOMS, check, diagnose, find_symptom
from entremetry.checks.strength import setting_index
from entremetry.checks.symptom import Symptom
from entremetry.words import say, speaking

VERDICTS = check(reckoned_bench(DOME))


@pytest.mark.parametrize("symptom", SYMPTOMS, ids=lambda symptom: symptom.id)
def test_every_cause_is_told_in_french_with_the_same_likelihood(symptom: Symptom) -> None:
    english = diagnose(symptom, VERDICTS)
    with speaking("fr"):
        french = diagnose(symptom, VERDICTS)
    assert french.symptom.name != english.symptom.name == symptom.name
    for told, written in zip(french.suspects, english.suspects, strict=True):
        assert told.likelihood == written.likelihood
        assert told.cause.rule == written.cause.rule
        for one, other in (
            (told.cause.name, written.cause.name),
            (told.cause.measure, written.cause.measure),
            (told.cause.advice, written.cause.advice),
        ):
            assert one != other


@pytest.mark.parametrize("symptom", SYMPTOMS, ids=lambda symptom: symptom.id)
def test_a_symptom_is_found_by_its_french_words_and_by_its_english_ones(symptom: Symptom) -> None:
    with speaking("fr"):
        assert find_symptom(say(symptom.name)) is symptom
        assert find_symptom(symptom.name) is symptom


def test_what_sets_a_component_is_reckoned_alike_in_every_language() -> None:
    for document in (DOME, LAYERS):
        english = [setting_index(each) for each in bench_of(document).components]
        with speaking("fr"):
            assert [setting_index(each) for each in bench_of(document).components] == english
