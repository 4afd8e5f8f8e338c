"""Publish a dessert: the recipe page with its drawing and its structured data."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.publish import recipe_json_ld, recipe_page, section_svg
from entremetry.store.publication_folder import write_together
from entremetry.usecases.batch import batch

DRAWING = "section.svg"


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """What was written, and the sheet it was written from."""

    files: tuple[Path, ...]
    sheet: BatchSheet


def publish(
    path: Path,
    to: Path,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    kitchen: Path | None = None,
    today: date | None = None,
) -> Published:
    """Write the page of a dessert document into a folder, which is made if it is not there.

    Raises
    ------
    EntremetryError
        If the document is refused, or the folder cannot be written; nothing half-written stays.
    """
    sheet = batch(path, pieces=pieces, mould=mould, kitchen=kitchen)
    drawing = f"{sheet.id}-{DRAWING}"
    files = write_together(to, published_files(sheet, today or date.today(), drawing))
    return Published(files=files, sheet=sheet)


def published_files(sheet: BatchSheet, today: date, drawing: str = DRAWING) -> dict[str, str]:
    """Texts of the files of a publication by their names; `drawing` is that of the section."""
    structured = recipe_json_ld(sheet, image=drawing, date_published=today)
    return {
        f"{sheet.id}.html": recipe_page(
            sheet, allergens=allergen_words(sheet), date_published=today, image=drawing
        ),
        f"{sheet.id}.jsonld": json.dumps(structured, ensure_ascii=False, indent=2) + "\n",
        drawing: section_svg(sheet.section, title=f"Section of {sheet.name}", standalone=True),
    }


def allergen_words(sheet: BatchSheet) -> tuple[str, ...]:
    """Allergens in words, 'gluten (wheat)', 'milk': the European list, then what the American
    list has beside it."""
    european = [_words(code) for code in sheet.allergens.eu]
    named = {code.rpartition(":")[2].rstrip("s") for code in sheet.allergens.eu}
    american = [
        _words(code)
        for code in sheet.allergens.us
        if code.rpartition(":")[2].rstrip("s") not in named
    ]
    return (*european, *american)


def _words(code: str) -> str:
    group, _, name = code.partition(":")
    return f"{group} ({name})" if name else group
