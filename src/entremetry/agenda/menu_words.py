"""What a menu says about its tasks, its things, and what it takes for granted."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from entremetry.agenda import sessions
from entremetry.agenda.component_flow import hot_when_ready
from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.agenda.equipment import FRIDGE
from entremetry.agenda.flows import Flows
from entremetry.agenda.holding import Holding, mould_id
from entremetry.agenda.keeping import rests_cold
from entremetry.agenda.menu import Thing
from entremetry.agenda.telling_steps import task_words
from entremetry.agenda.words import TaskWords
from entremetry.planning import Merge
from entremetry.planning.batches import round_id
from entremetry.words import say, say_count


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuWords:
    """Tells what stands behind a problem."""

    flows: Flows

    def of_tasks(self, shared: Sequence[Merge]) -> Iterator[tuple[str, TaskWords]]:
        """The words of each task by its id, those that stand for several last."""
        known: dict[str, TaskWords] = {}
        for course, draft in self.flows.each:
            known |= dict(self._of_draft(course, draft))
        yield from known.items()
        for merge in shared:
            yield merge.together.id, together([known[name] for name in merge.tasks], merge.tasks)

    def _of_draft(self, course: Course, draft: StepDraft) -> Iterator[tuple[str, TaskWords]]:
        moulding = self.flows.in_rounds.get(draft.id)
        if moulding is None:
            yield draft.id, task_words(course, draft)
            return
        for number, size in enumerate(moulding.sizes, start=1):
            share = size / moulding.cavities
            words = task_words(course, draft, share=share, number=number, rounds=moulding.rounds)
            yield round_id(draft.id, number), words

    def of_things(self) -> Iterator[Thing]:
        """What each resource is called."""
        yield from self.flows.equipment.things()
        for name in dict.fromkeys((each.mould, each.name) for each in self.flows.mouldings):
            yield Thing(
                id=mould_id(name[0]), name=say("trays of '{mould}'", mould=name[1]), place=name[1]
            )

    def assumptions(self) -> Iterator[str]:
        """What documents and kitchen do not tell."""
        yield from self.flows.equipment.assumptions()
        if text := sessions.assumed(self.flows.equipment.kitchen):
            yield text
        for course in self.flows.courses:
            mould = course.dessert.mould
            if not mould.vessel and mould.id not in self.flows.moulds:
                yield say_count(
                    "The kitchen does not list the mould '{mould}': {number} tray assumed.",
                    "The kitchen does not list the mould '{mould}': {number} trays assumed.",
                    mould.owned,
                    mould=mould.name,
                )
        with_mould = {moulding.emptied_by for moulding in self.flows.mouldings}
        for course, draft in self.flows.each:
            frozen = draft.component and draft.step.step == "freeze-until"
            if frozen and draft.id not in with_mould:
                name = course.dessert.names[draft.component]
                yield say(
                    "{name}: the kitchen lists no mould of its shape; enough are assumed.",
                    name=name,
                )

    def cautions(self) -> Iterator[str]:
        """What may go wrong with it."""
        for _, draft in self.flows.each:
            if draft.wait.caution:
                yield draft.wait.caution
        for course in self.flows.courses:
            for component in course.components:
                if hot_when_ready(component):
                    yield say(
                        "{name} is hot when it is finished: if it waits, cool it below "
                        "21 °C within two hours and keep it in the fridge.",
                        name=component.name,
                    )
        holding = Holding(equipment=self.flows.equipment, ids=self.flows.ids)
        for course, stay in self.flows.stays:
            yield from holding.shortage(stay, course.dessert.document.name)
        for course, draft in self.flows.each:
            if draft.component and rests_cold(draft.step):
                volume = course.batch(draft.component).volume.value
                name = course.dessert.names[draft.component]
                yield from self.flows.equipment.shortage(FRIDGE, volume, name)


def together(words: Sequence[TaskWords], tasks: tuple[str, ...]) -> TaskWords:
    """The words of one task that stands for several."""
    return replace(
        words[0],
        dessert_name=", ".join(dict.fromkeys(each.dessert_name for each in words)),
        amounts=tuple(
            f"{each.dessert_name}: {amount}" for each in words for amount in each.amounts
        ),
        together=tasks,
    )
