"""What a plan has reached, in words: when it is made, and while it is being made."""

from __future__ import annotations

from entremetry.agenda.agenda import GoalReached
from entremetry.planning import Goal, GoalReport
from entremetry.planning.limits import Progress
from entremetry.words import decimal, say, say_later

GOALS = {
    Goal.SESSIONS: say_later("Working sessions"),
    Goal.BENCH: say_later("Time at the bench"),
    Goal.FRESHNESS: say_later("Freshness"),
    Goal.SPREAD: say_later("Work in the fullest session"),
    Goal.FINISH: say_later("End of all work"),
    Goal.MOVES: say_later("Work that moved"),
}


def goal_name(goal: Goal) -> str:
    """What a goal is called."""
    return say(GOALS[goal])


def goal_reached(report: GoalReport) -> GoalReached:
    """One goal of a finished plan in words."""
    return GoalReached(name=goal_name(report.goal), text=_reached(report), proved=report.proved)


def best_so_far(goal: Goal, progress: Progress) -> str:
    """What is reached for a goal while something better is still looked for."""
    if progress.bound >= progress.value:
        return _best(goal, progress.value)
    if goal is Goal.FRESHNESS:
        return say("being improved")
    return say(
        "{value} so far, {bound} at least",
        value=_told(goal, progress.value),
        bound=_told(goal, progress.bound),
    )


def _reached(report: GoalReport) -> str:
    if report.proved:
        return _best(report.goal, report.value)
    if report.goal is Goal.FRESHNESS:
        share = say("{number}%", number=decimal(f"{100.0 * report.gap:.1f}"))
        return say("within {share} of the best", share=share)
    return say(
        "{value}; every plan needs {bound} at least",
        value=_told(report.goal, report.value),
        bound=_told(report.goal, report.bound),
    )


def _best(goal: Goal, value: int) -> str:
    """What cannot be beaten."""
    if goal is Goal.FRESHNESS:
        return say("no later is possible")
    return say("{value}, and no plan needs less", value=_told(goal, value))


def _told(goal: Goal, value: int) -> str:
    return str(value) if goal is Goal.SESSIONS else minutes(value)


def minutes(value: int) -> str:
    """Minutes as hours and minutes."""
    hours, rest = divmod(value, 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"
