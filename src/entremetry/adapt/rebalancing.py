"""Rebalance one component of a dessert document, after swaps if there are any.

A formula is straight in its masses only near by, because methods hold back and boil off. So the
problem is solved, the method followed again at the answer, and the problem set anew, until the
wishes hold of the component as it is really made.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.adapt.asking import Asked, room, wishes
from entremetry.adapt.behaviour import Behaviour, behaviour, reweighed
from entremetry.adapt.line_editing import line_with_mass, line_without
from entremetry.adapt.rebalanced import Rebalanced
from entremetry.adapt.swapping import Text, swapped_text
from entremetry.adapt.telling import refused, told
from entremetry.adapt.weighable import EXACT, FINENESS, settled, weighed
from entremetry.dessert.dessert import Dessert
from entremetry.errors import BalanceError
from entremetry.formula.wish import Conflict, FormulaLine, Problem, Solution, Wish
from entremetry.physics.gelatine import BloomRule

if TYPE_CHECKING:
    from entremetry.physics.arrays import Floats

Open = Callable[[str], Dessert]
MOST_ROUNDS = 4
LEAST_LEFT = 0.05  # part of a line that stays in the formula unless its author sets other ends
TRACE = 1e-3
NOTHING = 5e-6  # kg; what weighs less is left out


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bench:
    """What stays the same while a component is rebalanced."""

    component: str
    rule: BloomRule
    text: str
    dessert: Dessert
    wishes: tuple[Wish, ...]
    starts: tuple[float, ...]
    names: tuple[str, ...]
    ends: tuple[tuple[float, float], ...]

    def behaviour(self, masses: Sequence[float]) -> Behaviour:
        """How the component behaves with other masses; a trace of every line stays in it."""
        there = {
            name: max(mass, TRACE * start)
            for name, mass, start in zip(self.names, masses, self.starts, strict=True)
        }
        return behaviour(reweighed(self.dessert, self.component, there), self.component, self.rule)

    def holds(self, wish: Wish, state: Floats) -> bool:
        """Tell whether a wish holds."""
        return wish.holds(wish.measure.value(state))


def rebalanced_text(text: str, asked: Asked, open_: Open) -> Rebalanced:
    """Rebalance a component of a document.

    Raises
    ------
    EntremetryError
        If the document cannot be made, or something asked for is not in it.
    """
    before = behaviour(open_(text), asked.component, asked.rule)
    swapped = swapped_text(text, asked, open_, before)
    bench, start = _bench(swapped, asked, open_, before)
    after_text, conflict = _solved(bench, start)
    if conflict is not None:
        return refused(text, before, bench.wishes, conflict)
    after = behaviour(open_(after_text), asked.component, asked.rule)
    return told(after_text, before, after, bench.wishes, swapped, asked)


def _bench(swapped: Text, asked: Asked, open_: Open, before: Behaviour) -> tuple[_Bench, Behaviour]:
    dessert = open_(swapped.text)
    start = behaviour(dessert, asked.component, asked.rule)
    lines = start.component.lines
    own = room(asked, start.component).ends
    fixed = {name: (mass, mass) for name, mass in swapped.dosed.items()}
    usual = {line.name: (LEAST_LEFT * line.mass, float("inf")) for line in lines}
    ends = {**usual, **fixed, **own}
    bench = _Bench(
        component=asked.component,
        rule=asked.rule,
        text=swapped.text,
        dessert=dessert,
        wishes=tuple(wishes(asked, before.measured(), swapped.dropped)),
        starts=tuple(line.mass for line in lines),
        names=tuple(line.name for line in lines),
        ends=tuple(ends[line.name] for line in lines),
    )
    return bench, start


def _solved(bench: _Bench, start: Behaviour) -> tuple[str, Conflict | None]:
    """Text of the formula as a kitchen can weigh it, or the conflict that leaves none."""
    from entremetry.formula.rebalancing import rebalanced

    here = start
    solution = Solution(masses=())
    for _ in range(MOST_ROUNDS):
        solution = rebalanced(_problem(bench, here))
        if solution.conflict is not None:
            return bench.text, solution.conflict
        try:
            here = bench.behaviour(solution.masses)
        except BalanceError as error:
            return bench.text, Conflict(demands=(*_asked_words(bench), str(error)), proved=False)
        if _hold(bench, here.state, solution.gave_way):
            return _with_masses(bench, _weighable(bench, solution)), None
    return bench.text, Conflict(demands=_asked_words(bench), proved=False)


def _asked_words(bench: _Bench) -> tuple[str, ...]:
    return tuple(wish.measure.said for wish in bench.wishes if wish.firm)


def _problem(bench: _Bench, here: Behaviour) -> Problem:
    """The problem, made straight near a formula."""
    lines = tuple(
        FormulaLine(
            name=name,
            mass=mass,
            adds=tuple(float(part) for part in here.adds[name]),
            low=low,
            high=high,
        )
        for name, mass, (low, high) in zip(bench.names, bench.starts, bench.ends, strict=True)
    )
    fixed = tuple(float(part) for part in here.fixed)
    return Problem(lines=lines, fixed=fixed, wishes=bench.wishes)


def _weighable(bench: _Bench, solution: Solution) -> Sequence[float]:
    """The fewest changes and the coarsest masses with which everything still holds."""
    for fineness in FINENESS:
        for masses in (settled(solution.masses, bench.starts), solution.masses):
            rounded = weighed(masses, bench.starts, bench.ends, fineness)
            if _hold(bench, bench.behaviour(rounded).state, solution.gave_way):
                return rounded
    return weighed(solution.masses, bench.starts, bench.ends, EXACT)


def _hold(bench: _Bench, state: Floats, gave_way: Sequence[str]) -> bool:
    return all(
        bench.holds(wish, state) for wish in bench.wishes if wish.measure.name not in gave_way
    )


def _with_masses(bench: _Bench, masses: Sequence[float]) -> str:
    """Text with other masses; lines of which nothing is left go."""
    text = bench.text
    for name, start, mass in zip(bench.names, bench.starts, masses, strict=True):
        if mass < NOTHING:
            text = line_without(text, bench.component, name)
        elif mass != start:
            text = line_with_mass(text, bench.component, name, mass)
    return text
