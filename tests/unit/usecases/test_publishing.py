"""A publication is written whole or not at all, and is the same twice."""

from __future__ import annotations

import json
import shutil
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from icalendar import Calendar

from entremetry.errors import ProblemError, QuantityError, StoreError
from entremetry.store.demo import demo_texts
from entremetry.store.publication_folder import write_together
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.publication_files import (
    Form,
    Wishes,
    allergen_words,
    file_names,
    published_files,
)
from entremetry.usecases.publishing import Published, page_of_text, publish
from entremetry.words import ENGLISH, current, speaking

DAY = date(2026, 3, 1)


@pytest.fixture
def dome(tmp_path: Path) -> Path:
    """A demo dessert in a file."""
    path = tmp_path / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def everything(tmp_path_factory: pytest.TempPathFactory) -> Published:
    """A demo dessert published in all its forms, once; nothing else lies in its folder."""
    place = tmp_path_factory.mktemp("everything")
    path = place / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    return publish(path, place / "all", today=DAY)


def test_the_same_document_gives_the_same_bytes(dome: Path, everything: Published) -> None:
    again = publish(dome, dome.parent / "again", today=DAY)
    assert [p.name for p in again.files] == [p.name for p in everything.files]
    assert [p.read_bytes() for p in again.files] == [p.read_bytes() for p in everything.files]


def test_the_page_asks_for_nothing_from_elsewhere(dome: Path) -> None:
    sheet = batch_of_text(dome.read_text("utf-8"))
    written, structured, _ = published_files(sheet, DAY, Wishes(forms=(Form.PAGE,))).values()
    page = written.decode()
    assert "<script src" not in page and "<link" not in page and 'src="http' not in page
    assert json.loads(structured)["datePublished"] == "2026-03-01"


def test_all_forms_are_written_each_as_what_its_name_says(everything: Published) -> None:
    begins = {
        ".html": b"<!DOCTYPE html>",
        ".jsonld": b"{",
        "-section.svg": b"<svg",
        ".pdf": b"%PDF-",
        "-wall.pdf": b"%PDF-",
        "-description.txt": b"Blackcurrant and vanilla dome",
        "-spoken.txt": b"Blackcurrant and vanilla dome",
        ".xlsx": b"PK",
        ".ods": b"PK",
        "-section.png": b"\x89PNG",
        "-card.svg": b"<svg",
        "-card.png": b"\x89PNG",
    }
    files = everything.files
    found = {path.name.removeprefix("blackcurrant-vanilla-dome"): path for path in files}
    assert set(found) == set(begins)
    for ending, path in found.items():
        assert path.read_bytes().startswith(begins[ending])
    assert set(files[0].parent.iterdir()) == set(files)


@pytest.mark.parametrize("form", Form)
def test_a_form_can_be_written_alone(form: Form, dome: Path) -> None:
    sheet = batch_of_text(dome.read_text("utf-8"))
    every = published_files(sheet, DAY)
    alone = published_files(sheet, DAY, Wishes(forms=(form,)))
    assert alone and alone.items() <= every.items()


def test_a_limit_that_cannot_be_kept_leaves_nothing_behind(dome: Path) -> None:
    with pytest.raises(QuantityError, match="a limit of 10 letters"):
        publish(dome, dome.parent / "none", wishes=Wishes(limit=10), today=DAY)
    assert not (dome.parent / "none").exists()


def test_allergens_are_said_in_words(dome: Path) -> None:
    words = allergen_words(batch_of_text(dome.read_text("utf-8")))
    assert {"milk", "eggs", "gluten (wheat)", "nuts (hazelnut)"} <= set(words)
    with speaking("fr"):
        french = allergen_words(batch_of_text(dome.read_text("utf-8")))
    assert {"lait", "œufs", "gluten (blé)", "fruits à coque (noisette)"} <= set(french)


def test_a_folder_that_was_not_there_is_gone_again_if_nothing_can_be_written(
    tmp_path: Path,
) -> None:
    with pytest.raises(StoreError, match="cannot be written"):
        write_together(tmp_path / "a" / "b", {"page.html": b"page", "x" * 300: b"text"})
    assert list(tmp_path.iterdir()) == []


def test_what_was_there_stays_if_one_file_cannot_be_replaced(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("old", encoding="utf-8")
    (tmp_path / "section.svg").mkdir()
    with pytest.raises(StoreError, match="is a folder"):
        write_together(tmp_path, {"page.html": b"new", "section.svg": b"new"})
    assert (tmp_path / "page.html").read_text("utf-8") == "old"
    assert {path.name for path in tmp_path.iterdir()} == {"page.html", "section.svg"}


def test_a_publication_in_french_lies_beside_the_english_one(
    dome: Path, everything: Published
) -> None:
    folder = dome.parent / "both"
    shutil.copytree(everything.files[0].parent, folder)
    wishes = Wishes(forms=(Form.PAGE, Form.TEXT), language="fr")
    french = publish(dome, folder, today=DAY, wishes=wishes)
    name = "blackcurrant-vanilla-dome"
    assert [path.name for path in french.files] == [
        f"{name}.fr.html",
        f"{name}.fr.jsonld",
        f"{name}-section.fr.svg",
        f"{name}-description.fr.txt",
        f"{name}-spoken.fr.txt",
    ]
    both = {path.name for path in (*everything.files, *french.files)}
    assert {path.name for path in folder.iterdir()} == both
    assert len(both) == len(everything.files) + len(french.files)
    assert (everything.language, french.language) == ("en", "fr")
    assert json.loads(french.files[1].read_text("utf-8"))["image"] == [french.files[2].name]


def test_the_authors_texts_stand_in_the_language_or_are_told_to_be_missing(dome: Path) -> None:
    text = dome.read_text("utf-8").replace('    "Roasted hazelnuts": "Noisettes torréfiées"\n', "")
    dome.write_text(text, encoding="utf-8")
    french = publish(dome, dome.parent, today=DAY, wishes=Wishes(forms=(Form.TEXT,), language="fr"))
    assert french.untranslated == ("Roasted hazelnuts",)
    told = french.files[0].read_text("utf-8")
    assert "Dôme cassis et vanille" in told and "Roasted hazelnuts" in told
    english = publish(dome, dome.parent, today=DAY, wishes=Wishes(forms=(Form.TEXT,)))
    assert english.untranslated == ()


def test_a_page_of_text_speaks_the_language_and_leaves_it_again() -> None:
    text = demo_texts()["mango-coconut-lime-glass"]
    assert "Verrine mangue" in page_of_text(text, today=DAY, language="fr")
    assert current() is ENGLISH


def test_a_language_there_is_none_of_is_refused_before_anything_is_written(dome: Path) -> None:
    with pytest.raises(QuantityError, match="'xx'; accepted: one of: en, fr"):
        publish(dome, dome.parent / "none", wishes=Wishes(language="xx"))
    assert not (dome.parent / "none").exists()


def test_names_of_files_are_those_that_are_written() -> None:
    sheet = batch_of_text(demo_texts()["mango-coconut-lime-glass"])
    for form in Form:
        written = published_files(sheet, DAY, Wishes(forms=(form,)))
        assert file_names(sheet.id, (form,)) == tuple(written)


def test_an_hour_of_service_adds_a_calendar(dome: Path) -> None:
    serve = f"{date.today() + timedelta(days=6)} 19:00"
    wishes = Wishes(forms=(Form.TEXT,), language="fr")
    published = publish(dome, dome.parent / "cal", wishes=wishes, serve=serve)
    assert published.files[-1].name == "blackcurrant-vanilla-dome.fr.ics"
    events = Calendar.from_ical(published.files[-1].read_bytes()).walk("VEVENT")
    assert len(events) > 1
    assert any("Dôme" in str(event.get("summary")) for event in events)


def test_without_a_plan_for_the_hour_nothing_is_written(dome: Path) -> None:
    soon = f"{datetime.now() + timedelta(hours=2):%Y-%m-%d %H:%M}"
    with pytest.raises(ProblemError, match="no plan to serve at"):
        publish(dome, dome.parent / "none", wishes=Wishes(forms=(Form.TEXT,)), serve=soon)
    assert not (dome.parent / "none").exists()
