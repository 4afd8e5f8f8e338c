"""The commands `plan` and `replan`."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from entremetry.cli.options import Json, KitchenFile, LanguageCode

if TYPE_CHECKING:
    from entremetry.usecases.plans import Planned

NO_PLAN = 1
Seconds = Annotated[
    float | None,
    typer.Option(
        min=0.1, help="How long to look for a better plan at most.", metavar="N", show_default=False
    ),
]
Svg = Annotated[Path | None, typer.Option(help="Also draw the days (SVG).", metavar="FILE")]
CalendarFile = Annotated[
    Path | None,
    typer.Option("--calendar", help="Also write it for a calendar program (.ics).", metavar="FILE"),
]
Sheet = Annotated[
    Path | None,
    typer.Option(help="Also write the day sheet, to print and tick off (HTML).", metavar="FILE"),
]
Keep = Annotated[
    Path | None,
    typer.Option(help="Also keep the plan itself, for 'replan' (JSON).", metavar="FILE"),
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Files to write beside the answer."""

    svg: Path | None
    calendar: Path | None
    sheet: Path | None
    keep: Path | None


def plan(
    files: Annotated[
        list[Path], typer.Argument(help="Dessert documents (YAML).", metavar="FILE...")
    ],
    serve: Annotated[
        list[str],
        typer.Option(
            help="When all is served, by the kitchen's clock: '2026-11-28 19:00'; "
            "one dessert at an hour of its own: 'pear-dome=2026-11-28 20:30'.",
            metavar="[ID=]WHEN",
        ),
    ],
    kitchen: KitchenFile = None,
    pieces: Annotated[
        list[str] | None,
        typer.Option(help="How many pieces: 'pear-dome=12', or of each: '8'.", metavar="[ID=]N"),
    ] = None,
    begin: Annotated[
        str | None, typer.Option(help="Nothing begins before.", metavar="WHEN")
    ] = None,
    language: LanguageCode = "en",
    seconds: Seconds = None,
    svg: Svg = None,
    calendar: CalendarFile = None,
    sheet: Sheet = None,
    keep: Keep = None,
    json: Json = False,
) -> None:
    """Who does what when, over days, to the hour of service; 1 if no plan exists."""
    from entremetry.cli.plan_asking import courses
    from entremetry.cli.plan_progress import planned
    from entremetry.store.files import read_text
    from entremetry.usecases.plans import plan_menu

    menu, hour = courses(files, serve, pieces or [])
    kitchen_text = None if kitchen is None else read_text(kitchen, what="kitchen document")
    found = planned(
        lambda limits: plan_menu(
            menu,
            serve=hour,
            kitchen_text=kitchen_text,
            begin=begin,
            limits=limits,
            language=language,
        ),
        seconds=seconds,
    )
    _hand_out(found, Wanted(svg=svg, calendar=calendar, sheet=sheet, keep=keep), json=json)


def replan(
    kept: Annotated[
        Path, typer.Argument(help="A plan kept with 'plan --keep'.", metavar="KEPT.json")
    ],
    now: Annotated[
        str | None,
        typer.Option(help="The hour it is; without it, this machine's.", metavar="WHEN"),
    ] = None,
    done: Annotated[
        list[str] | None,
        typer.Option(help="A task that is done, as planned or at an hour.", metavar="ID[=WHEN]"),
    ] = None,
    begun: Annotated[
        list[str] | None,
        typer.Option(help="A task that is under way, and since when.", metavar="ID[=WHEN]"),
    ] = None,
    left: Annotated[
        list[str] | None, typer.Option(help="A task that is not begun.", metavar="ID")
    ] = None,
    takes: Annotated[
        list[str] | None,
        typer.Option(help="A task takes so many minutes from start to end.", metavar="ID=MIN"),
    ] = None,
    again: Annotated[
        list[str] | None,
        typer.Option(help="A task failed: make it anew, and what led to it.", metavar="ID"),
    ] = None,
    not_before: Annotated[
        str | None, typer.Option(help="The cook is back at the bench then.", metavar="WHEN")
    ] = None,
    as_planned: Annotated[
        bool | None,
        typer.Option(
            "--as-planned/--not-begun",
            help="What holds for tasks planned before now of which nothing is told.",
            show_default=False,
        ),
    ] = None,
    seconds: Seconds = None,
    svg: Svg = None,
    calendar: CalendarFile = None,
    sheet: Sheet = None,
    keep: Keep = None,
    json: Json = False,
) -> None:
    """Plan the rest anew when life has come between; what is done stays, little moves."""
    from entremetry.cli.plan_progress import planned
    from entremetry.cli.replan_telling import Told, record_of
    from entremetry.store.files import read_text
    from entremetry.usecases.plans import planned_anew, planned_from

    before = planned_from(read_text(kept, what="kept plan"))
    told = Told(
        now=now,
        done=done or (),
        begun=begun or (),
        left=left or (),
        takes=takes or (),
        again=again or (),
        not_before=not_before,
        as_planned=as_planned,
    )
    record = record_of(before.agenda, told)
    found = planned(lambda limits: planned_anew(before, record, limits=limits), seconds=seconds)
    _hand_out(found, Wanted(svg=svg, calendar=calendar, sheet=sheet, keep=keep), json=json)


def _hand_out(found: Planned, wanted: Wanted, *, json: bool) -> None:
    """Print the plan and write its files; say why there is none, or none that keeps everything."""
    from shutil import get_terminal_size

    from entremetry.cli.plan_view import USUAL_WIDTH, as_text, refusal_text
    from entremetry.publish.agenda_json import as_json

    agenda = found.agenda
    if agenda.tasks:
        _write(found, wanted)
    if json:
        typer.echo(as_json(agenda))
    elif agenda.tasks:
        typer.echo(as_text(agenda, width=min(get_terminal_size().columns, USUAL_WIDTH)))
    if not agenda.feasible:
        typer.echo(refusal_text(agenda), err=True)
        raise typer.Exit(NO_PLAN)


def _write(found: Planned, wanted: Wanted) -> None:
    from datetime import UTC, datetime

    from entremetry.publish.agenda_calendar import calendar
    from entremetry.publish.agenda_drawing import agenda_svg
    from entremetry.publish.agenda_sheet import day_sheet
    from entremetry.publish.agenda_wording import menu
    from entremetry.store.files import write_atomically
    from entremetry.usecases.plans import planned_text
    from entremetry.words import say, speaking

    agenda = found.agenda
    with speaking(found.language):
        if wanted.svg is not None:
            title = say("Plan for {menu}", menu=menu(agenda))
            drawing = agenda_svg(agenda, title=title, standalone=True)
            write_atomically(wanted.svg, drawing.encode())
        if wanted.calendar is not None:
            write_atomically(wanted.calendar, calendar(agenda, stamp=datetime.now(UTC)))
        if wanted.sheet is not None:
            write_atomically(wanted.sheet, day_sheet(agenda).encode())
    if wanted.keep is not None:
        write_atomically(wanted.keep, planned_text(found).encode())
