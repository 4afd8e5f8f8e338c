"""The smallest set of facts that cannot all hold, found by leaving them out one by one."""

from __future__ import annotations

import time
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning.building import built
from entremetry.planning.fact import Conflict, Fact, FactKind
from entremetry.planning.history import History
from entremetry.planning.leeway import Assumed
from entremetry.planning.problem import Problem

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What came of assuming some facts: they conflict (in `core`), do not, or nobody knows."""

    core: tuple[Fact, ...] | None
    decided: bool


def conflict_core(problem: Problem, seconds: float, history: History | None = None) -> Conflict:
    """Return facts that conflict; those that are not needed for it are left out.

    Without an answer in time the conflict is empty, or not the smallest and says so.
    """
    from ortools.sat.python import cp_model as engine

    ends = time.monotonic() + seconds
    leeway = Assumed(model=engine.CpModel())
    built(problem, leeway, history)
    trial = assume(leeway, tuple(leeway.literals), ends)
    if trial.core is None:
        return Conflict(facts=(), smallest=False)
    return shrunk(leeway, trial.core, ends)


def shrunk(leeway: Assumed, core: Sequence[Fact], ends: float) -> Conflict:
    """Leave out every fact without which the others still conflict."""
    needed: list[Fact] = []
    open_facts, smallest = sorted(core, key=plainness), True
    while open_facts:
        fact = open_facts.pop()
        trial = assume(leeway, (*needed, *open_facts), ends)
        if trial.core is None:
            needed.append(fact)
            smallest = smallest and trial.decided
        else:
            kept = set(trial.core)
            open_facts = [one for one in open_facts if one in kept]
    return Conflict(facts=tuple(reversed(needed)), smallest=smallest)


PLAINEST_FIRST = (
    FactKind.SERVICE,
    FactKind.LATEST,
    FactKind.AT_MOST,
    FactKind.CAPACITY,
    FactKind.ABSENCE,
    FactKind.WAIT_MOST,
    FactKind.EARLIEST,
    FactKind.AT_LEAST,
    FactKind.HORIZON,
)
"""Where one fact or another would explain it, the earlier in this list is kept."""


def plainness(fact: Fact) -> int:
    """Return the place of a fact in that list."""
    return PLAINEST_FIRST.index(fact.kind)


def assume(leeway: Assumed, facts: Sequence[Fact], ends: float) -> Trial:
    """Solve under some facts, and return those among them that conflict."""
    from ortools.sat.python import cp_model as engine

    left = ends - time.monotonic()
    if left <= 0:
        return Trial(core=None, decided=False)
    cp = leeway.model
    cp.clear_assumptions()
    cp.add_assumptions([leeway.literals[fact] for fact in facts])
    solver = patient(left)
    status = solver.solve(cp)
    if status != engine.INFEASIBLE:
        return Trial(core=None, decided=status in (engine.OPTIMAL, engine.FEASIBLE))
    named = set(solver.sufficient_assumptions_for_infeasibility())
    return Trial(
        core=tuple(fact for fact in facts if leeway.literals[fact].index in named), decided=True
    )


def patient(seconds: float) -> cp_model.CpSolver:
    """Return a solver whose cores can be trusted: one thread and no presolve."""
    from ortools.sat.python import cp_model as engine

    solver = engine.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    solver.parameters.cp_model_presolve = False
    return solver
