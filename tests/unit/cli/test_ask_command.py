"""Questions from the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from command_line import entremetry, numbers
from entremetry.store.demo import demo_texts


@pytest.fixture
def document(tmp_path: Path) -> Path:
    path = tmp_path / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    return path


def test_without_a_question_it_lists_what_can_be_asked(document: Path) -> None:
    answer = entremetry("ask", document)
    assert answer.status == 0
    for words in ("vanilla-insert/gelatine-sheet-gold", "ring  (diameter × height)", "filled"):
        assert words in answer.out
    found = json.loads(entremetry("ask", document, "--json").out)
    assert set(found) == {"instead", "without", "wait", "symptoms", "shapes"}


def test_an_answer_has_its_facts_changes_checks_and_document(document: Path) -> None:
    line = "blackcurrant-mousse/gelatine-sheet-gold"
    answer = entremetry(
        "ask", document, "--instead", line, "--have", "gelatine-sheet-silver", "--json"
    )
    told = json.loads(answer.out)
    assert (answer.status, told["kind"], told["reply"]) == (0, "instead", "with a change")
    assert told["changes"] and told["document"].startswith("#")
    assert set(numbers(told)) <= {"before_g", "after_g"}


def test_the_adapted_document_is_written_and_can_be_made(document: Path, tmp_path: Path) -> None:
    new = tmp_path / "new.yaml"
    answer = entremetry("ask", document, "--without", "vanilla-insert", "--to", new)
    assert answer.status == 0 and f"wrote {new}" in answer.err
    assert "Yes" in answer.out and "left out: Vanilla cream insert" in answer.out
    assert entremetry("batch", new).status == 0


def test_nothing_is_written_where_no_document_comes_of_it(document: Path, tmp_path: Path) -> None:
    new = tmp_path / "new.yaml"
    answer = entremetry("ask", document, "--without", "blackcurrant-mousse", "--to", new)
    assert answer.status == 2 and "is not written" in answer.err and not new.exists()


def test_a_wait_is_told_with_its_source(document: Path) -> None:
    answer = entremetry("ask", document, "--wait", "finished", "--for", "3 h", "--where", "table")
    assert answer.status == 0
    assert "No: 2 h at most." in answer.out and "Food Code" in answer.out


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (("--without", "vanila-insert"), "did you mean vanilla-insert"),
        (("--without", "salt", "--contains", "nuts"), "one question"),
        (("--instead", "salt"), "--instead without --have"),
        (("--shape", "ring", "--size", "180"), "diameter × height of a ring"),
        (("--wait", "filed"), "did you mean filled"),
    ],
)
def test_what_cannot_be_asked_is_refused_in_one_message(
    document: Path, options: tuple[str, ...], told: str
) -> None:
    answer = entremetry("ask", document, *options)
    assert (answer.status, answer.out) == (2, "")
    assert told in answer.err and "Traceback" not in answer.err
