"""The command `label`."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from entremetry.cli.options import DessertFile, Json, KitchenFile, LanguageCode, MouldId, Pieces


def label(
    file: DessertFile,
    pieces: Pieces = None,
    mould: MouldId = None,
    kitchen: KitchenFile = None,
    rules: Annotated[
        str, typer.Option(help="Whose rules the label follows: eu or us.", metavar="eu|us")
    ] = "eu",
    prices: Annotated[
        Path | None, typer.Option(help="A price document (YAML), for the cost.")
    ] = None,
    language: LanguageCode = "en",
    plan: Annotated[
        Path | None,
        typer.Option(
            help="A plan (JSON) that has this dessert, for its hours of hands.", metavar="FILE"
        ),
    ] = None,
    json: Json = False,
) -> None:
    """Draft the label: nutrition, allergens, list of ingredients, and what a piece costs.

    An American label is in English, as the law there wants.
    """
    from entremetry.cli.label_view import as_json, as_text
    from entremetry.usecases.labelling import label_of
    from entremetry.usecases.language import in_language

    with in_language(language):
        drafted = label_of(
            file, pieces=pieces, mould=mould, kitchen=kitchen, rules=rules, prices=prices, plan=plan
        )
        typer.echo(as_json(drafted) if json else as_text(drafted))
