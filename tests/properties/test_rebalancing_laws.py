"""Laws of a rebalanced formula, whatever was asked."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.formula.rebalancing import rebalanced
from entremetry.formula.wish import Problem, Wish
from properties.strategies_rebalancing import changed_problems, kept_problems, mild, scales
from unit.formula.formulas import state

MOST = settings(max_examples=25, deadline=None)


@MOST
@given(kept_problems())
def test_a_formula_that_is_as_wished_comes_back_identical(asked: Problem) -> None:
    solution = rebalanced(asked)
    assert solution.masses == tuple(each.mass for each in asked.lines)
    assert solution.conflict is None and solution.gave_way == ()


@MOST
@given(changed_problems())
def test_what_is_found_meets_every_demand_and_says_what_gave_way(asked: Problem) -> None:
    solution = rebalanced(asked)
    if solution.conflict is not None:
        return
    after = state(asked.lines, list(solution.masses))
    for wish in asked.wishes:
        held = wish.holds(wish.measure.value(after))
        assert held or not wish.firm, wish
        assert held != (wish.measure.name in solution.gave_way)
    for each, mass in zip(asked.lines, solution.masses, strict=True):
        assert each.low - 1e-9 <= mass <= each.high + 1e-9
        assert not each.is_pinned or mass == pytest.approx(each.mass, rel=1e-12)


@MOST
@given(changed_problems(), st.integers(min_value=0, max_value=2**31))
def test_a_proof_is_never_broken_by_a_formula_drawn_at_random(asked: Problem, seed: int) -> None:
    solution = rebalanced(asked)
    if solution.conflict is None or not solution.conflict.proved:
        return
    random = np.random.default_rng(seed)
    firm = [wish for wish in asked.wishes if wish.firm]
    for _ in range(60):
        masses = [_drawn(each.mass, each.low, each.high, random) for each in asked.lines]
        after = state(asked.lines, masses)
        assert not all(wish.holds(wish.measure.value(after)) for wish in firm)


@MOST
@given(changed_problems())
def test_a_conflict_goes_once_the_wishes_do(asked: Problem) -> None:
    if rebalanced(asked).conflict is None:
        return
    loose = [replace(wish, firm=False) for wish in asked.wishes]
    assert rebalanced(replace(asked, wishes=tuple(loose))).conflict is None


@MOST
@given(changed_problems(mild), scales)
def test_a_larger_batch_is_the_same_formula(asked: Problem, scale: float) -> None:
    small, large = rebalanced(asked), rebalanced(_scaled(asked, scale))
    assert (small.conflict is None) == (large.conflict is None)
    expected = [mass * scale for mass in small.masses]
    assert large.masses == pytest.approx(expected, rel=1e-2, abs=1e-2 * sum(expected))


@MOST
@given(changed_problems())
def test_the_fewest_demands_are_among_all(asked: Problem) -> None:
    conflict = rebalanced(asked).conflict
    if conflict is not None and conflict.proved:
        assert 1 <= len(conflict.demands) <= len(asked.lines) + len(asked.wishes)
        assert len(set(conflict.demands)) == len(conflict.demands)


def _drawn(mass: float, low: float, high: float, random: np.random.Generator) -> float:
    return float(np.clip(mass * np.exp(random.normal(0.0, 0.6)), low, high))


def _scaled(asked: Problem, scale: float) -> Problem:
    lines = tuple(
        replace(each, mass=each.mass * scale, low=each.low * scale, high=each.high * scale)
        for each in asked.lines
    )
    return replace(asked, lines=lines, wishes=tuple(_larger(wish, scale) for wish in asked.wishes))


def _larger(wish: Wish, scale: float) -> Wish:
    if wish.measure.name != "yield":
        return wish
    return replace(wish, aim=wish.aim * scale, low=wish.low * scale, high=wish.high * scale)
