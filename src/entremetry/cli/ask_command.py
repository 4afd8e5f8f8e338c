"""The command `ask`."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Annotated

import typer

from entremetry.cli.options import DessertFile, Json, KitchenFile
from entremetry.errors import EntremetryError


def ask(
    file: DessertFile,
    instead: Annotated[
        str | None,
        typer.Option(help="A line or ingredient that is not at hand.", metavar="LINE"),
    ] = None,
    have: Annotated[
        str | None, typer.Option(help="What is there in its place: 'A' or 'A+B'.", metavar="A")
    ] = None,
    bloom_rule: Annotated[
        str | None,
        typer.Option(help="How gelatines are compared: linear or square-root.", metavar="RULE"),
    ] = None,
    mould: Annotated[
        str | None, typer.Option(help="Another mould, glass or dish that is known.", metavar="ID")
    ] = None,
    shape: Annotated[
        str | None,
        typer.Option(help="A mould of your own: ring, dome, log, frame, glass.", metavar="SHAPE"),
    ] = None,
    size: Annotated[
        str | None, typer.Option(help="Its sizes: '180 × 45 mm'.", metavar="SIZES")
    ] = None,
    holds: Annotated[
        str | None,
        typer.Option(help="What one cavity holds of water: '75 ml' or '75 g'.", metavar="WATER"),
    ] = None,
    like: Annotated[
        str | None,
        typer.Option(help="The mould a weighed one looks most like.", metavar="ID"),
    ] = None,
    cavities: Annotated[
        int | None, typer.Option(help="How many cavities your own mould has.", metavar="N")
    ] = None,
    pieces: Annotated[int | None, typer.Option(help="How many pieces.", metavar="N")] = None,
    wait: Annotated[
        str | None,
        typer.Option(help="A part that shall wait: a component, filled, finished.", metavar="PART"),
    ] = None,
    for_: Annotated[
        str | None, typer.Option("--for", help="How long: '2 days', '6 h'.", metavar="TIME")
    ] = None,
    until: Annotated[
        str | None, typer.Option(help="Until when: '2026-12-24 19:00'.", metavar="WHEN")
    ] = None,
    where: Annotated[
        str | None, typer.Option(help="Where it waits: freezer, fridge or table.", metavar="PLACE")
    ] = None,
    without: Annotated[
        str | None,
        typer.Option(help="A component or a line to leave out.", metavar="NAME"),
    ] = None,
    symptom: Annotated[str | None, typer.Option(help="What went wrong.", metavar="ID")] = None,
    in_: Annotated[
        str | None, typer.Option("--in", help="Only causes in this component.", metavar="ID")
    ] = None,
    contains: Annotated[
        str | None, typer.Option(help="An allergen or ingredient.", metavar="NAME")
    ] = None,
    kitchen: KitchenFile = None,
    to: Annotated[
        Path | None, typer.Option(help="Write the adapted document here.", metavar="FILE")
    ] = None,
    json: Json = False,
) -> None:
    """Ask what to do with something else, another mould, a wait, a part left out, a mishap."""
    from entremetry.cli import ask_view
    from entremetry.questions.reading import read_question
    from entremetry.usecases import questions

    given = {
        "instead": instead,
        "have": have,
        "bloom-rule": bloom_rule,
        "mould": mould,
        "shape": shape,
        "size": size,
        "holds": holds,
        "like": like,
        "cavities": cavities,
        "pieces": pieces,
        "wait": wait,
        "for": for_,
        "until": until,
        "where": where,
        "without": without,
        "symptom": symptom,
        "in": in_,
        "contains": contains,
    }
    told = {name: str(value) for name, value in given.items() if value is not None}
    if not told:
        found = questions.choices(file, kitchen=kitchen)
        typer.echo(ask_view.choices_as_json(found) if json else ask_view.choices_text(found))
        return
    zone = questions.zone(kitchen)
    question = read_question(told, now=datetime.now(zone), zone=zone)
    answer = questions.ask(file, question, kitchen=kitchen)
    typer.echo(ask_view.as_json(answer) if json else ask_view.as_text(answer))
    _write(answer.document, to)


def _write(document: str, to: Path | None) -> None:
    """Write the adapted document, if one is wanted; refuse if none came of the question."""
    from entremetry.store.files import write_atomically

    if to is None:
        return
    if not document:
        typer.echo(f"{to} is not written: no other document comes of this question", err=True)
        raise typer.Exit(EntremetryError.exit_status)
    write_atomically(to, document.encode())
    typer.echo(f"wrote {to}", err=True)
