"""Draws sessions in: looks for plans whose sessions last as short as can be, by halving.

The solver is quick to find a plan within given hours, and slow to shorten long ones bit by bit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.free_time import starts_in
from entremetry.planning.goals import SessionKey
from entremetry.planning.resource import Session, Window
from entremetry.planning.staged import Staged

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

NEAR = 0.01
"""Where the shortest known and the longest unknown are as near as this, the search ends."""
EACH = 8
"""Parts of the time that one trial may take."""


@dataclass(slots=True, kw_only=True)
class DrawnIn:
    """Sessions of the plan so far, that keep their ends and may begin `most` minutes before."""

    staged: Staged
    ends: Mapping[SessionKey, int] = field(default_factory=dict)
    most: int | None = None

    def shorten(self, seconds: float) -> None:
        """Halve the way between what is long enough and what cannot be, while there is time."""
        search, work = self.staged.search, presences(self.staged)
        self.ends = {key: end for key, (_, end) in work.items()}
        hands = [hand.minutes for hand in self.staged.model.hands]
        low = max([-(-sum(hands) // max(1, len(work))), *hands], default=0) - 1
        high = max((end - start for start, end in work.values()), default=0)
        until = search.spent + seconds
        while high - low > max(1, NEAR * high) and search.spent < until and self.staged.goes_on:
            most = (low + high) // 2
            left = min(seconds / EACH, until - search.spent)
            if self.is_enough(most, left):
                high = self.most = most
            else:
                low = most

    def is_enough(self, most: int, seconds: float) -> bool:
        """Look for a plan with short sessions in which all that ages stays where it is."""
        model, staged = self.staged.model.cp.clone(), self.staged
        for times in staged.model.times.values():
            if times.task.freshness:
                model.add(times.end == staged.worth(times.end))
        self.post(model, most)
        answer = staged.search.run(model, None, seconds, quick=True)
        staged.keep(answer)
        return answer.found

    def post(self, cp: cp_model.CpModel, most: int) -> None:
        """Let hands work only in what is left of the sessions."""
        from ortools.sat.python import cp_model as engine

        for person in self.staged.model.problem.people:
            left = [
                window
                for session in person.planned
                if (end := self.ends.get((person.id, session.id))) is not None
                for window in clipped(session, end - most, end)
            ]
            for hand in self.staged.goals.hands_of(person):
                domain = engine.Domain.from_intervals(starts_in(left, hand.minutes))
                claim = cp.add_linear_expression_in_domain(hand.start, domain)
                claim.only_enforce_if(*hand.literals(person.id))


def clipped(session: Session, start: int, end: int) -> Iterator[Window]:
    """Yield what of the windows of a session lies between two minutes."""
    for window in session.windows:
        if min(end, window.end) > max(start, window.start):
            yield Window(start=max(start, window.start), end=min(end, window.end))


def presences(staged: Staged) -> dict[SessionKey, tuple[int, int]]:
    """First and last minute of the work in each session that the plan so far uses."""
    found: dict[SessionKey, tuple[int, int]] = {}
    stretches = [stretch for placed in staged.plan.placed for stretch in placed.hands]
    for person, session in staged.goals.all_sessions():
        inside = [
            one
            for one in stretches
            if one.person == person.id and session.start <= one.start < session.end
        ]
        if inside:
            ends = min(one.start for one in inside), max(one.end for one in inside)
            found[person.id, session.id] = ends
    return found
