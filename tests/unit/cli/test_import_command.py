"""From pasted lines to a document that can be computed: the unclear is asked, never guessed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from command_line import Answer, entremetry

LINES = """Plum mousse:
- 240 g blackcurrant purée
- 2 leaves gelatine
- 1 1/2 tbsp corn starch
- 150 g dark chocolate (70 %), chopped
- Best on the day.

Almond base:
60 g ground almonds
2 large eggs
40 g caster sugar

Syrup:
50 g caster sugar
50 g water
"""
ANSWERS = {
    "measures": "uk",
    "cavities": "1",
    "plum-mousse-1-ingredient": "blackcurrant-puree-unsweetened",
    "plum-mousse-2-ingredient": "gelatine-sheet-silver",
    "plum-mousse-5-ingredient": "leave-out",
    "plum-mousse-density": "0.62 g/ml",
    "plum-mousse-place": "filling",
    "almond-base-2-amount": "2 large egg (EU)",
    "almond-base-place": "base",
    "almond-base-size": "150 mm × 8 mm",
    "syrup-kind": "soak",
    "syrup-place": "soak",
    "syrup-size": "20 g",
}


@pytest.fixture
def lines(tmp_path: Path) -> Path:
    """The pasted lines in a file."""
    path = tmp_path / "lines.txt"
    path.write_text(LINES, encoding="utf-8")
    return path


def drafted(lines: Path, answers: dict[str, str], *more: object) -> Answer:
    """Draft a dessert in a mould weighed with water."""
    said = [word for key, answer in answers.items() for word in ("--answer", f"{key}={answer}")]
    options = ("--name", "Plum", "--pieces", 1, "--holds", "1130 g", "--like", "hemisphere-160")
    return entremetry("import", lines, *options, *said, *more)


def test_every_question_names_its_line_its_choices_and_how_to_answer(lines: Path) -> None:
    answer = drafted(lines, {})
    assert answer.status == 0
    assert "plum-mousse-2-ingredient: Gelatine sheets of what strength?" in answer.err
    assert "plum-mousse-2-ingredient=gelatine-sheet-gold" in answer.err
    assert "('- 2 leaves gelatine')" in answer.err
    assert "measures=au   Australian" in answer.err


def test_a_draft_with_open_questions_cannot_be_computed(lines: Path) -> None:
    draft = lines.with_name("draft.yaml")
    draft.write_text(drafted(lines, {}).out, encoding="utf-8")
    refused = entremetry("batch", draft)
    assert refused.status == 2
    assert "an open question: Gelatine sheets of what strength?" in refused.err


def test_answers_complete_the_document_and_batch_takes_it(lines: Path) -> None:
    answer = drafted(lines, ANSWERS)
    assert (answer.status, answer.err) == (0, "")
    draft = lines.with_name("draft.yaml")
    draft.write_text(answer.out, encoding="utf-8")
    sheet = json.loads(entremetry("batch", draft, "--json").out)
    amounts = {
        line["id"]: line["mass_g"] / component["factor"]
        for component in sheet["components"]
        for line in component["ingredients"]
    }
    assert amounts["couverture-dark-70"] == pytest.approx(150.0, abs=0.01)
    assert amounts["gelatine-sheet-silver"] == pytest.approx(5.0, abs=0.01)  # 2.5 g a leaf
    assert amounts["egg-whole"] == pytest.approx(123.0, abs=0.01)  # 61.5 g without shell
    assert sheet["mould"]["cavity_volume_ml"] == pytest.approx(1130 / 0.9982, abs=0.1)


def test_the_object_holds_the_document_and_the_questions(lines: Path) -> None:
    told: dict[str, Any] = json.loads(drafted(lines, {}, "--json").out)
    assert told["complete"] is False
    assert {question["key"] for question in told["questions"]} >= {"measures", "cavities"}
    assert json.loads(drafted(lines, ANSWERS, "--json").out)["complete"] is True


@pytest.mark.parametrize(
    ("key", "answer", "says"),
    [
        ("plum-mousse-2-ingredient", "platinumm", "gelatine-sheet-platinum"),
        ("plum-mousse-density", "light", "0.60 g/ml"),
        ("plum-mousse-place", "fill", "did you mean filling?"),
        ("almond-base-size", "150 mm", "150 mm"),
        ("almond-base-2-amount", "two", "30 g"),
        ("syrup-kind", "sirup", "mousse, insert"),
        ("cavities", "many", "15"),
        ("measures", "fr", "us, metric, au, uk"),
        ("plum-mousse-9-amount", "3 g", "an answer to no question"),
    ],
)
def test_an_answer_that_fits_no_choice_is_refused_with_the_choices(
    lines: Path, key: str, answer: str, says: str
) -> None:
    refused = drafted(lines, ANSWERS | {key: answer})
    assert (refused.status, refused.out) == (2, "")
    assert f"lines.txt, answer {key}: found" in refused.err and says in refused.err


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--pieces", 0, "--mould", "cap-80"), "1 to 10000 pieces"),
        (("--pieces", 3, "--mould", "cap-81"), "did you mean cap-80"),
        (("--pieces", 3, "--mould", "cap-80", "--holds", "75 ml"), "one of the two"),
        (("--pieces", 3, "--holds", "75 ml"), "no mould that the weighed one is like"),
        (("--pieces", 3, "--holds", "75 mm", "--like", "cap-80"), "which is a length"),
        (("--pieces", 3, "--holds", "-75 ml", "--like", "cap-80"), "negative"),
        (("--pieces", 3, "--mould", "cap-80", "--measures", "fr"), "us, metric, au, uk"),
        (("--pieces", 3, "--mould", "cap-80", "--name", " "), "a name on one line"),
        (("--pieces", 3, "--mould", "cap-80", "--answer", "x"), "NAME=VALUE"),
    ],
)
def test_an_option_that_makes_no_sense_is_refused(
    lines: Path, options: tuple[object, ...], says: str
) -> None:
    refused = entremetry("import", lines, "--name", "Plum", *options)
    assert (refused.status, refused.out) == (2, "")
    assert says in refused.err


def test_no_lines_at_all_are_refused(tmp_path: Path) -> None:
    (tmp_path / "lines.txt").write_text("\n---\n", encoding="utf-8")
    refused = drafted(tmp_path / "lines.txt", {})
    assert refused.status == 2 and "one ingredient a line" in refused.err
