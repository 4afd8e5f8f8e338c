"""The one glossary page, joined from the rows that each room keeps in docs/vocabulary.d/."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

HEAD = """\
# Vocabulary

<!-- Joined by tools/reference from docs/vocabulary.d/; add a row there, then run `make fix`. -->

One word for one thing, the same in the code, the documents, the pages and the commands. Inside
the program every quantity is in SI units; the unit given here is the one that people read.

| word | meaning | unit | symbol |
|---|---|---|---|
"""


def vocabulary_page(folder: Path) -> str:
    """Text of the page.

    Raises
    ------
    ValueError
        If two rooms explain one word.
    """
    by_word: dict[str, str] = {}
    for path in sorted(folder.glob("*.md")):
        for row in rows(path.read_text(encoding="utf-8")):
            word = row.split("|")[1].strip()
            if word.casefold() in by_word:
                raise ValueError(f"{path.name}: '{word}' is explained twice")
            by_word[word.casefold()] = row
    return HEAD + "".join(f"{by_word[word]}\n" for word in sorted(by_word))


def rows(text: str) -> Iterator[str]:
    """Yield the rows of the tables in a text, without their heads."""
    for line in text.splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        if line.startswith("|") and cells[0].casefold() != "word" and set(line) - set("|-: "):
            yield f"| {' | '.join(cells)} |"
