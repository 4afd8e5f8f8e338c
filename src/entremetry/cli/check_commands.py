"""The commands `check` and `diagnose`."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from entremetry.errors import EntremetryError

DessertFile = Annotated[Path, typer.Argument(help="A dessert document (YAML).", metavar="FILE")]
Json = Annotated[bool, typer.Option("--json", help="Print one JSON object.")]
KitchenFile = Annotated[Path | None, typer.Option("--kitchen", help="A kitchen document (YAML).")]
MouldId = Annotated[str | None, typer.Option("--mould", help="Another mould.", metavar="ID")]
Times = Annotated[
    bool,
    typer.Option(
        "--times/--no-times", help="Also compute how long freezing, thawing and cooling take."
    ),
]


def check(
    file: DessertFile,
    kitchen: KitchenFile = None,
    mould: MouldId = None,
    times: Times = True,
    everything: Annotated[bool, typer.Option("--all", help="Also show what is fine.")] = False,
    json: Json = False,
) -> None:
    """What will not set, hold, release, shine or stay crisp, and what to change; 1 if any fails."""
    from entremetry.cli.check_view import as_json, as_text
    from entremetry.usecases.checking import checks

    checked = checks(file, kitchen=kitchen, mould=mould, times=times)
    typer.echo(as_json(checked) if json else as_text(checked, everything=everything))
    if checked.fails:
        raise typer.Exit(1)


def diagnose(
    file: DessertFile,
    symptom: Annotated[
        str | None,
        typer.Option(help="What went wrong; without it the symptoms are listed.", metavar="ID"),
    ] = None,
    component: Annotated[
        str | None, typer.Option(help="Only causes in this component.", metavar="ID")
    ] = None,
    kitchen: KitchenFile = None,
    times: Times = True,
    json: Json = False,
) -> None:
    """What most likely lies behind something that went wrong, and what would confirm it."""
    from entremetry.cli.diagnose_view import as_json, as_text, symptoms_text
    from entremetry.usecases.diagnosing import diagnosis, symptoms

    if symptom is None:
        typer.echo(symptoms_text(symptoms()), err=True)
        raise typer.Exit(EntremetryError.exit_status)
    found = diagnosis(file, symptom=symptom, component=component, kitchen=kitchen, times=times)
    typer.echo(as_json(found) if json else as_text(found))
