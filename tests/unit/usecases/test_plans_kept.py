"""A plan is kept as text and read again exactly; what is no plan is refused."""

from __future__ import annotations

import pytest

from entremetry.agenda.record import Record
from entremetry.errors import StoreError
from entremetry.usecases.plans import Planned, planned_anew, planned_from, planned_text
from unit.agenda.menus import LAYERS, SHORTBREAD, swapped
from unit.usecases.test_plans import QUICK, planned


@pytest.fixture(scope="module")
def kept() -> str:
    """A plan for two desserts with shared work, as text."""
    return planned_text(
        planned(SHORTBREAD, swapped(("id: shortbread", "id: twin"), text=SHORTBREAD))
    )


def test_a_plan_is_read_again_exactly() -> None:
    plan = planned(LAYERS)
    text = planned_text(plan)
    assert planned_from(text) == plan
    assert planned_text(planned_from(text)) == text


def test_an_answer_without_a_plan_is_kept_as_well() -> None:
    none = planned(LAYERS, begin="2026-11-28 16:00")
    assert planned_from(planned_text(none)) == none


def test_a_plan_that_was_kept_can_be_made_anew(kept: str) -> None:
    again: Planned = planned_from(kept)
    found = planned_anew(again, Record(now=again.agenda.begins), limits=QUICK)
    assert found.agenda.feasible
    assert [task.start for task in found.agenda.tasks] == [t.start for t in again.agenda.tasks]


@pytest.mark.parametrize(
    "text", ["", "null", "[]", "{}", "\x00", "[" * 100_000, '{"agenda": 1e999}', "plan", "{" * 9]
)
def test_what_is_no_plan_is_refused(text: str) -> None:
    with pytest.raises(StoreError, match="no plan that was kept"):
        planned_from(text)


@pytest.mark.parametrize("part", [0.1, 0.5, 0.9, 0.999])
def test_a_plan_that_was_cut_short_is_refused(kept: str, part: float) -> None:
    with pytest.raises(StoreError, match="no plan that was kept"):
        planned_from(kept[: int(len(kept) * part)])


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("Europe/Paris", "../../etc/passwd", "a time zone such as Europe/Paris"),
        ("Europe/Paris", "Europe/Parts", "did you mean Europe/Paris"),
        ('"capacity":4', '"capacity":-4', "accepted: 1 or more"),
        ('"capacity":4', '"capacity":1e400', "capacity"),
        ('"person":"the cook"', '"person":"nobody"', "no person is called 'nobody'"),
        ('"task":"shortbread/dough-1","start"', '"task":"x","start"', "no task is called 'x'"),
        ('["shortbread/dough-2",{', '["x",{', "task 'shortbread/dough-2' has no words"),
        ('"serving":"twin/assembly-1"', '"serving":"twin/dough-1"', "never served"),
        ('"origin":"2026-11-25T09:00:00+01:00"', '"origin":"2026-11-25T09:00:00"', "no zone"),
    ],
)
def test_a_plan_that_was_tampered_with_is_refused(kept: str, old: str, new: str, told: str) -> None:
    assert old in kept
    with pytest.raises(StoreError, match=told):
        planned_from(kept.replace(old, new))
