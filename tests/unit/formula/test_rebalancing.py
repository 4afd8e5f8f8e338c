"""Formulas changed as little as their wishes allow, or refused with a proof."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from entremetry.errors import BalanceError
from entremetry.formula.measures import MEASURES
from entremetry.formula.rebalancing import rebalanced
from entremetry.formula.wish import Conflict, FormulaLine, Solution, Wish
from unit.formula.formulas import (
    CREAM_30,
    CREAM_35,
    CREAM_48,
    DARK_55,
    GELATINE,
    MILK,
    MOUSSE,
    PUREE,
    SPIRIT,
    SUGAR,
    grams,
    keep,
    line,
    problem,
    state,
    usual,
    value,
    wish,
)


def conflict(solution: Solution) -> Conflict:
    assert solution.conflict is not None
    return solution.conflict


def test_a_formula_of_which_nothing_is_asked_stays_as_it_is() -> None:
    solution = rebalanced(problem(MOUSSE, ()))
    assert solution.masses == tuple(each.mass for each in MOUSSE)


@pytest.mark.parametrize("firm", [True, False])
def test_a_formula_that_holds_all_wishes_comes_back_identical(firm: bool) -> None:
    solution = rebalanced(problem(MOUSSE, usual(MOUSSE, firm=firm)))
    assert solution.masses == tuple(each.mass for each in MOUSSE)
    assert solution.gave_way == ()


def test_everything_kept_holds_after_a_swap() -> None:
    lines = (*MOUSSE[:-1], line(DARK_55, 100.0))
    wishes = usual(MOUSSE, firm=True)
    solution = rebalanced(problem(lines, wishes))
    after = state(lines, solution.masses)
    assert all(each.holds(each.measure.value(after)) for each in wishes)
    assert solution.masses[2] < 0.05


def test_a_pinned_line_keeps_its_mass_to_the_last_digit() -> None:
    lines = (*MOUSSE[:2], line(SUGAR, 50.0, low=50.0, high=50.0), MOUSSE[3], line(DARK_55, 100.0))
    solution = rebalanced(problem(lines, usual(MOUSSE, firm=False)))
    assert solution.masses[2] == 0.05


def test_a_line_can_be_pinned_at_another_mass() -> None:
    lines = (*MOUSSE[:2], line(SUGAR, 50.0, low=30.0, high=30.0), *MOUSSE[3:])
    solution = rebalanced(problem(lines, usual(MOUSSE, firm=False)))
    assert solution.masses[2] == pytest.approx(0.03, abs=1e-9)


def test_bounds_are_kept() -> None:
    lines = (*MOUSSE[:2], line(SUGAR, 50.0, low=40.0), *MOUSSE[3:-1], line(DARK_55, 100.0))
    solution = rebalanced(problem(lines, usual(MOUSSE, firm=False)))
    assert solution.masses[2] >= 0.04 - 1e-9


def test_a_formula_that_is_pinned_all_over_is_only_checked() -> None:
    lines = [replace(each, low=each.mass, high=each.mass) for each in MOUSSE]
    fat = value("fat", lines)
    solution = rebalanced(problem(lines, [wish("fat", fat * 1.001, fat * 0.01)]))
    assert solution.masses == pytest.approx([each.mass for each in MOUSSE])


def test_less_sugar_is_shown_with_what_gave_way() -> None:
    wishes = [w for w in usual(MOUSSE, firm=False) if w.measure.name != "sugars"]
    sugars = value("sugars", MOUSSE) * 0.7
    solution = rebalanced(problem(MOUSSE, [*wishes, wish("sugars", sugars, sugars * 0.03)]))
    assert value("sugars", MOUSSE, solution.masses) == pytest.approx(sugars, rel=0.031)
    assert "sweetness" in solution.gave_way
    assert "gelatine" not in solution.gave_way


def test_the_freezing_point_can_be_aimed_at() -> None:
    cold = value("freezing_point", MOUSSE) - 1.0
    wishes = [keep("yield", MOUSSE), wish("freezing_point", cold, 0.1)]
    solution = rebalanced(problem(MOUSSE, wishes))
    assert value("freezing_point", MOUSSE, solution.masses) == pytest.approx(cold, abs=0.1001)
    assert solution.masses[2] > 0.05


def test_the_ice_in_the_freezer_can_be_aimed_at() -> None:
    wished = value("ice", MOUSSE) - 0.10
    solution = rebalanced(problem(MOUSSE, [keep("yield", MOUSSE), wish("ice", wished, 0.01)]))
    assert value("ice", MOUSSE, solution.masses) == pytest.approx(wished, abs=0.0101)


def test_a_spirit_lowers_the_freezing_point_when_only_it_may_change() -> None:
    lines = [replace(each, low=each.mass, high=each.mass) for each in MOUSSE]
    lines.append(line(SPIRIT, 10.0))
    before = value("freezing_point", lines)
    solution = rebalanced(problem(lines, [wish("freezing_point", before - 2.0, 0.05)]))
    assert solution.masses[-1] > 0.02
    assert solution.masses[:-1] == tuple(each.mass for each in MOUSSE)


def test_what_cannot_be_is_refused_alone() -> None:
    lines = [line(CREAM_35, 300.0), line(MILK, 200.0)]
    solution = rebalanced(problem(lines, [keep("yield", lines), wish("fat", 0.40, 0.005)]))
    assert conflict(solution).proved
    assert conflict(solution).demands == ("fat between 39.5 and 40.5 %",)


def test_the_smallest_conflict_names_wish_pin_and_nothing_else() -> None:
    lines = [
        line(CREAM_48, 250.0, low=250.0, high=250.0),
        line(MILK, 250.0),
        line(SUGAR, 50.0),
        line(GELATINE, 5.0),
    ]
    wishes = [keep("gelatine", lines), wish("yield", 0.3, 0.003), wish("fat", 0.30, 0.003)]
    told = conflict(rebalanced(problem(lines, wishes)))
    assert told.proved
    assert told.demands == (
        "cream-48 pinned at 250 g",
        "yield, ready for the mould between 297 and 303 g",
        "fat between 29.7 and 30.3 %",
    )


def test_a_conflict_is_a_conflict_only_as_a_whole() -> None:
    lines = [line(CREAM_48, 250.0, low=250.0, high=250.0), line(MILK, 250.0)]
    both = [wish("yield", 0.3, 0.003), wish("fat", 0.30, 0.003)]
    assert conflict(rebalanced(problem(lines, both))).proved
    for each in both:
        assert rebalanced(problem(lines, [each])).conflict is None
    free = [replace(each, low=0.0, high=float("inf")) for each in lines]
    assert rebalanced(problem(free, both)).conflict is None


def test_a_freezing_point_out_of_reach_is_proved_so() -> None:
    lines = [line(PUREE, 300.0), line(CREAM_35, 200.0)]
    told = conflict(rebalanced(problem(lines, [wish("freezing_point", 273.15 - 15.0, 0.2)])))
    assert told.proved
    assert told.demands == ("freezing point between -15.2 and -14.8 °C",)


def test_ice_out_of_reach_is_proved_so() -> None:
    lines = [line(PUREE, 300.0), line(CREAM_35, 200.0)]
    told = conflict(rebalanced(problem(lines, [wish("ice", 0.30, 0.02)])))
    assert told.proved
    assert told.demands[0].startswith("ice at -18 °C")


def test_a_freezing_point_too_high_is_proved_so() -> None:
    lines = [line(SUGAR, 100.0, low=90.0), line(PUREE, 300.0, high=310.0)]
    told = conflict(rebalanced(problem(lines, [wish("freezing_point", 273.15 - 2.0, 0.1)])))
    assert told.proved
    assert len(told.demands) == 3


def test_one_sided_wishes_are_met_at_their_end() -> None:
    lines = [line(CREAM_30, 400.0), line(CREAM_48, 100.0)]
    low = Wish(measure=MEASURES["fat"], aim=0.4, low=0.4, high=float("inf"))
    solution = rebalanced(problem(lines, [keep("yield", lines), low]))
    assert value("fat", lines, solution.masses) >= 0.4 - 1e-6
    assert sum(grams(solution)) == pytest.approx(500.0, rel=0.011)


def test_what_is_in_it_anyway_is_counted() -> None:
    lines = (line(SUGAR, 100.0),)
    water = state([line(PUREE, 0.001)]) * 0.0
    water[0] = 0.1
    asked = replace(
        problem(lines, [wish("sugars", 0.6, 0.001)]), fixed=tuple(float(w) for w in water)
    )
    assert grams(rebalanced(asked)) == pytest.approx([150.0], rel=0.005)


@pytest.mark.parametrize(
    "spoilt",
    [
        {"mass": 0.0},
        {"mass": float("nan")},
        {"low": 0.2, "high": 0.1},
        {"low": -0.1},
        {"adds": (1.0,)},
    ],
)
def test_a_line_that_makes_no_sense_is_refused(spoilt: dict[str, object]) -> None:
    with pytest.raises(BalanceError):
        replace(MOUSSE[0], **spoilt)


def test_a_wish_aims_between_its_ends() -> None:
    with pytest.raises(BalanceError, match="between its ends"):
        Wish(measure=MEASURES["fat"], aim=0.5, low=0.1, high=0.2)


def test_no_smaller_change_meets_the_wishes() -> None:
    """Random formulas that meet the wishes are all further from the author's."""
    lines: list[FormulaLine] = [*MOUSSE[:2], line(SUGAR, 20.0), *MOUSSE[3:]]
    wishes = [keep("fat", MOUSSE), keep("sweetness", MOUSSE), keep("yield", MOUSSE)]
    solution = rebalanced(problem(lines, wishes))
    start = np.array([each.mass for each in lines])
    random = np.random.default_rng(4)
    least = cost(lines, wishes, np.array(solution.masses), start)
    for _ in range(300):
        other = np.array(solution.masses) * (1.0 + 0.02 * random.standard_normal(len(lines)))
        after = state(lines, list(other))
        if all(each.holds(each.measure.value(after)) for each in wishes):
            assert cost(lines, wishes, other, start) >= least - 1e-9


def cost(
    lines: list[FormulaLine], wishes: list[Wish], masses: np.ndarray, start: np.ndarray
) -> float:
    """The sum of squares that the least change is least in, reckoned from its definition."""
    total = float(np.sum((masses / start - 1.0) ** 2))
    before, after = state(lines), state(lines, list(masses))
    for each in wishes:
        half = (each.high - each.low) / 2.0
        per = 1.0
        if each.measure.name != "yield":
            per = float(after[:-1].sum() / before[:-1].sum())
        found = each.measure.value(after)
        assert found is not None
        total += 4.0 * (per * (found - each.aim) / half) ** 2
    return total


def test_no_line_is_halved_for_what_may_as_well_give_way() -> None:
    lines = (*MOUSSE[:3], line(MILK, 300.0), MOUSSE[4])
    solution = rebalanced(problem(lines, usual(MOUSSE, firm=False)))
    assert "fat" in solution.gave_way
    for each, mass in zip(lines, solution.masses, strict=True):
        assert each.mass / 2.0 - 1e-9 <= mass <= each.mass * 2.0 + 1e-9


def test_what_is_asked_for_by_name_may_halve_a_line() -> None:
    soft = [each for each in usual(MOUSSE, firm=False) if each.measure.name != "sugars"]
    sugars = value("sugars", MOUSSE) * 0.65
    solution = rebalanced(problem(MOUSSE, [*soft, wish("sugars", sugars, 0.002)]))
    assert value("sugars", MOUSSE, solution.masses) == pytest.approx(sugars, abs=0.0021)
    assert solution.conflict is None
