"""What each goal counts, as an expression of a plan model."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from entremetry.planning.counting import thinned
from entremetry.planning.free_time import outside, starts_in
from entremetry.planning.plan import Plan
from entremetry.planning.plan_model import PlanModel
from entremetry.planning.resource import Person, Session
from entremetry.planning.result import Goal
from entremetry.planning.task import Part
from entremetry.planning.task_times import Hand

if TYPE_CHECKING:
    from entremetry.planning.linear import Linear, Truth

SessionKey = tuple[str, str]
"""Ids of a person and of a session."""


@dataclass(slots=True, kw_only=True)
class Goals:
    """Adds to a model what a goal counts, when the goal begins and not before."""

    model: PlanModel
    before: Plan | None = None
    windows: Mapping[tuple[str, Part], tuple[int, int]] = field(default_factory=dict)
    most_used: int = 0
    used: dict[SessionKey, Truth] = field(default_factory=dict)
    work: dict[SessionKey, Linear] = field(default_factory=dict)
    begun: dict[Goal, Linear] = field(default_factory=dict)
    chosen: dict[SessionKey, dict[int, Truth]] = field(default_factory=dict)

    def begin(self, goal: Goal) -> Linear:
        """Return what is to be made small for a goal."""
        if goal not in self.begun:
            self.begun[goal] = self.counted(goal)
        return self.begun[goal]

    def counted(self, goal: Goal) -> Linear:
        """Add what a goal counts to the model."""
        return {
            Goal.SESSIONS: self.sessions,
            Goal.BENCH: self.bench,
            Goal.FRESHNESS: self.freshness,
            Goal.SPREAD: self.spread,
            Goal.FINISH: self.finish,
            Goal.MOVES: self.moves,
        }[goal]()

    def sessions(self) -> Linear:
        """Count the sessions in which anybody works."""
        self.note_used()
        return sum(self.used.values())

    def note_used(self) -> None:
        """Tie each stretch of hands to the literal of its session."""
        if self.used:
            return
        for person, session in self.all_sessions():
            key = (person.id, session.id)
            used = self.used[key] = self.model.cp.new_bool_var("session")
            for hand in self.hands_of(person):
                if self.could_meet(hand, session):
                    self.keep_out(hand, session, [~used, *hand.literals(person.id)])
        everywhere: Linear = sum(
            session.minutes * self.used[person.id, session.id]
            for person, session in self.all_sessions()
        )
        self.model.cp.add(everywhere >= self.total(self.model.hands))
        self.room_for_work()

    def room_for_work(self) -> None:
        """Open enough sessions for the work that has to lie within each stretch of time.

        The solver would find this out, but only after a long time.
        """
        most: dict[tuple[int, ...], list[Hand]] = {}
        for start, end in self.stretches():
            room = tuple(session.free(start, end) for _, session in self.all_sessions())
            bound = self.bound_to(start, end)
            if minutes_of(bound) > minutes_of(most.get(room, [])):
                most[room] = bound
        for room, bound in most.items():
            opened: Linear = sum(
                minutes * self.used[person.id, session.id]
                for minutes, (person, session) in zip(room, self.all_sessions(), strict=True)
            )
            self.model.cp.add(opened >= self.total(bound))

    def stretches(self) -> Iterator[tuple[int, int]]:
        """Yield stretches between where sessions, or windows of work, begin and end."""
        sessions = [session for _, session in self.all_sessions()]
        windows = self.windows.values()
        starts = {*(start for start, _ in windows), *(session.start for session in sessions)}
        ends = {*(end for _, end in windows), *(session.end for session in sessions)}
        for start in thinned(sorted(starts)):
            for end in thinned(sorted(ends)):
                if end > start:
                    yield start, end

    def could_meet(self, hand: Hand, session: Session) -> bool:
        """Tell whether the window of some hands meets a session."""
        start, end = self.windows.get((hand.task, hand.part), (session.start, session.end))
        return start < session.end and end > session.start

    def bound_to(self, start: int, end: int) -> list[Hand]:
        """Return the hands that cannot but work between two minutes."""
        return [
            hand
            for hand in self.model.hands
            if (at := self.windows.get((hand.task, hand.part))) and at[0] >= start and at[1] <= end
        ]

    def all_sessions(self) -> list[tuple[Person, Session]]:
        """Return every planned session that is not wholly past, with its person."""
        return [
            (person, session)
            for person in self.model.problem.people
            for session in person.planned
            if session.end > self.model.now
        ]

    def hands_of(self, person: Person) -> list[Hand]:
        """Return the stretches of hands that a person may do."""
        return [hand for hand in self.model.hands if person.id in hand.people]

    def total(self, hands: list[Hand]) -> Linear:
        """Count the minutes of some hands, without those of tasks that another one does."""
        return sum(hand.minutes * (1 if hand.present is None else hand.present) for hand in hands)

    def keep_out(self, hand: Hand, session: Session, when: list[Truth]) -> None:
        """Keep hands out of a session, in case some literals are true."""
        self.place(hand, outside_of(self.model, hand, session), when)

    def place(self, hand: Hand, allowed: list[list[int]], when: list[Truth]) -> None:
        """Let hands start only within some stretches, in case some literals are true."""
        from ortools.sat.python import cp_model as engine

        domain = engine.Domain.from_intervals(allowed)
        claim = self.model.cp.add_linear_expression_in_domain(hand.start, domain)
        claim.only_enforce_if(*when)

    def note_chosen(self) -> None:
        """Say for each stretch of hands in which session it lies, with the work in each."""
        if self.chosen:
            return
        self.note_used()
        places: dict[int, list[Truth]] = {i: [] for i in range(len(self.model.hands))}
        for person, session in self.all_sessions():
            key = (person.id, session.id)
            self.chosen[key] = {}
            for index, hand in enumerate(self.model.hands):
                starts = starts_in(session.windows, hand.minutes)
                if person.id in hand.people and starts:
                    inside = self.inside(hand, person, starts, self.used[key])
                    self.chosen[key][index] = inside
                    places[index].append(inside)
            minutes = self.model.hands
            self.work[key] = sum(minutes[i].minutes * x for i, x in self.chosen[key].items())
            self.model.cp.add(self.work[key] <= session.minutes * self.used[key])
        for index, literals in places.items():
            present = self.model.hands[index].present
            self.model.cp.add(sum(literals) == (1 if present is None else present))

    def inside(self, hand: Hand, person: Person, starts: list[list[int]], used: Truth) -> Truth:
        """Return a literal for hands that lie in one session of one person."""
        inside = self.model.cp.new_bool_var("inside")
        self.place(hand, starts, [inside])
        self.model.cp.add_implication(inside, used)
        chosen = hand.people[person.id]
        if chosen is not None:
            self.model.cp.add_implication(inside, chosen)
        return inside

    def bench(self) -> Linear:
        """Count the minutes from the first to the last work of each session."""
        self.note_chosen()
        minutes = sum(self.presence(person, session) for person, session in self.all_sessions())
        self.model.cp.add(minutes >= self.total(self.model.hands))
        return minutes

    def presence(self, person: Person, session: Session) -> Linear:
        """Return the minutes from the first to the last work of one session."""
        cp, key = self.model.cp, (person.id, session.id)
        first = cp.new_int_var(session.start, session.end, "first")
        last = cp.new_int_var(session.start, session.end, "last")
        minutes = cp.new_int_var(0, session.end - session.start, "presence")
        for index, inside in self.chosen[key].items():
            hand = self.model.hands[index]
            cp.add(first <= hand.start).only_enforce_if(inside)
            cp.add(last >= hand.end).only_enforce_if(inside)
        cp.add(minutes >= last - first)
        cp.add(minutes >= self.work[key])
        return minutes

    def freshness(self) -> Linear:
        """Count how old everything is at the end of all, as far as that matters."""
        end = max(self.model.problem.end, self.model.now)
        aged = [t for t in self.model.times.values() if t.task.freshness and not t.is_done]
        return sum(times.task.freshness * (end - times.end) for times in aged)

    def spread(self) -> Linear:
        """Count the hands-on work of the busiest session."""
        self.note_chosen()
        most = max((session.minutes for _, session in self.all_sessions()), default=0)
        busiest = self.model.cp.new_int_var(0, most, "busiest")
        for work in self.work.values():
            self.model.cp.add(busiest >= work)
        if self.most_used:
            self.model.cp.add(self.most_used * busiest >= self.total(self.model.hands))
        return busiest

    def finish(self) -> Linear:
        """Count the minutes until everything is done."""
        last = self.model.cp.new_int_var(self.model.now, self.model.end, "last")
        for times in self.model.times.values():
            self.model.cp.add(last >= times.end)
        return last - self.model.problem.start

    def moves(self) -> Linear:
        """Count by how many minutes hands move from where they were."""
        moved: list[Linear] = []
        for hand in self.model.hands:
            was = self.was(hand)
            if was is not None:
                by = self.model.cp.new_int_var(0, self.model.end, "moved")
                self.model.cp.add(by >= hand.start - was)
                self.model.cp.add(by >= was - hand.start)
                moved.append(by)
        return sum(moved)

    def was(self, hand: Hand) -> int | None:
        """Return where a stretch of hands stood in the plan before, if it stood there."""
        if self.before is None or not self.before.holds(hand.task):
            return None
        stretches = self.before.at(hand.task).hands
        return next((one.start for one in stretches if one.part is hand.part), None)


def minutes_of(hands: Iterable[Hand]) -> int:
    """Minutes of some hands, if all of them have to work."""
    return sum(hand.minutes for hand in hands)


def outside_of(model: PlanModel, hand: Hand, session: Session) -> list[list[int]]:
    """Starts of hands that do not lie in any window of a session."""
    starts = starts_in(session.windows, hand.minutes)
    return outside(starts, model.problem.start - hand.minutes, model.end)
