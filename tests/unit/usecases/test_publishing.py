"""A publication is written whole or not at all, and is the same twice."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from entremetry.errors import StoreError
from entremetry.store.demo import demo_texts
from entremetry.store.publication_folder import write_together
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.publishing import allergen_words, publish, published_files

DAY = date(2026, 3, 1)


@pytest.fixture
def dome(tmp_path: Path) -> Path:
    """A demo dessert in a file."""
    path = tmp_path / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    return path


def test_the_same_document_gives_the_same_bytes(dome: Path) -> None:
    one = publish(dome, dome.parent / "one", today=DAY)
    two = publish(dome, dome.parent / "two", today=DAY)
    assert [p.read_bytes() for p in one.files] == [p.read_bytes() for p in two.files]


def test_the_page_asks_for_nothing_from_elsewhere(dome: Path) -> None:
    page, structured, _ = published_files(batch_of_text(dome.read_text("utf-8")), DAY).values()
    assert "<script src" not in page and "<link" not in page and 'src="http' not in page
    assert json.loads(structured)["datePublished"] == "2026-03-01"


def test_allergens_are_said_in_words(dome: Path) -> None:
    words = allergen_words(batch_of_text(dome.read_text("utf-8")))
    assert {"milk", "eggs", "gluten (wheat)", "nuts (hazelnut)"} <= set(words)


def test_a_folder_that_was_not_there_is_gone_again_if_nothing_can_be_written(
    tmp_path: Path,
) -> None:
    with pytest.raises(StoreError, match="cannot be written"):
        write_together(tmp_path / "a" / "b", {"x" * 300: "text"})
    assert list(tmp_path.iterdir()) == []


def test_what_was_there_stays_if_one_file_cannot_be_replaced(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("old", encoding="utf-8")
    (tmp_path / "section.svg").mkdir()
    with pytest.raises(StoreError, match="is a folder"):
        write_together(tmp_path, {"page.html": "new", "section.svg": "new"})
    assert (tmp_path / "page.html").read_text("utf-8") == "old"
    assert {path.name for path in tmp_path.iterdir()} == {"page.html", "section.svg"}
