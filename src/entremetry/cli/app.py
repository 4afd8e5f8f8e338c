"""The command line: each command calls one use case and shows what it returns."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from entremetry import __version__
from entremetry.cli.ask_command import ask
from entremetry.cli.changing import adapt, rebalance
from entremetry.cli.check_commands import check, diagnose
from entremetry.cli.label_command import label
from entremetry.cli.options import DessertFile, Json, KitchenFile, MouldId, Pieces
from entremetry.cli.plan_commands import plan, replan
from entremetry.cli.publish_command import publish
from entremetry.errors import EntremetryError

app = typer.Typer(
    name="entremetry",
    help="From an idea and a mould to numbers that work: moulded, layered, frozen-set desserts.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)
app.command()(check)
app.command()(diagnose)
app.command()(label)


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"entremetry {__version__}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version.")
    ] = False,
) -> None:
    """Options of the program itself."""


@app.command()
def batch(
    file: DessertFile,
    pieces: Pieces = None,
    mould: MouldId = None,
    kitchen: KitchenFile = None,
    have: Annotated[
        str | None,
        typer.Option(help="Scale to what there is: 'blackcurrant-puree=410 g'.", metavar="A=MASS"),
    ] = None,
    json: Json = False,
) -> None:
    """How much of everything to make, how to fill the mould, what to buy."""
    from entremetry.cli.batch_view import as_json, as_text
    from entremetry.usecases.batch import batch as batch_of

    sheet = batch_of(file, pieces=pieces, mould=mould, kitchen=kitchen, have=_pair(have))
    typer.echo(as_json(sheet) if json else as_text(sheet))


app.command()(publish)


@app.command(name="import")
def import_(
    source: Annotated[
        str,
        typer.Argument(help="A file of pasted lines and steps, or a saved page; '-' reads it in."),
    ],
    name: Annotated[
        str | None, typer.Option(help="Name of the dessert; a saved page has one.")
    ] = None,
    pieces: Annotated[int | None, typer.Option(help="How many pieces.", metavar="N")] = None,
    mould: MouldId = None,
    holds: Annotated[
        str | None,
        typer.Option(help="What one cavity holds of water: '75 ml' or '75 g'.", metavar="WATER"),
    ] = None,
    like: Annotated[
        str | None,
        typer.Option(help="The built-in mould a weighed one looks most like.", metavar="ID"),
    ] = None,
    measures: Annotated[
        str | None, typer.Option(help="Whose cups and spoons: us, metric, au or uk.")
    ] = None,
    answer: Annotated[
        list[str] | None,
        typer.Option(help="Answer to a question, by its key.", metavar="KEY=ANSWER"),
    ] = None,
    json: Json = False,
) -> None:
    """Draft a dessert document from pasted lines or a saved page; the unclear is asked."""
    from entremetry.cli.import_view import as_json, questions_text
    from entremetry.usecases.drafting import draft_source

    drafted = draft_source(
        source,
        name=name,
        pieces=pieces,
        mould=mould,
        holds=holds,
        like=like,
        measures=measures,
        answers=dict(_required_pair(text) for text in answer or ()),
    )
    typer.echo(as_json(drafted) if json else drafted.document, nl=json)
    for remark in drafted.remarks:
        typer.echo(remark, err=True)
    if not drafted.complete:
        typer.echo(questions_text(drafted), err=True)


@app.command()
def schema(
    kitchen: Annotated[bool, typer.Option("--kitchen", help="Of the kitchen document.")] = False,
    price: Annotated[bool, typer.Option("--price", help="Of the price document.")] = False,
) -> None:
    """Print the JSON Schema of the dessert document, or of the kitchen or price document."""
    from entremetry.usecases.schema import schema_text

    if kitchen and price:
        raise typer.BadParameter("found --kitchen and --price; accepted: one of the two")
    typer.echo(schema_text("kitchen" if kitchen else "price" if price else "dessert"), nl=False)


@app.command()
def larder(
    words: Annotated[list[str], typer.Argument(help="An ingredient, by id, name or part of it.")],
    json: Json = False,
) -> None:
    """Look an ingredient up: what it is made of, what a cup of it weighs, whom it may harm."""
    from entremetry.cli.larder_view import as_json, as_text
    from entremetry.usecases.larder import look_up

    found = look_up(" ".join(words))
    typer.echo(as_json(found) if json else as_text(found))


@app.command()
def moulds(kitchen: KitchenFile = None, json: Json = False) -> None:
    """List the moulds to choose from, with what they hold."""
    from entremetry.cli.moulds_view import as_json, as_text
    from entremetry.usecases.batch import moulds as all_moulds

    text = None
    if kitchen is not None:
        from entremetry.store.files import read_text

        text = read_text(kitchen, what="kitchen document")
    found = all_moulds(text, file=str(kitchen))
    typer.echo(as_json(found) if json else as_text(found))


@app.command()
def temperatures(
    file: DessertFile,
    step: Annotated[
        str | None,
        typer.Option(help="The step, by its id; without it the steps are listed.", metavar="ID"),
    ] = None,
    kitchen: KitchenFile = None,
    svg: Annotated[
        Path | None, typer.Option(help="Also draw the curves into this file (SVG).", metavar="FILE")
    ] = None,
    png: Annotated[
        Path | None, typer.Option(help="Also draw the curves into this file (PNG).", metavar="FILE")
    ] = None,
    json: Json = False,
) -> None:
    """How long a step takes, and how warm it is where and when meanwhile."""
    from entremetry.cli.temperatures_view import as_json, as_png, as_svg, as_text, steps_text
    from entremetry.store.files import write_atomically
    from entremetry.usecases import temperatures as use_case

    if step is None:
        typer.echo(steps_text(use_case.timed_steps_of(file, kitchen=kitchen), str(file)), err=True)
        raise typer.Exit(EntremetryError.exit_status)
    result = use_case.temperatures(file, step=step, kitchen=kitchen)
    if svg is not None:
        write_atomically(svg, as_svg(result).encode())
    if png is not None:
        write_atomically(png, as_png(result))
    typer.echo(as_json(result) if json else as_text(result))


app.command()(plan)
app.command()(replan)
app.command()(rebalance)
app.command()(adapt)
app.command()(ask)


@app.command()
def serve(
    port: Annotated[
        int, typer.Option(min=0, max=65535, help="Port on this machine; 0 takes a free one.")
    ] = 8350,
    open_browser: Annotated[
        bool, typer.Option("--browser/--no-browser", help="Open the page in a browser.")
    ] = True,
) -> None:
    """Open the workbench on this machine."""
    from entremetry.web.serving import serve as serve_web

    serve_web(port=port, open_browser=open_browser)


def _pair(text: str | None) -> tuple[str, str] | None:
    return None if text is None else _required_pair(text)


def _required_pair(text: str) -> tuple[str, str]:
    name, equals, value = text.partition("=")
    if not (equals and name.strip() and value.strip()):
        raise typer.BadParameter(f"found '{text}'; accepted: NAME=VALUE")
    return name.strip(), value.strip()


def main() -> None:
    """Run the command line; every refusal is one message and an exit status."""
    try:
        app()
    except EntremetryError as error:
        typer.echo(str(error), err=True)
        sys.exit(error.exit_status)
    except OSError as error:
        _give_up_output()
        typer.echo(f"the answer cannot be written: {error.strerror or error}", err=True)
        sys.exit(EntremetryError.exit_status)


def _give_up_output() -> None:
    """Let nothing be written to an output that takes nothing, not even at the end."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
