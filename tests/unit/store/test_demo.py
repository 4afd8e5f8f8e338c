"""The demo library comes once and never writes over what the user did."""

from __future__ import annotations

from pathlib import Path

import pytest

from entremetry.store import open_library
from entremetry.store.demo import demo_texts, load_demos
from entremetry.store.library import Library
from entremetry.store.stored import Kind, Origin

DESSERT = Kind.DESSERT


def test_demo_is_loaded_as_such(library: Library) -> None:
    load_demos(library, {"dome": "as shipped"})
    stored = library.document(DESSERT, "dome")
    assert (stored.text, stored.revision.origin) == ("as shipped", Origin.DEMO)


def test_loading_again_changes_nothing(library: Library) -> None:
    for _ in range(2):
        load_demos(library, {"dome": "as shipped"})
    assert len(library.history(DESSERT, "dome")) == 1


def test_edited_demo_is_left_alone_when_a_newer_one_ships(library: Library) -> None:
    load_demos(library, {"dome": "as shipped"})
    library.save(DESSERT, "dome", "mine", started_from=1)
    load_demos(library, {"dome": "as shipped later"})
    assert library.document(DESSERT, "dome").text == "mine"


def test_demo_whose_edit_was_undone_is_still_the_users(library: Library) -> None:
    load_demos(library, {"dome": "as shipped"})
    library.save(DESSERT, "dome", "mine", started_from=1)
    library.undo(DESSERT, "dome", started_from=2)
    load_demos(library, {"dome": "as shipped later"})
    assert library.document(DESSERT, "dome").text == "as shipped"


def test_untouched_demo_is_renewed_and_the_old_one_kept(library: Library) -> None:
    load_demos(library, {"dome": "as shipped"})
    load_demos(library, {"dome": "as shipped later"})
    assert library.document(DESSERT, "dome").text == "as shipped later"
    assert library.text_at(DESSERT, "dome", 1) == "as shipped"


def test_users_own_dessert_of_that_id_is_left_alone(library: Library) -> None:
    library.add(DESSERT, "dome", "mine")
    load_demos(library, {"dome": "as shipped"})
    assert library.document(DESSERT, "dome").text == "mine"


def test_opening_a_library_loads_what_ships(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("ENTREMETRY_STORE", raising=False)
    opened = open_library(tmp_path)
    shipped = {stored.id: stored.text for stored in opened.documents(DESSERT)}
    opened.close()
    assert shipped == demo_texts()
