"""A plan in the words of its menu and by the kitchen's clock."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import groupby
from zoneinfo import ZoneInfo

from entremetry.agenda.agenda import (
    Agenda,
    AgendaSession,
    AgendaTask,
    GoalReached,
    Hands,
    Served,
    State,
    WayOut,
)
from entremetry.agenda.local_time import Clock
from entremetry.agenda.menu import Menu
from entremetry.agenda.words import TaskWords
from entremetry.planning import (
    Change,
    Goal,
    GoalReport,
    History,
    Person,
    Placed,
    Plan,
    Problem,
    Result,
    Session,
    Status,
    told_change,
    told_conflict,
)

GOALS = {
    Goal.SESSIONS: "Working sessions",
    Goal.BENCH: "Time at the bench",
    Goal.FRESHNESS: "Age of what should be fresh",
    Goal.SPREAD: "Work in the fullest session",
    Goal.FINISH: "End of all work",
    Goal.MOVES: "Work that moved",
}
COUNTED = {Goal.SESSIONS}


@dataclass(frozen=True, kw_only=True)
class Teller:
    """Tells the plans of one menu."""

    menu: Menu

    @cached_property
    def words(self) -> Mapping[str, TaskWords]:
        """The words of each task, by id."""
        return dict(self.menu.words)

    @cached_property
    def things(self) -> Mapping[str, str]:
        """What resources are called."""
        return dict(self.menu.things)

    @cached_property
    def clock(self) -> Clock:
        """The kitchen's clock."""
        return Clock(origin=self.menu.origin, zone=ZoneInfo(self.menu.zone))

    def name(self, subject: str) -> str:
        """What a task, a resource, a person or a session is called."""
        if subject in self.words:
            return self.words[subject].name
        return self.things.get(subject, subject)

    def agenda(
        self, result: Result, *, before: Plan | None = None, history: History | None = None
    ) -> Agenda:
        """Everything a result says; `before` is the plan that it was made anew from."""
        plan, problem = result.plan, result.problem
        return Agenda(
            zone=self.menu.zone,
            begins=self.clock.moment(problem.start),
            served=self.served(problem),
            feasible=result.feasible,
            proved_optimal=result.proved_optimal,
            undecided=result.status is Status.UNDECIDED,
            cancelled=result.cancelled,
            tasks=self.tasks(problem, plan, before, history) if plan else (),
            sessions=self.sessions(problem, plan) if plan else (),
            goals=tuple(goal_reached(report) for report in result.goals),
            changes=tuple(self.change(each) for each in result.changes),
            conflicts=tuple(
                told_conflict(each, name=self.name, clock=self.clock.said)
                for each in result.conflicts
            ),
            ways_out=tuple(
                WayOut(
                    changes=tuple(self.change(change) for change in each.changes),
                    tasks=self.tasks(each.problem, each.plan),
                    sessions=self.sessions(each.problem, each.plan),
                    served=self.served(each.problem),
                )
                for each in result.alternatives
            ),
            assumptions=self.menu.assumptions,
            cautions=self.menu.cautions,
        )

    def change(self, change: Change) -> str:
        """A fact that gives, as advice."""
        return told_change(change, name=self.name, clock=self.clock.said)

    def served(self, problem: Problem) -> tuple[Served, ...]:
        """What is served when."""
        at = {service.task: service.at for service in problem.services}
        return tuple(
            Served(
                dessert=dish.dessert,
                name=dish.name,
                pieces=dish.pieces,
                at=self.clock.moment(at[dish.serving]),
            )
            for dish in self.menu.dishes
        )

    def tasks(
        self,
        problem: Problem,
        plan: Plan,
        before: Plan | None = None,
        history: History | None = None,
    ) -> tuple[AgendaTask, ...]:
        """Every task at its place; what is done in one go with others stands once."""
        shown = [placed for placed in plan.placed if not placed.within]
        return tuple(self.task(problem, placed, before, history) for placed in shown)

    def task(
        self, problem: Problem, placed: Placed, before: Plan | None, history: History | None
    ) -> AgendaTask:
        """One task by the clock."""
        task, words = problem.task(placed.task), self.words[placed.task]
        hands = tuple(
            Hands(
                person=each.person,
                start=self.clock.moment(each.start),
                end=self.clock.moment(each.end),
            )
            for each in placed.hands
        )
        hands_on = task.hands_on + task.closing
        uses = [need.resource for need in task.needs]
        uses += [span.resource for span in problem.spans if placed.task == span.first]
        old = before.at(placed.task).start if before and before.holds(placed.task) else placed.start
        return AgendaTask(
            id=placed.task,
            dessert=words.dessert,
            dessert_name=words.dessert_name,
            component=words.component,
            component_name=words.component_name,
            kind=words.kind,
            text=words.text,
            start=self.clock.moment(placed.start),
            end=self.clock.moment(placed.end),
            hands=hands,
            hands_on=hands_on,
            waiting=max(0, placed.end - placed.start - hands_on),
            uses=tuple(dict.fromkeys(self.name(use) for use in uses)),
            amounts=words.amounts,
            because=words.because,
            round=words.round,
            rounds=words.rounds,
            together=words.together,
            state=state_of(placed.task, history),
            moved=placed.start - old,
        )

    def sessions(self, problem: Problem, plan: Plan) -> tuple[AgendaSession, ...]:
        """Sessions in which somebody works, in order."""
        return tuple(sorted(self._sessions(problem, plan), key=lambda each: each.start))

    def _sessions(self, problem: Problem, plan: Plan) -> Iterator[AgendaSession]:
        for person in problem.people:
            work = sorted(
                (hand.start, hand.end, placed.task)
                for placed in plan.placed
                for hand in placed.hands
                if hand.person == person.id and not placed.within
            )
            for session, group in groupby(work, key=lambda each: session_at(person, each[0])):
                yield self.session(person, session, list(group))

    def session(
        self, person: Person, session: Session, work: list[tuple[int, int, str]]
    ) -> AgendaSession:
        """One session with work in it, in order of the work (start, end, task)."""
        start, end = work[0][0], max(stop for _, stop, _ in work)
        hands_on = sum(stop - begin for begin, stop, _ in work)
        return AgendaSession(
            id=f"{session.id}, {person.id}",
            person=person.id,
            start=self.clock.moment(start),
            end=self.clock.moment(end),
            tasks=tuple(dict.fromkeys(task for _, _, task in work)),
            hands_on=hands_on,
            idle=end - start - hands_on,
        )


def session_at(person: Person, minute: int) -> Session:
    """The session that somebody works in: the last that began; overtime belongs to it."""
    return [session for session in person.sessions if session.start <= minute][-1]


def state_of(task: str, history: History | None) -> State:
    """What has become of a task."""
    if history is None:
        return State.TO_COME
    if history.done_task(task):
        return State.DONE
    return State.UNDER_WAY if history.running_task(task) else State.TO_COME


def goal_reached(report: GoalReport) -> GoalReached:
    """One goal in words."""
    say = str if report.goal in COUNTED else minutes
    value = say(report.value)
    if report.goal is Goal.FRESHNESS:
        text = (
            "proved as low as can be" if report.proved else f"within {report.gap:.1%} of the least"
        )
    elif report.proved:
        text = f"{value}: nothing less is possible"
    else:
        text = f"{value}: at least {say(report.bound)} is needed"
    return GoalReached(name=GOALS[report.goal], text=text, proved=report.proved)


def minutes(value: int) -> str:
    """Minutes as hours and minutes."""
    hours, rest = divmod(value, 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"
