"""Posts that hands work only in free hours, and one thing at a time."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.planning import wish
from entremetry.planning.free_time import (
    Stretches,
    absences,
    outside,
    planned_windows,
    starts_in,
    with_overtime,
)
from entremetry.planning.plan_model import PlanModel, hand_parts
from entremetry.planning.resource import Person, Session, Window
from entremetry.planning.task_times import Hand

if TYPE_CHECKING:
    from entremetry.planning.linear import Truth


@dataclass(frozen=True, slots=True)
class Hours:
    """Adds the hours of all people to a model."""

    model: PlanModel

    def post(self) -> None:
        """Post who does what, and where in the free time of each it may lie."""
        for hand in self.model.hands:
            self.choice(hand)
        for person in self.model.problem.people:
            mine = [hand for hand in self.model.hands if person.id in hand.people]
            for hand in mine:
                self.within_hours(hand, person)
            self.one_thing_at_a_time(person, mine)

    def choice(self, hand: Hand) -> None:
        """Give each stretch of hands to exactly one of those who may do it."""
        literals = [one for one in hand.people.values() if one is not None]
        if literals:
            claim = self.model.cp.add_exactly_one(literals)
            if hand.present is not None:
                claim.only_enforce_if(hand.present)

    def domain(self, hand: Hand, allowed: Stretches, when: list[Truth]) -> None:
        """Let hands start only in some stretches, in case some literals are true."""
        from ortools.sat.python import cp_model as solver

        domain = solver.Domain.from_intervals(allowed)
        claim = self.model.cp.add_linear_expression_in_domain(hand.start, domain)
        claim.only_enforce_if(*when)

    def within_hours(self, hand: Hand, person: Person) -> None:
        """Keep one stretch of hands inside a free window of the person who does it."""
        if self.model.leeway.optional:
            self.clear_of_absences(hand, person)
        elif self.model.leeway.bends:
            self.bending_hours(hand, person)
        else:
            allowed = starts_in(planned_windows(person), hand.minutes)
            self.domain(hand, allowed, hand.literals(person.id))

    def clear_of_absences(self, hand: Hand, person: Person) -> None:
        """Keep hands off each absence, which is a fact of its own."""
        first, last = self.model.problem.start, self.model.end
        for gap in absences(person, first, last):
            until = max(gap.start, min(gap.end, self.model.problem.end))
            fact = wish.absence(person, gap.start, until)
            blocked = [[gap.start - hand.minutes + 1, gap.end - 1]]
            when = [*self.model.leeway.needs(fact), *hand.literals(person.id)]
            self.domain(hand, outside(blocked, first - hand.minutes, last), when)

    def bending_hours(self, hand: Hand, person: Person) -> None:
        """Keep hands in planned hours, in overtime, or in sessions that could be opened."""
        literals = hand.literals(person.id)
        allowed = starts_in(planned_windows(person), hand.minutes)
        for session in person.sessions:
            if session.offered:
                allowed += self.in_offered(hand, person, session)
        room = with_overtime(person.sessions)
        for session in person.planned:
            allowed += self.in_overtime(hand, person, session, room[session.id])
        self.domain(hand, sorted(allowed), literals)

    def in_offered(self, hand: Hand, person: Person, session: Session) -> Stretches:
        """Allow hands in a session that could be opened, at its price."""
        opened = self.model.leeway.extra(
            wish.offered(person, session), 1, session.weight * OFFERED_WEIGHT
        )
        starts = starts_in(session.windows, hand.minutes)
        if isinstance(opened, int) or not starts:
            return []
        used = self.model.cp.new_bool_var("in an offered session")
        self.model.cp.add(opened >= 1).only_enforce_if(used)
        elsewhere = outside(starts, self.model.problem.start, self.model.end)
        self.domain(hand, elsewhere, [~used, *hand.literals(person.id)])
        return starts

    def in_overtime(self, hand: Hand, person: Person, session: Session, most: int) -> Stretches:
        """Allow hands after the end of a session, at the price of each minute."""
        extra = self.model.leeway.extra(wish.free_until(person, session), most, session.weight)
        first = max(session.end - hand.minutes + 1, session.windows[-1].start)
        last = session.end + most - hand.minutes
        if isinstance(extra, int) or last < first:
            return []
        over = self.model.cp.new_bool_var("in overtime")
        self.model.cp.add(hand.end <= session.end + extra).only_enforce_if(over)
        elsewhere = outside([[first, last]], self.model.problem.start, self.model.end)
        self.domain(hand, elsewhere, [~over, *hand.literals(person.id)])
        return [[first, last]]

    def one_thing_at_a_time(self, person: Person, mine: list[Hand]) -> None:
        """Keep the stretches of one person's hands apart, with what is in hand now."""
        intervals = [
            self.model.cp.new_fixed_size_interval_var(busy.start, busy.end - busy.start, "")
            for busy in self.in_hand_now(person)
        ]
        for hand in mine:
            stretch = (hand.start, hand.minutes, hand.end)
            intervals.append(self.model.interval(stretch, self.chosen(hand, person)))
        self.model.cp.add_no_overlap(intervals)

    def chosen(self, hand: Hand, person: Person) -> Truth | None:
        """Return one literal for 'this person really does it', or None if that is certain."""
        literals = hand.literals(person.id)
        if len(literals) < 2:
            return literals[0] if literals else None
        both = self.model.cp.new_bool_var("")
        self.model.cp.add_bool_and(literals).only_enforce_if(both)
        self.model.cp.add_bool_or([both, *(~one for one in literals)])
        return both

    def in_hand_now(self, person: Person) -> Iterator[Window]:
        """Yield the rest of the work that somebody has begun."""
        history = self.model.history
        for running in history.running if history else ():
            task = self.model.problem.task(running.task)
            end = running.start + task.hands_on
            first = running.person or self.model.problem.hands_for(task)[0].id
            if hand_parts(task) and first == person.id and end > self.model.now:
                yield Window(start=self.model.now, end=end)


OFFERED_WEIGHT = 2
"""A session that was not planned costs twice an overtime."""
