"""Puts a plan model together."""

from __future__ import annotations

from entremetry.planning.constraints import Constraints
from entremetry.planning.history import History
from entremetry.planning.hours import Hours
from entremetry.planning.leeway import Leeway
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.problem import Problem
from entremetry.planning.variables import Variables


def built(problem: Problem, leeway: Leeway, history: History | None = None) -> PlanModel:
    """Return the model of a problem, with all it has to respect and no goal."""
    from ortools.sat.python import cp_model

    cp = getattr(leeway, "model", None) or cp_model.CpModel()
    model = PlanModel(problem=problem, cp=cp, leeway=leeway, history=history)
    Variables(model).make()
    Constraints(model).post()
    Hours(model).post()
    return model
