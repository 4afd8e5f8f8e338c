"""Whether demands can be met together at all, told by linear programs (HiGHS, through scipy)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from entremetry.errors import SolverError
from entremetry.formula._demand import Demand
from entremetry.formula._least_distance import touching
from entremetry.formula._model import Model, Row, something_is_left
from entremetry.physics.arrays import Floats
from entremetry.words import say

MISSED = -1e-6  # tolerances; a program that falls short by more is a proof
MOST_BRANCHES = 400


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Reach:
    """How nearly the demands can be met: by how many tolerances they fall short, and where."""

    level: float
    at: Floats

    @property
    def is_met(self) -> bool:
        """Tell whether nothing proves that the demands cannot be met."""
        return self.level >= MISSED


def reach(built: Model, demands: Sequence[Demand]) -> Reach:
    """The formula that comes nearest; of the curved demands only what surrounds them is asked."""
    straight = [row for demand in demands for row in demand.rows]
    if demands:
        straight.append(something_is_left(built))
    choices = [curved.choices(built) for demand in demands for curved in demand.curved]
    best: Reach | None = None
    for number, chosen in enumerate(product(*choices)):
        if number >= MOST_BRANCHES:
            told = say("more than {number} ways to meet the demands on ice", number=MOST_BRANCHES)
            raise SolverError(told)
        found = _nearest(built, [*straight, *(row for rows in chosen for row in rows)])
        if best is None or found.level > best.level:
            best = found
        if best.is_met:
            break
    return best or Reach(level=0.0, at=np.zeros(len(built.start)))


def _nearest(built: Model, rows: Sequence[Row]) -> Reach:
    """Largest t up to 0 with every row at least t and no mass negative."""
    from scipy.optimize import linprog

    n = len(built.start)
    if not rows:
        return Reach(level=0.0, at=np.zeros(n))
    slopes = np.array([row.slope for row in rows])
    found = linprog(
        c=np.r_[np.zeros(n), -1.0],
        A_ub=np.c_[-slopes, np.ones(len(rows))],
        b_ub=np.array([row.level for row in rows]),
        bounds=[(-1.0, None)] * n + [(None, 0.0)],
        method="highs",
    )
    if found.status != 0:
        raise SolverError(
            say("the linear program of the demands ended so: {message}", message=found.message)
        )
    return Reach(level=float(found.x[-1]), at=found.x[:-1])


def missed(
    built: Model, firm: Sequence[Demand], soft: Sequence[Demand], near: Floats
) -> tuple[float, ...]:
    """By how many tolerances each soft demand falls short where their sum is least.

    A sum of shortfalls leaves most of them at nothing. Curved demands are taken as straight as
    they are near a formula, so the answer is a good guess for them.
    """
    from scipy.optimize import linprog

    n, k = len(built.start), len(soft)
    rows = [something_is_left(built)]
    rows += [row for each in firm for row in _straight(built, each, near)]
    short = [np.zeros(k)] * len(rows)
    for unit, each in zip(np.eye(k), soft, strict=True):
        added = _straight(built, each, near)
        rows += added
        short += [unit] * len(added)
    found = linprog(
        c=np.r_[np.zeros(n), np.ones(k)],
        A_ub=-np.c_[np.array([row.slope for row in rows]), np.array(short)],
        b_ub=np.array([row.level for row in rows]),
        bounds=[(-1.0, None)] * n + [(0.0, None)] * k,
        method="highs",
    )
    return tuple(float(v) for v in found.x[n:]) if found.status == 0 else (1.0,) * k


def _straight(built: Model, demand: Demand, near: Floats) -> list[Row]:
    return [*demand.rows, *(touching(built, each, near) for each in demand.curved)]
