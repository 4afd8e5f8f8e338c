"""The words of the program stand in the vocabulary, once each."""

from __future__ import annotations

from pathlib import Path

PAGE = Path(__file__).parents[2] / "docs" / "vocabulary.md"
BINDING = frozenset(
    [
        "ingredient",
        "formula",
        "component",
        "mousse",
        "insert",
        "base",
        "glaze",
        "soak",
        "crumble",
        "garnish",
        "mould",
        "vessel",
        "cut-out",
        "coating",
        "dessert",
        "piece",
        "batch",
        "overrun",
        "yield",
        "loss",
        "kitchen",
        "session",
        "run",
        "edition",
    ]
)


def rows() -> list[list[str]]:
    """Cells of every row of the table, without its head."""
    lines = [line for line in PAGE.read_text(encoding="utf-8").splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines[2:]]


def test_every_row_explains_a_word() -> None:
    assert [row for row in rows() if len(row) != 4 or not row[0] or not row[1]] == []


def test_no_word_is_explained_twice() -> None:
    words = [row[0].casefold() for row in rows()]
    assert sorted(set(words)) == sorted(words)


def test_the_binding_words_are_all_there() -> None:
    assert {row[0] for row in rows()} >= BINDING
