"""Every use of every resource, as intervals of the model, without what is past."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning.plan_model import PlanModel
from entremetry.planning.task import Need, Span
from entremetry.planning.task_times import TaskTimes

if TYPE_CHECKING:
    from entremetry.planning.linear import Interval, Truth


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """An amount of a resource taken up in a stretch, in a state that may matter."""

    stretch: Interval
    amount: int
    state: str = ""
    present: Truth | None = None


def uses(model: PlanModel) -> dict[str, list[Use]]:
    """All uses that reach beyond now, by resource; `stretch` is without the turnover."""
    found: dict[str, list[Use]] = defaultdict(list)
    for times in model.times.values():
        if not times.absent:
            for need in times.task.needs:
                found[need.resource].extend(need_use(model, times, need))
    for span in model.problem.spans:
        found[span.resource].extend(span_use(model, span))
    return found


def need_use(model: PlanModel, times: TaskTimes, need: Need) -> Iterator[Use]:
    """Yield the use by one part of a task, unless it is past."""
    start, size, end = times.stretch(need.part)
    if need.lasting is not None:
        size, end = need.lasting, start + need.lasting
    tail = model.problem.resource(need.resource)
    kept = clipped((start, size, end), model.now, max(tail.turnover, tail.changeover))
    if kept is not None:
        yield Use(stretch=kept, amount=need.amount, state=need.state, present=times.present)


def span_use(model: PlanModel, span: Span) -> Iterator[Use]:
    """Yield the use from one task to another, unless it is past."""
    start = model.times[span.first].at(span.leaving)
    end = model.times[span.last].at(span.reaching)
    if isinstance(start, int):
        start = max(start, model.now)
    if isinstance(start, int) and isinstance(end, int):
        tail = model.problem.resource(span.resource).turnover
        if end + tail <= model.now:
            return
        end = max(end, start)
        yield Use(stretch=(start, end - start, end), amount=span.amount)
        return
    size = model.cp.new_int_var(0, model.end - model.problem.start, f"span {span.id}")
    yield Use(stretch=(start, size, end), amount=span.amount)


def clipped(stretch: Interval, now: int, tail: int) -> Interval | None:
    """Return what of a stretch lies after now; nothing if it and its tail are past."""
    start, size, end = stretch
    if not isinstance(start, int) or start >= now:
        return stretch
    if isinstance(end, int):
        if end + tail <= now:
            return None
        return (now, end - now, end) if end > now else (end, 0, end)
    return now, size - (now - start), end


def lengthened(stretch: Interval, minutes: int) -> Interval:
    """Return a stretch with some minutes more at its end."""
    start, size, end = stretch
    return start, size + minutes, end + minutes
