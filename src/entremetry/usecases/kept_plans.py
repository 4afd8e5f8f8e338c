"""Plans that are kept, what is told of them from the bench, and planning anew from there."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from functools import lru_cache
from typing import TYPE_CHECKING

from entremetry.agenda.agenda import Agenda
from entremetry.store import BenchEntry, KeptPlan
from entremetry.usecases.bench_record import record

if TYPE_CHECKING:
    from entremetry.planning import Limits
    from entremetry.store.library import Library
    from entremetry.usecases.plans import Planned


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAtBench:
    """A plan as it was made, the same as it stands now, and what was told since it was made.

    `language` is the one that it was made in: its sentences hold what the documents said then, so
    they are kept and not told again.
    """

    kept: KeptPlan
    language: str
    made: Agenda
    agenda: Agenda
    told: tuple[BenchEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanAnew:
    """A plan made anew that is not kept yet: from which one, and what was heard up to then."""

    kept: KeptPlan
    planned: Planned
    heard: int


def keep_plan(library: Library, planned: Planned) -> KeptPlan:
    """Keep a plan under the names of what it serves."""
    from entremetry.usecases.plans import planned_text

    names = dict.fromkeys(served.name for served in planned.agenda.served)
    return library.plans.keep(", ".join(names)[:200], planned_text(planned))


def plan_at_bench(library: Library, plan_id: int, *, now: datetime) -> PlanAtBench:
    """One plan with its states; UnknownName if there is none of that number."""
    from entremetry.usecases.plans import agenda_with

    kept, told = library.plans.plan(plan_id), library.plans.entries(plan_id)
    planned = _planned(kept.text)
    found = record(planned.agenda, told, heard=kept.heard, now=now)
    return PlanAtBench(
        kept=kept,
        language=planned.language,
        made=planned.agenda,
        agenda=agenda_with(planned, found),
        told=tuple(entry for entry in told if entry.number > kept.heard),
    )


def plan_anew(
    library: Library, plan_id: int, *, now: datetime, limits: Limits | None = None
) -> PlanAnew:
    """Plan the rest anew from what was told; nothing is kept yet."""
    from entremetry.usecases.plans import planned_anew

    kept, told = library.plans.plan(plan_id), library.plans.entries(plan_id)
    planned = _planned(kept.text)
    found = record(planned.agenda, told, heard=kept.heard, now=now)
    return PlanAnew(
        kept=kept,
        planned=planned_anew(planned, found, limits=limits),
        heard=max((entry.number for entry in told), default=kept.heard),
    )


def keep_plan_anew(library: Library, anew: PlanAnew) -> KeptPlan:
    """Put a plan made anew in place of the one before; StoreError if that was replaced."""
    from entremetry.usecases.plans import planned_text

    return library.plans.replace(anew.kept, planned_text(anew.planned), heard=anew.heard)


@lru_cache(maxsize=32)
def _planned(text: str) -> Planned:
    from entremetry.usecases.plans import planned_from

    return planned_from(text)
