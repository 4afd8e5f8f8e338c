"""Writes the generated pages of the documentation; with --check, only says which are stale."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path

from command_page import command_page
from document_page import document_page
from source_page import source_page
from vocabulary_page import vocabulary_page

from entremetry.usecases.schema import schema_text

DOCS = Path(__file__).parents[2] / "docs"


def pages() -> Mapping[Path, str]:
    """Every generated file with its text."""
    return {
        DOCS / "reference" / "cli.md": command_page(),
        DOCS / "reference" / "dessert-document.md": document_page("dessert"),
        DOCS / "reference" / "kitchen-document.md": document_page("kitchen"),
        DOCS / "reference" / "price-document.md": document_page("price"),
        DOCS / "reference" / "dessert.schema.json": schema_text("dessert"),
        DOCS / "reference" / "kitchen.schema.json": schema_text("kitchen"),
        DOCS / "reference" / "price.schema.json": schema_text("price"),
        DOCS / "reference" / "sources.md": source_page(),
        DOCS / "vocabulary.md": vocabulary_page(DOCS / "vocabulary.d"),
    }


def is_stale(path: Path, text: str) -> bool:
    """Tell whether a file does not hold this text."""
    return not path.is_file() or path.read_text(encoding="utf-8") != text


def main() -> None:
    """Write what is stale, or complain of it."""
    stale = {path: text for path, text in pages().items() if is_stale(path, text)}
    if "--check" in sys.argv[1:]:
        names = ", ".join(str(path.relative_to(DOCS.parent)) for path in stale)
        sys.exit(f"stale, run 'make fix': {names}" if stale else 0)
    for path, text in stale.items():
        path.write_text(text, encoding="utf-8")
        print(f"wrote {path.relative_to(DOCS.parent)}")


if __name__ == "__main__":
    main()
