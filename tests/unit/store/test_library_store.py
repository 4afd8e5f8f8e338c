"""Nothing that was ever saved is lost, and two who edit at once are told."""

from __future__ import annotations

import threading
from datetime import UTC, datetime

import pytest

from entremetry.errors import Conflict, StoreError, UnknownName
from entremetry.store.library import Library
from entremetry.store.stored import Kind, Origin

DESSERT = Kind.DESSERT


@pytest.fixture
def dome(library: Library) -> Library:
    library.add(DESSERT, "dome", "first")
    return library


def test_added_document_is_found_with_its_time(dome: Library) -> None:
    stored = dome.document(DESSERT, "dome")
    assert (stored.id, stored.text, stored.revision.number) == ("dome", "first", 1)
    assert stored.revision.changed_at == datetime(2026, 3, 2, 8, 0, tzinfo=UTC)


def test_unknown_id_offers_the_nearest(dome: Library) -> None:
    with pytest.raises(UnknownName, match="did you mean dome"):
        dome.document(DESSERT, "domme")


def test_taken_id_is_refused_and_keeps_its_text(dome: Library) -> None:
    with pytest.raises(StoreError, match="exists; choose another id"):
        dome.add(DESSERT, "dome", "other")
    assert dome.document(DESSERT, "dome").text == "first"


def test_kitchen_and_dessert_may_share_an_id(dome: Library) -> None:
    dome.add(Kind.KITCHEN, "dome", "a kitchen")
    assert dome.document(DESSERT, "dome").text == "first"
    assert [stored.id for stored in dome.documents(Kind.KITCHEN)] == ["dome"]


def test_documents_come_by_id(dome: Library) -> None:
    dome.add(DESSERT, "bar", "b")
    assert [stored.id for stored in dome.documents(DESSERT)] == ["bar", "dome"]


def test_saving_keeps_the_earlier_text(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    assert dome.document(DESSERT, "dome").text == "second"
    assert dome.text_at(DESSERT, "dome", 1) == "first"
    assert [revision.number for revision in dome.history(DESSERT, "dome")] == [2, 1]


def test_saving_the_same_text_makes_no_revision(dome: Library) -> None:
    assert dome.save(DESSERT, "dome", "first", started_from=1).revision.number == 1


def test_edit_from_an_older_revision_is_a_conflict_and_writes_nothing(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    with pytest.raises(Conflict, match="started from revision 1, the newest is 2") as told:
        dome.save(DESSERT, "dome", "mine", started_from=1)
    assert (told.value.started_from, told.value.newest) == (1, 2)
    assert dome.document(DESSERT, "dome").text == "second"


def test_of_many_who_save_at_once_one_wins_and_all_others_are_told(dome: Library) -> None:
    told: list[str] = []

    def save(text: str) -> None:
        try:
            dome.save(DESSERT, "dome", text, started_from=1)
        except Conflict:
            told.append(text)

    threads = [threading.Thread(target=save, args=(f"text {n}",)) for n in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    winner = dome.document(DESSERT, "dome")
    assert winner.revision.number == 2
    assert sorted([*told, winner.text]) == [f"text {n}" for n in range(8)]


def test_undo_twice_goes_two_steps_back(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    dome.save(DESSERT, "dome", "third", started_from=2)
    assert dome.undo(DESSERT, "dome", started_from=3).text == "second"
    assert dome.undo(DESSERT, "dome", started_from=4).text == "first"
    with pytest.raises(StoreError, match="nothing to undo"):
        dome.undo(DESSERT, "dome", started_from=5)


def test_undone_text_stays_in_the_history(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    dome.undo(DESSERT, "dome", started_from=2)
    assert dome.text_at(DESSERT, "dome", 2) == "second"
    assert dome.restore(DESSERT, "dome", 2, started_from=3).text == "second"
    assert dome.history(DESSERT, "dome")[0].origin is Origin.RESTORED


def test_undo_of_a_restoration_takes_it_back(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    dome.restore(DESSERT, "dome", 1, started_from=2)
    assert dome.undo(DESSERT, "dome", started_from=3).text == "second"


def test_undo_from_an_older_revision_is_a_conflict(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    with pytest.raises(Conflict):
        dome.undo(DESSERT, "dome", started_from=1)


def test_unknown_revision_is_told(dome: Library) -> None:
    with pytest.raises(UnknownName, match="'7'"):
        dome.restore(DESSERT, "dome", 7, started_from=1)


def test_draft_is_kept_until_a_save(dome: Library) -> None:
    dome.keep_draft(DESSERT, "dome", "half a thought", started_from=1)
    dome.keep_draft(DESSERT, "dome", "a better half", started_from=1)
    draft = dome.draft(DESSERT, "dome")
    assert draft is not None
    assert (draft.text, draft.started_from) == ("a better half", 1)
    assert dome.document(DESSERT, "dome").text == "first"
    dome.save(DESSERT, "dome", "whole", started_from=1)
    assert dome.draft(DESSERT, "dome") is None


def test_draft_survives_a_conflict(dome: Library) -> None:
    dome.save(DESSERT, "dome", "second", started_from=1)
    dome.keep_draft(DESSERT, "dome", "mine", started_from=1)
    with pytest.raises(Conflict):
        dome.save(DESSERT, "dome", "mine", started_from=1)
    assert dome.draft(DESSERT, "dome") is not None


def test_dropped_draft_is_gone(dome: Library) -> None:
    dome.keep_draft(DESSERT, "dome", "half a thought", started_from=1)
    dome.drop_draft(DESSERT, "dome")
    assert dome.draft(DESSERT, "dome") is None


def test_put_writes_the_first_and_then_the_next_revision(library: Library) -> None:
    assert library.put(Kind.KITCHEN, "kitchen", "one", started_from=0).revision.number == 1
    assert library.put(Kind.KITCHEN, "kitchen", "two", started_from=1).revision.number == 2


def test_two_first_revisions_are_a_conflict(library: Library) -> None:
    library.put(Kind.KITCHEN, "kitchen", "one", started_from=0)
    with pytest.raises(Conflict, match="started from revision 0, the newest is 1"):
        library.put(Kind.KITCHEN, "kitchen", "other", started_from=0)
    assert library.document(Kind.KITCHEN, "kitchen").text == "one"
