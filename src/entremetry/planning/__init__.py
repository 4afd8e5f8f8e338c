"""When to do what, and who with what: plans of tasks in whole minutes. Knows no food."""

from entremetry.planning.batches import Batches, repeated
from entremetry.planning.fact import Change, Conflict, Fact, FactKind
from entremetry.planning.history import Done, History, Running
from entremetry.planning.limits import Limits, Progress
from entremetry.planning.making import plan
from entremetry.planning.plan import Placed, Plan, Stretch
from entremetry.planning.problem import Problem
from entremetry.planning.replanning import replan
from entremetry.planning.resource import Person, Resource, Session, Window
from entremetry.planning.result import COOK, Alternative, Goal, GoalReport, Result, Status
from entremetry.planning.task import Delay, Merge, Need, Part, Service, Side, Span, Task
from entremetry.planning.telling import told_change, told_conflict
from entremetry.planning.validating import validate
from entremetry.planning.violation import Violation

__all__ = [
    "COOK",
    "Alternative",
    "Batches",
    "Change",
    "Conflict",
    "Delay",
    "Done",
    "Fact",
    "FactKind",
    "Goal",
    "GoalReport",
    "History",
    "Limits",
    "Merge",
    "Need",
    "Part",
    "Person",
    "Placed",
    "Plan",
    "Problem",
    "Progress",
    "Resource",
    "Result",
    "Running",
    "Service",
    "Session",
    "Side",
    "Span",
    "Status",
    "Stretch",
    "Task",
    "Violation",
    "Window",
    "plan",
    "repeated",
    "replan",
    "told_change",
    "told_conflict",
    "validate",
]
