"""Moulds: how many pieces are made at once, in how many rounds, and what the moulds hold up."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from entremetry.agenda.course import Course
from entremetry.agenda.draft import StepDraft
from entremetry.dessert.placement import InsertPlacement
from entremetry.errors import QuantityError
from entremetry.kitchen.mould import Mould
from entremetry.planning import Batches
from entremetry.words import say

AT_ONCE = 240
"""Minutes: work that may not stop for as long belongs to one round."""
MOST_ROUNDS = 50
ALIKE = 0.02
"""An insert's mould may differ from the insert by that share of volume and height."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moulding:
    """A mould in use from the task that fills it to the task that empties it.

    `members` are the tasks of one round, `cavities` to fill in all, `at_once` in one round.
    """

    mould: str
    name: str
    owned: int
    per_tray: int
    cavities: int
    filled_by: str
    emptied_by: str
    members: tuple[str, ...]
    seconds: tuple[tuple[str, int], ...]

    @property
    def at_once(self) -> int:
        """Cavities in one round."""
        return min(self.cavities, self.owned * self.per_tray)

    @property
    def rounds(self) -> int:
        """How often the mould is filled."""
        return math.ceil(self.cavities / self.at_once)

    def require_few_rounds(self) -> None:
        """Refuse more rounds than a plan can hold.

        Raises
        ------
        QuantityError
            With the trays that would do.
        """
        if self.rounds > MOST_ROUNDS:
            enough = math.ceil(self.cavities / self.per_tray / MOST_ROUNDS)
            raise QuantityError(
                say(
                    "{rounds} rounds of the mould '{mould}' for {cavities} cavities "
                    "with {owned} of its trays",
                    rounds=self.rounds,
                    mould=self.name,
                    cavities=self.cavities,
                    owned=self.owned,
                ),
                say(
                    "{most} rounds at most; plan fewer pieces, or list this mould in the "
                    "kitchen as owned {enough} times",
                    most=MOST_ROUNDS,
                    enough=enough,
                ),
            )

    @property
    def sizes(self) -> tuple[int, ...]:
        """Cavities filled in each round."""
        return self.batches.sizes

    @property
    def batches(self) -> Batches:
        """The rounds, as a plan knows them."""
        return Batches(
            tasks=self.members,
            pieces=self.cavities,
            at_once=self.at_once,
            seconds_per_piece=dict(self.seconds),
        )

    def made_before(self, number: int) -> int:
        """Cavities filled before a round, counted from 1."""
        return sum(self.sizes[: number - 1])

    def trays(self, number: int) -> int:
        """Trays in use in a round, counted from 1."""
        return math.ceil(self.sizes[number - 1] / self.per_tray)


def mouldings(
    course: Course, drafts: Mapping[str, StepDraft], moulds: Mapping[str, Mould]
) -> tuple[Moulding, ...]:
    """Every mould that a course fills: those of its inserts and its own."""
    return (*_insert_mouldings(course, drafts, moulds), *_own_moulding(course, drafts))


def _own_moulding(course: Course, drafts: Mapping[str, StepDraft]) -> Iterator[Moulding]:
    mould, kinds = course.dessert.mould, [step.step for step in course.assembly]
    if mould.vessel or "fill" not in kinds:
        return
    first = kinds.index("fill")
    ends = [n for n, kind in enumerate(kinds) if kind == "unmould" and n > first]
    ends += [n for n, kind in enumerate(kinds) if kind == "freeze-until" and n > first]
    if not ends:
        return
    inside = [course.task_id("", number) for number in range(first, ends[0] + 1)]
    yield _moulding(course, drafts, mould, inside, course.reckoning.cavities(course.sheet.pieces))


def _insert_mouldings(
    course: Course, drafts: Mapping[str, StepDraft], moulds: Mapping[str, Mould]
) -> Iterator[Moulding]:
    for placement in course.dessert.document.placement:
        frozen = [
            draft
            for draft in drafts.values()
            if draft.component == placement.component and draft.step.step == "freeze-until"
        ]
        if not isinstance(placement, InsertPlacement) or not frozen:
            continue
        mould = insert_mould(course, placement, moulds)
        if mould is not None:
            cavities = course.reckoning.cavities(course.sheet.pieces)
            yield _moulding(course, drafts, mould, [frozen[-1].id], cavities)


def insert_mould(
    course: Course, placement: InsertPlacement, moulds: Mapping[str, Mould]
) -> Mould | None:
    """The mould with the shape of an insert, if there is one; several trays are preferred."""
    placed = course.reckoning.placed.inclusions
    solid = next(part.solid for part in placed if part.component == placement.component)
    alike = [
        mould
        for mould in moulds.values()
        if not mould.vessel
        and abs(mould.solid.volume / solid.volume - 1.0) <= ALIKE
        and abs(mould.solid.height / solid.height - 1.0) <= ALIKE
    ]
    return max(alike, key=lambda mould: mould.cavities * mould.owned, default=None)


def _moulding(
    course: Course,
    drafts: Mapping[str, StepDraft],
    mould: Mould,
    inside: list[str],
    cavities: int,
) -> Moulding:
    members = bound_to(inside, drafts)
    per_cavity = course.reckoning.per_cavity
    filling = [name for name in members if drafts[name].step.step in ("fill", "pour")]
    return Moulding(
        mould=mould.id,
        name=mould.name,
        owned=mould.owned,
        per_tray=mould.cavities,
        cavities=cavities,
        filled_by=inside[0] if len(inside) > 1 or not filling else filling[-1],
        emptied_by=inside[-1],
        members=members,
        seconds=tuple((name, round(drafts[name].hands.per_piece * per_cavity)) for name in members),
    )


def bound_to(tasks: Iterable[str], drafts: Mapping[str, StepDraft]) -> tuple[str, ...]:
    """Tasks, and all before them between which the work may not stop, in the order of drafts."""
    found, left = set(tasks), list(tasks)
    while left:
        for link in drafts[left.pop()].links:
            if link.most < AT_ONCE and link.before not in found:
                found.add(link.before)
                left.append(link.before)
    return tuple(name for name in drafts if name in found)
