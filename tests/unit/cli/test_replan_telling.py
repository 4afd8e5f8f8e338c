"""What is told of the bench becomes a record, and what is not told is asked."""

from __future__ import annotations

from dataclasses import replace

import pytest

from agendas import AGENDA, TASKS, at, begun
from entremetry.agenda.record import Entry, Record
from entremetry.cli.replan_telling import Told, record_of
from entremetry.errors import EntremetryError, QuantityError, UnknownName

NOW = "2026-11-27 18:55"
COOK, FILL, FREEZE, MIX = (TASKS[k].id for k in range(4))


def entry(record: Record, task: str) -> Entry:
    (found,) = [each for each in record.entries if each.task == task]
    return found


def test_done_as_planned_and_done_at_an_hour() -> None:
    record = record_of(AGENDA, Told(now=NOW, done=(COOK,), begun=(FILL,)))
    assert record.now == at("27 18:55")
    assert entry(record, COOK) == Entry(task=COOK, started=at("27 18:30"), ended=at("27 18:50"))
    assert entry(record, FILL) == Entry(task=FILL, started=at("27 18:50"))
    late = record_of(AGENDA, Told(now=NOW, done=(f"{COOK}=2026-11-27 18:53",), left=(FILL,)))
    assert entry(late, COOK).ended == at("27 18:53") and len(late.entries) == 1


def test_an_hour_alone_is_the_last_time_it_was_that_hour() -> None:
    told = Told(now="2026-11-28 00:10", done=(f"{COOK}=18:52",), begun=(f"{FILL}=00:05",))
    record = record_of(AGENDA, replace(told, as_planned=True))
    assert entry(record, COOK).ended == at("27 18:52")
    assert entry(record, FILL).started == at("28 00:05")


def test_done_before_it_was_planned_keeps_its_length() -> None:
    record = record_of(AGENDA, Told(now=NOW, done=(COOK, FILL, f"{FREEZE}=18:54")))
    assert entry(record, FREEZE).ended == at("27 18:54")
    assert entry(record, FREEZE).started == at("27 16:44")
    assert entry(record, FILL).ended == at("27 18:55")


def test_what_is_not_told_is_asked_with_names_and_ways_to_answer() -> None:
    with pytest.raises(EntremetryError) as refused:
        record_of(AGENDA, Told(now=NOW, done=(COOK,)))
    message = str(refused.value).replace("\u00a0", " ")
    assert f"{FILL}  Fill · Pear compote, 18:50 to 19:00" in message and COOK not in message
    assert "Friday 27 November, 18:55" in message
    assert "--as-planned" in message and refused.value.exit_status == 2


def test_the_rest_is_as_planned_or_not_begun() -> None:
    done = record_of(AGENDA, Told(now=NOW, as_planned=True))
    assert {each.task: each.ended for each in done.entries} == {COOK: at("27 18:50"), FILL: None}
    assert record_of(AGENDA, Told(now=NOW, as_planned=False)).entries == ()


def test_tasks_done_in_one_go_are_told_of_together() -> None:
    told = Told(now="2026-11-27 19:22", done=(MIX,), as_planned=True)
    record = record_of(AGENDA, told)
    assert entry(record, TASKS[4].id).ended == entry(record, MIX).ended == at("27 19:20")


def test_what_a_former_record_holds_stays_unless_told_otherwise() -> None:
    record = record_of(begun(), Told(now=NOW))
    assert entry(record, COOK).ended == at("27 18:50") and entry(record, FILL).ended is None
    told = record_of(begun(), Told(now=NOW, left=(FILL,)))
    assert [each.task for each in told.entries] == [COOK]


def test_lengths_failures_and_a_late_cook() -> None:
    told = Told(
        now=NOW,
        as_planned=True,
        takes=(f"{FREEZE}=180", f"{COOK}=25 min"),
        again=(FILL,),
        not_before="2026-11-27 20:00",
    )
    record = record_of(AGENDA, told)
    assert record.lasts == ((FREEZE, 180), (COOK, 25)) and record.again == (FILL,)
    assert record.not_before == at("27 20:00")
    assert [each.task for each in record.entries] == [COOK]


@pytest.mark.parametrize(
    ("told", "error"),
    [
        (Told(now=NOW, done=("pear-dome/compote/cok-to-1",)), UnknownName),
        (Told(now=NOW, done=(COOK,), begun=(COOK,)), QuantityError),
        (Told(now=NOW, done=(f"{COOK}=2026-11-27 19:30",)), QuantityError),
        (Told(now=NOW, done=(f"{COOK}=soon",)), QuantityError),
        (Told(now=NOW, left=(f"{COOK}=18:30",)), QuantityError),
        (Told(now=NOW, as_planned=True, takes=(f"{COOK}=0",)), QuantityError),
        (Told(now=NOW, as_planned=True, takes=(COOK,)), QuantityError),
        (Told(now="2026-11-27", as_planned=True), QuantityError),
    ],
)
def test_what_cannot_be_is_refused(told: Told, error: type[EntremetryError]) -> None:
    with pytest.raises(error):
        record_of(AGENDA, told)
