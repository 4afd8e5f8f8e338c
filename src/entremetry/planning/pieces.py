"""Plans much work piece by piece: what belongs together, one after the other by when it is due.

A solver that has to place a thousand tasks at once may find nothing for minutes. Each piece is
placed among the late ones of those before it, which stay where they are; what comes of it all is a
plan to start from.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from entremetry.planning.building import built
from entremetry.planning.closure import Closure
from entremetry.planning.leeway import Leeway
from entremetry.planning.parting import only, tied_to
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.problem import Problem
from entremetry.planning.search import Answer, Search
from entremetry.planning.task import Part, Side

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

MANY = 400
"""Tasks from which on a first plan is looked for piece by piece."""
PIECE = 60
"""Tasks of one piece, if what belongs together is not more."""
ROOM = 3
"""A piece may lie within so many times the shortest it could take, before it is due; where it
finds no place, and for all pieces after it, within so many times more."""

TRIALS = 6
"""Parts of the time that a piece may take to find no place."""
DAY = 1440
"""Minutes after its end in which a use may still matter: washing, or warmth in a freezer."""


@dataclass(slots=True, kw_only=True)
class InPieces:
    """Where the pieces so far are placed, and with whom."""

    model: PlanModel
    search: Search
    windows: Closure
    room: int = ROOM
    times: dict[str, tuple[int, int]] = field(default_factory=dict)
    merged: dict[str, int] = field(default_factory=dict)
    people: dict[tuple[str, Part, str], int] = field(default_factory=dict)

    def answer(self, seconds: float) -> Answer | None:
        """Return a first answer for the whole, or nothing if a piece finds no place in time."""
        ends = self.search.spent + seconds
        for piece in self.pieces():
            if not self.place(piece, ends):
                return None
        answer = self.run(self.search, self.model, ends - self.search.spent)
        return answer if answer.found else None

    def place(self, piece: set[str], ends: float) -> bool:
        """Find a place for a piece, further and further off; tell whether there is one."""
        while (left := ends - self.search.spent) > 0:
            first = self.first(piece)
            part = built(self.among(piece, first), Leeway())
            last = first <= self.model.problem.start
            answer = self.run(self.search.apart(), part, left if last else left / TRIALS)
            if answer.found:
                self.note(part, answer)
            if answer.found or answer.cancelled or last:
                return answer.found and not answer.cancelled
            self.room *= ROOM
        return False

    def run(self, search: Search, part: PlanModel, seconds: float) -> Answer:
        """Solve a part of the whole, with all that is placed already where it is."""
        cp = part.cp.clone()
        self.stay(cp, part)
        return search.run(cp, None, seconds, quick=True)

    def pieces(self) -> Iterator[set[str]]:
        """Yield what belongs together, by when it is due."""
        piece: set[str] = set()
        for group in sorted(together(self.model.problem), key=self.due):
            piece = piece | group
            if len(piece) >= PIECE:
                yield piece
                piece = set()
        if piece:
            yield piece

    def due(self, tasks: set[str]) -> int:
        """Return the latest minute at which tasks end."""
        return max(self.windows.latest.get((task, Side.END), 0) for task in tasks)

    def first(self, piece: set[str]) -> int:
        """Return the first minute at which a piece may begin."""
        due = self.due(piece)
        begun = min(self.windows.latest.get((task, Side.START), due) for task in piece)
        return due - self.room * max(1, due - begun)

    def among(self, piece: set[str], first: int) -> Problem:
        """Return a problem of one piece and of all that is placed so late that it may matter."""
        problem, earliest = self.model.problem, self.windows.earliest
        groups = [group for group in together(problem) if group <= self.times.keys()]
        late = [group for group in groups if max(self.times[t][1] for t in group) > first - DAY]
        few = only(problem, piece.union(*late))
        new = [task for task in few.tasks if task.id in piece]
        starts = {task.id: max(first, earliest[task.id, Side.START]) for task in new}
        return few.with_tasks(*(replace(task, earliest=starts[task.id]) for task in new))

    def note(self, part: PlanModel, answer: Answer) -> None:
        """Note where an answer places tasks."""
        value = answer.solver.value
        for name, times in part.times.items():
            self.times[name] = value(times.start), value(times.end)
        self.merged.update({name: value(merged) for name, merged in part.merged.items()})
        for hand in part.hands:
            for person, chosen in hand.people.items():
                if chosen is not None:
                    self.people[hand.task, hand.part, person] = value(chosen)

    def stay(self, cp: cp_model.CpModel, part: PlanModel) -> None:
        """Keep what is placed where it is, and with whom."""
        for name, times in part.times.items():
            if name in self.times:
                start, end = self.times[name]
                cp.add(times.start == start)
                cp.add(times.end == end)
        for name, merged in part.merged.items():
            if name in self.merged:
                cp.add(merged == self.merged[name])
        for hand in part.hands:
            for person, chosen in hand.people.items():
                key = hand.task, hand.part, person
                if chosen is not None and key in self.people:
                    cp.add(chosen == self.people[key])


def together(problem: Problem) -> Iterator[set[str]]:
    """Yield tasks that delays, spans or merges tie to one another."""
    next_to: dict[str, set[str]] = {task.id: set() for task in problem.all_tasks}
    pairs = [(one.before, one.after) for one in problem.delays]
    pairs += [(one.first, one.last) for one in problem.spans]
    pairs += [(one.together.id, name) for one in problem.merges for name in one.tasks]
    for one, other in pairs:
        next_to[one].add(other)
        next_to[other].add(one)
    seen: set[str] = set()
    for task in next_to:
        if task not in seen:
            group = tied_to([task], next_to)
            seen |= group
            yield group
