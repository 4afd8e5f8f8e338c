"""Formulas of a few lines, with what is kept of them and what may change."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from entremetry.formula.measures import MEASURES, USUAL
from entremetry.formula.wish import FormulaLine, Problem, Wish, kept
from unit.formula.formulas import (
    CREAM_30,
    CREAM_35,
    CREAM_48,
    DARK_55,
    DARK_70,
    GELATINE,
    MASCARPONE_45,
    MILK,
    PUREE,
    SPIRIT,
    SUGAR,
    SWEET_PUREE,
    line,
    problem,
    state,
)

WET = (CREAM_35, MILK, PUREE, SWEET_PUREE)
REST = (CREAM_30, CREAM_48, DARK_55, DARK_70, GELATINE, MASCARPONE_45, SPIRIT, SUGAR)
masses = st.floats(min_value=2.0, max_value=500.0)
factors = st.floats(min_value=0.6, max_value=1.6)
mild = st.floats(min_value=0.9, max_value=1.1)
scales = st.floats(min_value=0.1, max_value=20.0)


@st.composite
def formulas(draw: st.DrawFn) -> tuple[FormulaLine, ...]:
    """Two lines or more, one of them wet; some of them pinned or bounded."""
    wet = draw(st.sampled_from(WET))
    rest = draw(st.sets(st.sampled_from(range(len(REST))), min_size=1, max_size=5))
    drawn = [line(each, draw(masses)) for each in (wet, *(REST[index] for index in sorted(rest)))]
    drawn[0] = replace(drawn[0], mass=max(drawn[0].mass, 0.1))
    return tuple(
        _bounded(each, draw(st.sampled_from(("free", "free", "pinned", "bounded"))))
        for each in drawn
    )


def _bounded(each: FormulaLine, kind: str) -> FormulaLine:
    if kind == "pinned":
        return replace(each, low=each.mass, high=each.mass)
    if kind == "bounded":
        return replace(each, low=0.8 * each.mass, high=1.2 * each.mass)
    return each


@st.composite
def kept_problems(draw: st.DrawFn) -> Problem:
    """A formula of which only what it has already is wished."""
    lines = draw(formulas())
    return problem(lines, _kept(lines, firm=draw(st.booleans())))


@st.composite
def changed_problems(draw: st.DrawFn, changes: st.SearchStrategy[float] = factors) -> Problem:
    """A formula of which one measure shall be another, or far another, and some stay."""
    lines = draw(formulas())
    wishes = _kept(lines, firm=draw(st.booleans()))
    chosen = draw(st.sampled_from([wish.measure.name for wish in wishes]))
    factor = draw(changes)
    return problem(lines, [_moved(w, factor) if w.measure.name == chosen else w for w in wishes])


def _kept(lines: tuple[FormulaLine, ...], *, firm: bool) -> list[Wish]:
    values = {name: MEASURES[name].value(state(lines)) for name in (*USUAL, "ice")}
    return [kept(MEASURES[name], value, firm=firm) for name, value in values.items() if value]


def _moved(wish: Wish, factor: float) -> Wish:
    measure = wish.measure
    aim = wish.aim * factor
    if measure.name == "freezing_point":
        aim = 273.15 - (273.15 - wish.aim) * factor
    return kept(measure, aim, firm=True)
