"""The commands that change a formula: `rebalance` and `adapt`."""

from __future__ import annotations

from typing import Annotated

import typer

from entremetry.cli.options import DessertFile, Json, KitchenFile, MouldId, Pieces
from entremetry.errors import EntremetryError

Swaps = Annotated[
    list[str] | None,
    typer.Option("--swap", help="Another ingredient, or several: 'A=B', 'A=B+C'.", metavar="A=B"),
]
BloomRuleName = Annotated[
    str,
    typer.Option(help="How gelatines are compared: linear or square-root.", metavar="RULE"),
]


def rebalance(
    file: DessertFile,
    component: Annotated[str, typer.Option(help="The component, by its id.", metavar="ID")],
    target: Annotated[
        list[str] | None,
        typer.Option(
            help="What shall hold: 'fat=30 %', 'sugars=-20 %', 'brix=28..32'.", metavar="NAME=VALUE"
        ),
    ] = None,
    keep: Annotated[
        list[str] | None,
        typer.Option(help="A measure that must stay as it is.", metavar="NAME"),
    ] = None,
    pin: Annotated[
        list[str] | None, typer.Option(help="A line that must stay as it is.", metavar="LINE")
    ] = None,
    bound: Annotated[
        list[str] | None,
        typer.Option(
            help="Ends for a line: 'cream-35=250..400 g'; one may be left out.",
            metavar="LINE=LOW..HIGH",
        ),
    ] = None,
    swap: Swaps = None,
    bloom_rule: BloomRuleName = "linear",
    kitchen: KitchenFile = None,
    json: Json = False,
) -> None:
    """Change a formula as little as its targets need, or say why no formula can meet them."""
    from entremetry.cli.asked import asked
    from entremetry.cli.rebalance_view import as_json, as_text, conflict_text
    from entremetry.usecases.rebalancing import rebalance as rebalance_component

    wanted = asked(
        component,
        targets=target or [],
        keeps=keep or [],
        pins=pin or [],
        bounds=bound or [],
        swaps=swap or [],
        rule=bloom_rule,
    )
    result = rebalance_component(file, wanted, kitchen=kitchen)
    if json or result.feasible:
        typer.echo(as_json(result) if json else as_text(result))
    if not result.feasible:
        typer.echo(conflict_text(result), err=True)
        raise typer.Exit(EntremetryError.exit_status)


def adapt(
    file: DessertFile,
    mould: MouldId = None,
    vessel: Annotated[
        str | None, typer.Option(help="A glass or dish, served as it is filled.", metavar="ID")
    ] = None,
    pieces: Pieces = None,
    swap: Swaps = None,
    bloom_rule: BloomRuleName = "linear",
    kitchen: KitchenFile = None,
    json: Json = False,
) -> None:
    """Write a new document for another mould, vessel, number of pieces, or other ingredients."""
    from entremetry.cli.asked import bloom_rule as rule_named
    from entremetry.cli.asked import swaps
    from entremetry.cli.rebalance_view import adapted_as_json, changes_text
    from entremetry.usecases.adapting import Adaptation
    from entremetry.usecases.adapting import adapt as adapt_to

    asked = Adaptation(
        mould=mould,
        vessel=vessel,
        pieces=pieces,
        swaps=swaps(swap or ()),
        rule=rule_named(bloom_rule),
    )
    result = adapt_to(file, asked, kitchen=kitchen)
    typer.echo(adapted_as_json(result) if json else result.text, nl=json)
    typer.echo(changes_text(result), err=True)
