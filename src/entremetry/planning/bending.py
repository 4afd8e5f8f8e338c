"""The nearest plan that would work: the cheapest facts to give up, and what is left then."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning.amending import amended
from entremetry.planning.building import built
from entremetry.planning.fact import FactKind
from entremetry.planning.history import History
from entremetry.planning.leeway import Slack
from entremetry.planning.plan import Plan
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.problem import Problem
from entremetry.planning.result import Alternative
from entremetry.planning.search import Answer, Search

if TYPE_CHECKING:
    from entremetry.planning.linear import Linear

ANY: frozenset[FactKind] = frozenset()
KINDS: tuple[frozenset[FactKind], ...] = (
    frozenset({FactKind.SERVICE, FactKind.LATEST, FactKind.HORIZON}),
    frozenset({FactKind.CAPACITY}),
    frozenset({FactKind.EARLIEST, FactKind.OFFERED}),
    frozenset({FactKind.SESSION}),
    frozenset({FactKind.AT_MOST, FactKind.WAIT_MOST}),
)
"""Kinds of facts that are tried alone: later, with more, started earlier, overtime, waiting."""


@dataclass(slots=True, kw_only=True)
class Bent:
    """A model in which facts give at a price, and what came of it."""

    model: PlanModel
    slack: Slack
    price: Linear
    answer: Answer

    def alternative(self) -> Alternative:
        """Return what gave, and the plan that is possible then."""
        changes = self.slack.changes(self.answer.solver)
        return Alternative(
            changes=changes,
            problem=amended(self.model.problem, changes),
            plan=self.model.plan(self.answer.solver),
        )


def bent(
    problem: Problem,
    search: Search,
    seconds: float,
    *,
    only: frozenset[FactKind] = ANY,
    history: History | None = None,
    near: Plan | None = None,
) -> Bent | None:
    """Give up as little as possible; nothing if that is not enough, or not found in time.

    A plan that is near is hinted; without one, any plan at all is looked for first.
    """
    from ortools.sat.python import cp_model as engine

    ends = search.spent + seconds
    slack = Slack(model=engine.CpModel(), only=only)
    model = built(problem, slack, history)
    if not slack.amounts:
        return None
    price = slack.price()
    search.best = []
    if near is not None:
        hint_plan(model, near)
        slack.hint_none()
    elif not search.run(model.cp, None, seconds / 2, quick=True).found:
        return None
    model.cp.minimize(price)
    answer = search.run(model.cp, None, ends - search.spent, quick=True)
    model.cp.clear_objective()  # type: ignore[no-untyped-call]
    if not answer.found:
        return None
    return Bent(model=model, slack=slack, price=price, answer=answer)


def hint_plan(model: PlanModel, near: Plan) -> None:
    """Hint the starts of a plan for all that is still to come."""
    from ortools.sat.python import cp_model as engine

    for placed in near.placed:
        times = model.times.get(placed.task)
        if times is not None and isinstance(times.start, engine.IntVar):
            model.cp.add_hint(times.start, max(placed.start, model.now))


def alternatives(problem: Problem, search: Search, ends: float) -> Iterator[Alternative]:
    """Yield the cheapest way out, then the cheapest of each kind while there is time."""
    seen = set()
    near: Plan | None = None
    for index, only in enumerate((ANY, *KINDS)):
        left = ends - search.spent
        if left <= 0 or not search.affords(problem, left) or (index and search.limits.cancelled()):
            return
        found = bent(problem, search, left / 2, only=only, near=near)
        if found is not None:
            alternative = found.alternative()
            near = near or alternative.plan
            if alternative.changes not in seen:
                seen.add(alternative.changes)
                yield alternative
