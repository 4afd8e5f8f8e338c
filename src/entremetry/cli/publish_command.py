"""The command that publishes a dessert."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from entremetry.cli.options import DessertFile, Json, KitchenFile, LanguageCode, MouldId, Pieces


class PaperSize(StrEnum):
    """Paper that can be asked for."""

    A4 = "a4"
    LETTER = "letter"


class FormName(StrEnum):
    """Forms that can be asked for."""

    PAGE = "page"
    PAPER = "paper"
    TEXT = "text"
    TABLES = "tables"
    PICTURES = "pictures"


def publish(
    file: DessertFile,
    to: Annotated[Path, typer.Option("--to", help="Folder for the files.", metavar="FOLDER")],
    pieces: Pieces = None,
    mould: MouldId = None,
    kitchen: KitchenFile = None,
    form: Annotated[
        list[FormName] | None,
        typer.Option(help="Only this form, and others so named; all of them without it."),
    ] = None,
    paper: Annotated[PaperSize, typer.Option(help="Paper of the PDF sheets.")] = PaperSize.A4,
    limit: Annotated[
        int | None,
        typer.Option(help="Letters that the description may have; 5000 without it.", metavar="N"),
    ] = None,
    language: LanguageCode = "en",
    serve: Annotated[
        str | None,
        typer.Option(
            help="When it is served, such as '2026-12-24 19:00': adds a calendar.",
            metavar="WHEN",
        ),
    ] = None,
    json: Json = False,
) -> None:
    """Write a dessert as recipe page, PDF sheets, texts, spreadsheets and pictures."""
    from entremetry.cli.publish_view import as_json, as_text, untranslated_text
    from entremetry.publish.description_text import LIMIT
    from entremetry.publish.typesetting import Paper
    from entremetry.usecases.publication_files import Form, Wishes
    from entremetry.usecases.publishing import publish as publish_to

    wishes = Wishes(
        forms=tuple(Form(each) for each in form or FormName),
        paper=Paper(paper),
        limit=LIMIT if limit is None else limit,
        language=language,
    )
    published = publish_to(
        file, to, pieces=pieces, mould=mould, kitchen=kitchen, wishes=wishes, serve=serve
    )
    typer.echo(as_json(published) if json else as_text(published))
    if missing := untranslated_text(published):
        typer.echo(missing, err=True)
