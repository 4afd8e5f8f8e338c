"""A saved page by its path or on standard input, to a document that can be computed."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from command_line import entremetry

RECIPE: dict[str, Any] = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Night plum",
    "recipeYield": "Serves 6",
    "totalTime": "PT2H",
    "recipeIngredient": ["240 g unsweetened blackcurrant purée", "2 gold leaves gelatine"],
    "recipeInstructions": [
        {"@type": "HowToStep", "text": "Soak the gelatine for 10 min. Heat the purée to 60 °C."},
        {"@type": "HowToStep", "text": "Stir in the gelatine. Freeze for 6 h."},
    ],
}
ANSWERS = {
    "night-plum-kind": "insert",
    "night-plum-1-ingredient": "blackcurrant-puree-unsweetened",
    "pieces": "6",
    "mould": "hemisphere-70",
}


@pytest.fixture
def page(tmp_path: Path) -> Path:
    """A saved page."""
    path = tmp_path / "page.html"
    data = json.dumps(RECIPE)
    text = f'<html><script type="application/ld+json">{data}</script></html>'
    path.write_text(text, encoding="utf-8")
    return path


def said(answers: dict[str, str]) -> list[str]:
    """Options that answer."""
    return [word for key, answer in answers.items() for word in ("--answer", f"{key}={answer}")]


def test_a_page_needs_no_options_and_asks_for_what_it_does_not_say(page: Path) -> None:
    told = json.loads(entremetry("import", page, "--json").out)
    keys = [question["key"] for question in told["questions"]]
    assert {"pieces", "mould", "night-plum-kind"} <= set(keys) and not told["complete"]
    assert "name: Night plum" in told["document"]
    assert told["remarks"] == [
        "The text says 2 h in all; the times of its steps add up to 6 h 10 min."
    ]


def test_answers_complete_the_page_and_batch_takes_it(page: Path) -> None:
    answer = entremetry("import", page, *said(ANSWERS))
    assert answer.status == 0, answer.err
    assert answer.err.strip() == (
        "The text says 2 h in all; the times of its steps add up to 6 h 10 min."
    )
    draft = page.with_name("draft.yaml")
    draft.write_text(answer.out, encoding="utf-8")
    sheet = json.loads(entremetry("batch", draft, "--json").out)
    assert sheet["pieces"] == 6
    assert {line["id"] for c in sheet["components"] for line in c["ingredients"]} == {
        "blackcurrant-puree-unsweetened",
        "gelatine-sheet-gold",
        "water",  # in which the sheets soak
    }


def test_a_page_is_read_from_standard_input(page: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with page.open("rb") as stream:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(stream))
        told = json.loads(entremetry("import", "-", "--name", "Other", "--json").out)
    assert "name: Other" in told["document"]


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("<html></html>", "no recipe in its structured data"),
        ("x" * 5_000_001, "more than 5 MB"),
        ("5 g salt", "--name with a name"),
        ('{"@type": "Recipe"', "no JSON"),
    ],
)
def test_what_cannot_be_read_is_refused(tmp_path: Path, content: str, says: str) -> None:
    path = tmp_path / "page.html"
    path.write_text(content, encoding="utf-8")
    refused = entremetry("import", path)
    assert (refused.status, refused.out) == (2, "")
    assert says in refused.err
