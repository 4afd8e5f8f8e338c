"""What a plan has reached, in words."""

from __future__ import annotations

from entremetry.agenda.agenda import GoalReached
from entremetry.planning import Goal, GoalReport
from entremetry.words import decimal, say, say_later

GOALS = {
    Goal.SESSIONS: say_later("Working sessions"),
    Goal.BENCH: say_later("Time at the bench"),
    Goal.FRESHNESS: say_later("Freshness"),
    Goal.SPREAD: say_later("Work in the fullest session"),
    Goal.FINISH: say_later("End of all work"),
    Goal.MOVES: say_later("Work that moved"),
}


def goal_reached(report: GoalReport) -> GoalReached:
    """One goal in words."""
    return GoalReached(name=say(GOALS[report.goal]), text=_reached(report), proved=report.proved)


def _reached(report: GoalReport) -> str:
    if report.goal is Goal.FRESHNESS:
        if report.proved:
            return say("no later is possible")
        share = say("{number}%", number=decimal(f"{100.0 * report.gap:.1f}"))
        return say("within {share} of the best", share=share)
    told = str if report.goal is Goal.SESSIONS else minutes
    if report.proved:
        return say("{value}, and no plan needs less", value=told(report.value))
    return say(
        "{value}; every plan needs {bound} at least",
        value=told(report.value),
        bound=told(report.bound),
    )


def minutes(value: int) -> str:
    """Minutes as hours and minutes."""
    hours, rest = divmod(value, 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"
