"""A plan is kept, read with what was told, made anew, and put in its own place."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from agendas import AGENDA, at
from entremetry.agenda.agenda import State
from entremetry.errors import StoreError
from entremetry.store import BenchEntry, Happening, KeptPlan
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.usecases.kept_plans import (
    keep_plan,
    keep_plan_anew,
    plan_anew,
    plan_at_bench,
)
from planned_by_hand import modules, planned

NOW = at("27 19:00")
COOK = AGENDA.tasks[0].id


@pytest.fixture
def library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Library]:
    for name, module in modules().items():
        monkeypatch.setitem(sys.modules, name, module)
    opened = Library(open_database(tmp_path / "library.sqlite"))
    yield opened
    opened.close()


@pytest.fixture
def kept(library: Library) -> KeptPlan:
    return keep_plan(library, planned("made"))


def done(library: Library, plan: KeptPlan, key: str = "a") -> BenchEntry:
    entry = BenchEntry(key=key, what=Happening.DONE, at=at("27 18:50"), task=COOK)
    return library.plans.note(plan.id, entry)


def test_a_plan_bears_the_names_of_what_it_serves(kept: KeptPlan) -> None:
    assert kept.name == "Pear dome, Hazelnut bars"


def test_a_plan_stands_as_it_was_told(library: Library, kept: KeptPlan) -> None:
    told = done(library, kept)
    found = plan_at_bench(library, kept.id, now=NOW)
    assert found.made == AGENDA
    assert [task.state for task in found.agenda.tasks[:2]] == [State.DONE, State.TO_COME]
    assert found.told == (told,)


def test_a_plan_made_anew_is_kept_only_when_it_is_taken(library: Library, kept: KeptPlan) -> None:
    done(library, kept)
    anew = plan_anew(library, kept.id, now=NOW)
    assert library.plans.plan(kept.id) == kept
    taken = keep_plan_anew(library, anew)
    assert (taken.id, taken.heard) == (kept.id, 1)
    found = plan_at_bench(library, kept.id, now=NOW)
    assert found.told == ()
    assert found.agenda.tasks[1].moved == 30


def test_what_was_told_meanwhile_counts_after(library: Library, kept: KeptPlan) -> None:
    done(library, kept)
    anew = plan_anew(library, kept.id, now=NOW)
    meanwhile = done(library, kept, "b")
    keep_plan_anew(library, anew)
    assert plan_at_bench(library, kept.id, now=NOW).told == (meanwhile,)


def test_two_plans_made_anew_do_not_both_count(library: Library, kept: KeptPlan) -> None:
    first, second = (plan_anew(library, kept.id, now=NOW) for _ in range(2))
    keep_plan_anew(library, first)
    with pytest.raises(StoreError):
        keep_plan_anew(library, second)
