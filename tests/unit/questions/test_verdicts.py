"""Checks before and after a change: what turned, and whether for the worse."""

from __future__ import annotations

from dataclasses import replace

import pytest

from entremetry.checks.band import Outcome
from entremetry.checks.registry import check
from entremetry.checks.verdict import Verdict
from entremetry.questions.verdicts import newly, turned
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import reckoned, surroundings

TEXT = demo_texts()["blackcurrant-vanilla-dome"]
VERDICTS = check(reckoned(TEXT, "dome", surroundings(None, "kitchen")))


def with_outcome(outcome: Outcome) -> tuple[Verdict, ...]:
    first, *others = VERDICTS
    return (replace(first, verdict=outcome), *others)


def test_the_same_verdicts_turn_nothing() -> None:
    assert turned(VERDICTS, VERDICTS) == ()


@pytest.mark.parametrize(
    ("before", "after", "worse"),
    [
        (Outcome.PASS, Outcome.CAUTION, True),
        (Outcome.PASS, Outcome.FAIL, True),
        (Outcome.CAUTION, Outcome.FAIL, True),
        (Outcome.FAIL, Outcome.CAUTION, False),
        (Outcome.CAUTION, Outcome.PASS, False),
    ],
)
def test_worse_and_better_are_told_apart(before: Outcome, after: Outcome, worse: bool) -> None:
    (found,) = turned(with_outcome(before), with_outcome(after))
    assert found.is_worse is worse
    assert newly((found,), after) == ((found,) if worse else ())
    assert found.fact.because == VERDICTS[0].because and found.fact.source == VERDICTS[0].source


def test_a_check_that_did_not_apply_is_worse_only_if_it_is_not_fine() -> None:
    assert turned(VERDICTS[1:], VERDICTS) == ()
    (found,) = turned(VERDICTS[1:], with_outcome(Outcome.CAUTION))
    assert found.before is None and found.is_worse and "not asked before" in found.fact.text
