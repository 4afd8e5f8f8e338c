"""What a person asks of the library is answered whole, and a refusal loses nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from entremetry.errors import Conflict, DocumentError, StoreError, UnknownName
from entremetry.store import Kind
from entremetry.store.database import open_database
from entremetry.store.library import Library
from entremetry.usecases import library as usecase
from entremetry.words import speaking

CREAM = """\
entremetry: 1
id: plain-cream
name: Plain cream
pieces: 6
mould: cylinder-60
components:
  cream:
    name: Set cream
    kind: mousse
    formula: {cream-35: 500 g, gelatine-powder-200: 8 g}
    density: 0.9 g/ml
placement:
  - {component: cream, as: filling}
"""
TOO_BIG = CREAM + (
    "  - {component: cream, as: insert, below_rim: 5 mm,"
    " shape: {kind: hemisphere, diameter: 90 mm}}\n"
)


def name_of(library: Library) -> str:
    """Name of the one dessert."""
    stored = usecase.dessert(library, "plain-cream")
    return usecase.dessert_name(stored.id, stored.text)


KITCHEN = "entremetry_kitchen: 1\nname: Mine\n"


@pytest.fixture
def library(tmp_path: Path) -> Iterator[Library]:
    database = open_database(tmp_path / "library.sqlite")
    yield Library(database)
    database.close()


@pytest.fixture
def cream(library: Library) -> Library:
    usecase.add_dessert(library, CREAM)
    return library


def test_added_dessert_bears_the_id_of_its_text(cream: Library) -> None:
    assert [stored.id for stored in usecase.desserts(cream)] == ["plain-cream"]
    assert usecase.open_dessert(cream, "plain-cream").text == CREAM


def test_text_that_is_no_document_is_not_added(library: Library) -> None:
    with pytest.raises(DocumentError):
        usecase.add_dessert(library, CREAM.replace("pieces: 6", "pieces: six"))
    assert usecase.desserts(library) == ()


def test_second_dessert_of_one_id_is_refused(cream: Library) -> None:
    with pytest.raises(StoreError, match="exists"):
        usecase.add_dessert(cream, CREAM)


def test_name_is_known_even_of_a_dessert_that_cannot_be_computed(cream: Library) -> None:
    usecase.save_dessert(cream, "plain-cream", TOO_BIG, started_from=1)
    assert name_of(cream) == "Plain cream"


def test_name_of_what_is_no_document_is_its_id(cream: Library) -> None:
    cream.save(Kind.DESSERT, "plain-cream", "no document", started_from=1)
    assert name_of(cream) == "Plain cream"


def test_save_of_what_does_not_fit_is_kept_with_its_trouble(cream: Library) -> None:
    saved = usecase.save_dessert(cream, "plain-cream", TOO_BIG, started_from=1)
    assert saved.revision == 2
    assert "mm" in saved.trouble


def test_save_of_what_fits_has_no_trouble(cream: Library) -> None:
    text = CREAM.replace("pieces: 6", "pieces: 8")
    assert usecase.save_dessert(cream, "plain-cream", text, started_from=1).trouble == ""


def test_faulty_text_is_kept_as_a_draft_only(cream: Library) -> None:
    faulty = CREAM.replace("pieces: 6", "pieces: six")
    with pytest.raises(DocumentError) as told:
        usecase.save_dessert(cream, "plain-cream", faulty, started_from=1)
    assert [(fault.line, fault.field) for fault in told.value.faults] == [(4, "pieces")]
    opened = usecase.open_dessert(cream, "plain-cream")
    assert opened.text == CREAM
    assert opened.draft is not None and opened.draft.text == faulty
    usecase.drop_draft(cream, "plain-cream")
    assert usecase.open_dessert(cream, "plain-cream").draft is None


def test_conflicting_text_is_kept_as_a_draft(cream: Library) -> None:
    usecase.save_dessert(cream, "plain-cream", CREAM + "# one\n", started_from=1)
    with pytest.raises(Conflict):
        usecase.save_dessert(cream, "plain-cream", CREAM + "# two\n", started_from=1)
    opened = usecase.open_dessert(cream, "plain-cream")
    assert opened.draft is not None and opened.draft.text == CREAM + "# two\n"


def test_unknown_dessert_gets_no_draft(cream: Library) -> None:
    with pytest.raises(UnknownName, match="did you mean plain-cream"):
        usecase.save_dessert(cream, "plane-cream", CREAM, started_from=1)
    assert cream.draft(Kind.DESSERT, "plane-cream") is None


def test_changed_id_is_a_fault_of_that_line(cream: Library) -> None:
    with pytest.raises(DocumentError, match="line 2, id: found other; accepted: plain-cream"):
        usecase.save_dessert(
            cream, "plain-cream", CREAM.replace("id: plain-cream", "id: other"), started_from=1
        )


def test_undo_and_restore_go_through_the_history(cream: Library) -> None:
    usecase.save_dessert(cream, "plain-cream", CREAM + "# two\n", started_from=1)
    assert usecase.open_dessert(cream, "plain-cream").can_undo
    usecase.undo_dessert(cream, "plain-cream", started_from=2)
    assert usecase.dessert(cream, "plain-cream").text == CREAM
    assert not usecase.open_dessert(cream, "plain-cream").can_undo
    usecase.restore_dessert(cream, "plain-cream", 2, started_from=3)
    assert usecase.dessert(cream, "plain-cream").text == CREAM + "# two\n"
    assert usecase.dessert_at(cream, "plain-cream", 1) == CREAM


def test_kitchen_starts_from_the_starter_and_is_kept(library: Library) -> None:
    opened = usecase.open_kitchen(library, starter=KITCHEN)
    assert (opened.text, opened.revision, opened.can_undo) == (KITCHEN, 0, False)
    assert usecase.kitchen_text(library) is None
    usecase.save_kitchen(library, KITCHEN, started_from=0)
    assert usecase.kitchen_text(library) == KITCHEN


def test_kitchen_is_undone_and_restored(library: Library) -> None:
    usecase.save_kitchen(library, KITCHEN, started_from=0)
    usecase.save_kitchen(library, KITCHEN + "hobs: 4\n", started_from=1)
    usecase.undo_kitchen(library, started_from=2)
    assert usecase.kitchen_text(library) == KITCHEN
    usecase.restore_kitchen(library, 2, started_from=3)
    assert usecase.kitchen_text(library) == KITCHEN + "hobs: 4\n"
    assert usecase.kitchen_at(library, 1) == KITCHEN


def test_faulty_first_kitchen_is_a_draft(library: Library) -> None:
    with pytest.raises(DocumentError):
        usecase.save_kitchen(library, KITCHEN + "hob: 4\n", started_from=0)
    opened = usecase.open_kitchen(library, starter=KITCHEN)
    assert opened.draft is not None and opened.draft.text == KITCHEN + "hob: 4\n"
    usecase.drop_kitchen_draft(library)
    assert usecase.open_kitchen(library, starter=KITCHEN).draft is None


def test_dessert_is_checked_against_the_kitchen(cream: Library) -> None:
    shape = "{kind: hemisphere, diameter: 70 mm}"
    mould = f"  - {{id: my-cube, name: My cube, shape: {shape}}}\n"
    text = CREAM.replace("cylinder-60", "my-cube")
    with pytest.raises(DocumentError, match="my-cube"):
        usecase.save_dessert(cream, "plain-cream", text, started_from=1)
    usecase.save_kitchen(cream, KITCHEN + "moulds:\n" + mould, started_from=0)
    assert usecase.save_dessert(cream, "plain-cream", text, started_from=1).trouble == ""


@pytest.mark.parametrize("name", [usecase.dessert_name, usecase.listed_name])
@pytest.mark.parametrize(
    ("table", "heard"),
    [
        ("", "Plain cream"),
        ("translations:\n  fr:\n    Set cream: Crème prise\n", "Plain cream"),
        ('translations:\n  fr:\n    "Plain cream": "Crème nature"\n', "Crème nature"),
        ("translations:\n  fr:\n    Set cream: Prise\n    Plain cream: Nature\n", "Nature"),
    ],
)
def test_a_name_is_told_in_the_spoken_language(
    name: Callable[[str, str], str], table: str, heard: str
) -> None:
    with speaking("fr"):
        assert name("plain-cream", CREAM + table) == heard
    assert name("plain-cream", CREAM + table) == "Plain cream"
