"""Runs the solver: within a time, telling of progress, and stoppable from outside."""

from __future__ import annotations

import math
import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from entremetry.planning.limits import Limits, Progress, say_nothing
from entremetry.planning.problem import Problem
from entremetry.planning.result import Goal

if TYPE_CHECKING:
    from collections.abc import Callable

    from ortools.sat.python import cp_model

CHOICES_PER_SECOND = 20_000
"""Pairs of tasks and sessions that are surely written into a model in a second."""
LOOK_EVERY = 0.05
"""Seconds between two looks at whether somebody has cancelled."""

WITH_COSTS = ("pseudo_costs", "default_lp")
"""Ways to search that raise a bound made of many ends: on an invented kitchen of 155 tasks the gap
of freshness is 0.9 % after 8 s with them, and 13 % with the usual ones."""
WITHOUT_LP = ("no_lp", "quick_restart_no_lp")
"""Ways to search that prove the shortest project: two public instances of 30 activities in 8 s
that the usual ones leave open after 10."""
FROM_BELOW = ("objective_lb_search_no_lp", "no_lp")
"""Ways to search that try small values first: on an invented kitchen of 57 tasks the gap of idle
time is 1.8 % after 8 s with them, and 39 % with the usual ones."""
FEW_TASKS = ("objective_lb_search_max_lp", "max_lp")
"""Ways to search that prove the freshest end of 30 tasks in 1 to 5 s; others leave it open."""
WAYS: dict[Goal | None, Sequence[str]] = {
    Goal.BENCH: FROM_BELOW,
    Goal.FRESHNESS: WITH_COSTS,
    Goal.SPREAD: FROM_BELOW,
    Goal.FINISH: WITHOUT_LP,
}


@dataclass(slots=True, kw_only=True)
class Search:
    """One planning: it keeps the time, and the best solution so far to start from."""

    limits: Limits
    began: float = field(default_factory=time.monotonic)
    best: list[int] = field(default_factory=list)
    first_plan: float = 0.0

    @property
    def spent(self) -> float:
        """Seconds since the beginning."""
        return time.monotonic() - self.began

    @property
    def left(self) -> float:
        """Seconds that are left."""
        return max(0.0, self.limits.seconds - self.spent)

    def affords(self, problem: Problem, seconds: float) -> bool:
        """Tell whether a model of every task in every session can be written in some seconds."""
        return problem.choices <= CHOICES_PER_SECOND * seconds

    def apart(self) -> Search:
        """Return a search within the same time for another model, which tells of nothing."""
        return Search(limits=replace(self.limits, progress=say_nothing), began=self.began)

    def run(
        self,
        cp: cp_model.CpModel,
        goal: Goal | None,
        seconds: float,
        *,
        gap: float = 0.0,
        quick: bool = False,
        nearby: bool = False,
        ways: Sequence[str] = (),
    ) -> Answer:
        """Solve a model, starting from the best solution so far.

        `quick` looks ahead less; `nearby` only improves on that solution and proves nothing.
        """
        from ortools.sat.python import cp_model as engine

        solver = engine.CpSolver()
        solver.parameters.max_time_in_seconds = max(0.01, seconds)
        solver.parameters.num_workers = self.limits.workers
        solver.parameters.random_seed = self.limits.seed
        solver.parameters.catch_sigint_signal = False  # Ctrl-C is the caller's: see `cancelled`
        solver.parameters.relative_gap_limit = gap
        if quick:
            solver.parameters.linearization_level = 0
            solver.parameters.cp_model_probing_level = 0
        if nearby:
            solver.parameters.use_lns_only = True
        elif self.limits.workers > 1:
            solver.parameters.subsolvers.extend(ways or WAYS.get(goal, ()))
        self.hint(cp)
        stopper = Stopper(solver, self.limits.cancelled)
        with stopper:
            status = solver.solve(cp, teller(self, goal))
        answer = Answer(
            solver=solver,
            found=status in (engine.OPTIMAL, engine.FEASIBLE),
            impossible=status == engine.INFEASIBLE,
            cancelled=stopper.cancelled,
        )
        if answer.found:
            self.best = answer.solution
            self.first_plan = self.first_plan or self.spent
        return answer

    def hint(self, cp: cp_model.CpModel) -> None:
        """Hint the whole last solution; variables that are newer keep their own hints."""
        for index, value in enumerate(self.best):
            cp.add_hint(cp.get_int_var_from_proto_index(index), value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """How one run of the solver ended."""

    solver: cp_model.CpSolver
    found: bool
    impossible: bool
    cancelled: bool

    @property
    def solution(self) -> list[int]:
        """Values of all variables."""
        return list(self.solver.response_proto.solution)

    @property
    def value(self) -> int:
        """Value of the objective."""
        return round(self.solver.objective_value)

    @property
    def bound(self) -> int:
        """Bound of the objective: no solution has a smaller value."""
        return math.ceil(self.solver.best_objective_bound - 1e-6)


def close(value: int, bound: int, gap: float) -> bool:
    """Tell whether a value is as near to its bound as a gap says."""
    return value - bound <= gap * value


class Stopper:
    """Watches for a cancellation while the solver runs, and stops it then."""

    def __init__(self, solver: cp_model.CpSolver, cancelled: Callable[[], bool]) -> None:
        self.solver = solver
        self.asked = cancelled
        self.cancelled = False
        self.over = threading.Event()
        self.thread = threading.Thread(target=self.watch, daemon=True)

    def watch(self) -> None:
        """Look now and then, and go on stopping until the solver has."""
        while not self.over.wait(LOOK_EVERY):
            if self.cancelled or self.asked():
                self.cancelled = True
                self.solver.stop_search()

    def __enter__(self) -> None:
        self.thread.start()

    def __exit__(self, *_: object) -> None:
        self.over.set()
        self.thread.join()


def teller(search: Search, goal: Goal | None) -> cp_model.CpSolverSolutionCallback:
    """Return a callback that tells of each better solution."""
    from ortools.sat.python import cp_model as engine

    class Teller(engine.CpSolverSolutionCallback):
        """Hands progress on."""

        def on_solution_callback(self) -> None:
            """Tell of one solution."""
            value, bound = (
                (round(self.objective_value), math.ceil(self.best_objective_bound - 1e-6))
                if goal
                else (0, 0)
            )
            search.limits.progress(
                Progress(goal=goal, value=value, bound=bound, seconds=search.spent)
            )

    return Teller()
