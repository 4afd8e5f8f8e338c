"""Puts a menu together: steps become tasks, moulds make rounds, shared work may be merged."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from entremetry.agenda import sessions
from entremetry.agenda.draft import KEPT_FROZEN, WEIGHTS, StepDraft
from entremetry.agenda.flows import Flows
from entremetry.agenda.holding import Holding, mould_id
from entremetry.agenda.keeping import Limit
from entremetry.agenda.local_time import Clock
from entremetry.agenda.menu import Dish, Menu
from entremetry.agenda.menu_words import MenuWords
from entremetry.agenda.merging import merges
from entremetry.planning import (
    Delay,
    Merge,
    Problem,
    Resource,
    Service,
    Span,
    Task,
    repeated,
)

MOULD_WASHED = 15
"""Minutes to wash and dry a mould: common practice."""


def compose(flows: Flows, clock: Clock) -> Menu:
    """A menu of courses in a kitchen, from minute 0 of the clock to the last service.

    Raises
    ------
    ProblemError
        If the steps contradict one another.
    """
    return Composition(flows=flows, clock=clock).menu()


@dataclass(frozen=True, kw_only=True)
class Composition:
    """A menu on its way."""

    flows: Flows
    clock: Clock

    def menu(self) -> Menu:
        """The problem with its words."""
        problem = self._in_rounds(self._plain())
        problem = replace(problem, spans=tuple(self._spans()), merges=tuple(self._merges()))
        words = MenuWords(flows=self.flows)
        return Menu(
            zone=self.clock.zone.key,
            origin=self.clock.origin,
            dishes=tuple(self._dishes()),
            problem=problem,
            words=tuple(words.of_tasks(problem.merges)),
            things=tuple(words.of_things()),
            assumptions=tuple(dict.fromkeys(words.assumptions())),
            cautions=tuple(dict.fromkeys(words.cautions())),
        )

    @property
    def end(self) -> int:
        """The minute of the last service."""
        return max(self.clock.minute(course.at) for course in self.flows.courses)

    @cached_property
    def resources(self) -> tuple[Resource, ...]:
        """Everything there is, moulds included."""
        owned = {moulding.mould: moulding.owned for moulding in self.flows.mouldings}
        return (
            *self.flows.equipment.resources(),
            *(
                Resource(id=mould_id(mould), capacity=trays, turnover=MOULD_WASHED)
                for mould, trays in owned.items()
            ),
        )

    def _plain(self) -> Problem:
        """Everything but rounds, moulds, cold and shared work."""
        drafts = [draft for _, draft in self.flows.each]
        hours = [self.clock.minute(course.at) for course in self.flows.courses]
        return Problem(
            end=self.end,
            tasks=tuple(self._task(draft) for draft in drafts),
            delays=tuple(self._delay(delay) for draft in drafts for delay in draft.delays()),
            services=tuple(
                Service(task=dish.serving, at=hour)
                for dish, hour in zip(self._dishes(), hours, strict=True)
            ),
            resources=self.resources,
            people=sessions.people(self.flows.equipment.kitchen, self.clock, self.end),
        )

    def _task(self, draft: StepDraft) -> Task:
        """The task of a draft; what goes by pieces is counted by round if there are rounds."""
        moulding = self.flows.in_rounds.get(draft.id)
        task = draft.task() if moulding is None else draft.task(0)
        share = 1.0 if moulding is None else moulding.at_once / moulding.cavities
        frozen = [
            stay.mass * share
            for _, stay in self.flows.stays
            if stay.first == draft.id and draft.step.step == "freeze-until"
        ]
        load = self.flows.equipment.freezing_load(sum(frozen)) if frozen else ()
        return replace(task, needs=(*task.needs, *load))

    def _delay(self, delay: Delay) -> Delay:
        """A limit; what leaves its round has been put back into the freezer meanwhile."""
        rounds = self.flows.in_rounds
        leaves = delay.before in rounds and rounds[delay.before].emptied_by == delay.before
        kept = replace(delay, most=KEPT_FROZEN, firm=False, weight=WEIGHTS[Limit.HABIT])
        return kept if leaves and delay.weight < WEIGHTS[Limit.SAFETY] else delay

    def _in_rounds(self, problem: Problem) -> Problem:
        rounds = self.flows.in_rounds
        for moulding in {id(each): each for each in rounds.values()}.values():
            members = tuple(name for name in moulding.members if rounds[name] is moulding)
            problem = repeated(problem, replace(moulding, members=members).batches)
        return replace(problem, delays=tuple(d for d in problem.delays if self._matters(d)))

    def _matters(self, delay: Delay) -> bool:
        """Whether a limit between rounds of two moulds, or out of a mould, matters.

        A round of pieces takes up inserts of the first rounds, as many as it needs. What is not
        frozen comes from the last of them alone.
        """
        (before, made), (after, taken) = round_of(delay.before), round_of(delay.after)
        maker, taker = self.flows.in_rounds.get(before), self.flows.in_rounds.get(after)
        if maker is None or maker is taker:
            return True
        wanted = maker.cavities if taker is None else taker.made_before(taken + 1)
        last = wanted <= maker.made_before(made + 1)
        return maker.made_before(made) < wanted and (last or before == maker.emptied_by)

    def _spans(self) -> Iterator[Span]:
        holding = Holding(equipment=self.flows.equipment, ids=self.flows.ids)
        for moulding in self.flows.mouldings:
            yield from holding.moulds(moulding)
        for _, stay in self.flows.stays:
            yield from holding.cold(stay)

    def _merges(self) -> Iterator[Merge]:
        drafts = [(course, self.flows.drafts[course.key]) for course in self.flows.courses]
        by_id = {resource.id: resource for resource in self.resources}
        yield from merges(drafts, set(self.flows.in_rounds), by_id)

    def _dishes(self) -> Iterator[Dish]:
        for course in self.flows.courses:
            yield Dish(
                key=course.key,
                dessert=course.dessert.document.id,
                name=course.dessert.document.name,
                pieces=course.sheet.pieces,
                serving=course.task_id("", len(course.assembly) - 1),
            )


def round_of(task: str) -> tuple[str, int]:
    """A task without its round, and the round (1 if it is done once)."""
    name, _, number = task.rpartition("#")
    return (name, int(number)) if name else (task, 1)
