"""Arguments and options that several commands share."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

DessertFile = Annotated[Path, typer.Argument(help="A dessert document (YAML).", metavar="FILE")]
Json = Annotated[bool, typer.Option("--json", help="Print one JSON object.")]
Pieces = Annotated[int | None, typer.Option(help="How many pieces.", metavar="N")]
MouldId = Annotated[str | None, typer.Option("--mould", help="Another mould.", metavar="ID")]
KitchenFile = Annotated[Path | None, typer.Option("--kitchen", help="A kitchen document (YAML).")]
LanguageCode = Annotated[
    str, typer.Option("--language", help="Language of what is written: en, fr.", metavar="CODE")
]
