"""What a plan has reached, in words."""

from __future__ import annotations

from entremetry.agenda.agenda import GoalReached
from entremetry.planning import Goal, GoalReport

GOALS = {
    Goal.SESSIONS: "Working sessions",
    Goal.BENCH: "Time at the bench",
    Goal.FRESHNESS: "Freshness",
    Goal.SPREAD: "Work in the fullest session",
    Goal.FINISH: "End of all work",
    Goal.MOVES: "Work that moved",
}


def goal_reached(report: GoalReport) -> GoalReached:
    """One goal in words."""
    return GoalReached(name=GOALS[report.goal], text=_reached(report), proved=report.proved)


def _reached(report: GoalReport) -> str:
    if report.goal is Goal.FRESHNESS:
        return "no later is possible" if report.proved else f"within {report.gap:.1%} of the best"
    say = str if report.goal is Goal.SESSIONS else minutes
    if report.proved:
        return f"{say(report.value)}, and no plan needs less"
    return f"{say(report.value)}; every plan needs {say(report.bound)} at least"


def minutes(value: int) -> str:
    """Minutes as hours and minutes."""
    hours, rest = divmod(value, 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"
