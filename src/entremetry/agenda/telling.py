"""A plan in the words of its menu and by the kitchen's clock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from zoneinfo import ZoneInfo

from entremetry.agenda.agenda import (
    Agenda,
    AgendaTask,
    Hands,
    Served,
    State,
    WayOut,
)
from entremetry.agenda.bench_sessions import sessions
from entremetry.agenda.goals import goal_reached
from entremetry.agenda.local_time import Clock
from entremetry.agenda.menu import Menu
from entremetry.agenda.words import TaskWords
from entremetry.planning import (
    Change,
    History,
    Placed,
    Plan,
    Problem,
    Result,
    Status,
    told_change,
    told_conflict,
)


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
        """What resources are called in a sentence about the plan."""
        return {thing.id: thing.name for thing in self.menu.things}

    @cached_property
    def places(self) -> Mapping[str, str]:
        """What a task is said to use; none for what is only counted."""
        return {thing.id: thing.place for thing in self.menu.things}

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
            sessions=sessions(problem, plan, self.clock) if plan else (),
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
                    sessions=sessions(each.problem, each.plan, self.clock),
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
            uses=tuple(dict.fromkeys(filter(None, (self.places[use] for use in uses)))),
            amounts=words.amounts,
            because=words.because,
            round=words.round,
            rounds=words.rounds,
            together=words.together,
            state=state_of(placed.task, history),
            moved=placed.start - old,
        )


def state_of(task: str, history: History | None) -> State:
    """What has become of a task."""
    if history is None:
        return State.TO_COME
    if history.done_task(task):
        return State.DONE
    return State.UNDER_WAY if history.running_task(task) else State.TO_COME
