"""The reference page of the command line, made from the commands themselves."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import typer

from entremetry.cli.app import app

HEAD = """\
# Commands

<!-- Written by tools/reference from the program; change the program, then run `make fix`. -->

Every command that computes takes `--json` and then prints exactly one JSON object on standard
output, with the unit as the last word of each key; progress and warnings go to standard error.
Exit status: 0 done, 2 bad input or usage, with one message that says what to mend.
"""


def command_page() -> str:
    """Text of the page."""
    group: Any = typer.main.get_command(app)
    parts = [HEAD]
    for name, command in sorted(group.commands.items()):
        if not command.hidden:
            parts.append("\n".join(lines_of(name, command)))
    return "\n".join(parts)


def lines_of(name: str, command: Any) -> Iterator[str]:
    """Yield the section of one command."""
    shown = [p for p in command.params if not getattr(p, "hidden", False)]
    arguments = [p for p in shown if p.param_type_name == "argument"]
    options = [p for p in shown if p.param_type_name == "option" and p.name != "help"]
    usage = " ".join(
        ["entremetry", name, *("[OPTIONS]" if options else "",), *map(metavar, arguments)]
    )
    yield f"## {name}\n"
    yield f"{paragraphs(command.help)}\n"
    yield f"```text\n{' '.join(usage.split())}\n```\n"
    if shown:
        yield "| argument or option | meaning |"
        yield "|---|---|"
        yield from map(row, [*arguments, *options])
        yield ""


def metavar(argument: Any) -> str:
    """An argument as the usage line shows it."""
    text = (argument.metavar or argument.name).upper() + ("..." if argument.nargs != 1 else "")
    return text if argument.required else f"[{text}]"


def row(parameter: Any) -> str:
    """One row of the table of a command."""
    is_argument = parameter.param_type_name == "argument"
    names = [metavar(parameter)] if is_argument else [*parameter.opts, *parameter.secondary_opts]
    shown = ", ".join(f"`{name}{value_of(parameter)}`" for name in names)
    default = parameter.default
    told = (
        default is not None
        and default != ""
        and not callable(default)
        and not isinstance(default, bool)
    )
    after = f" Default: `{default}`." if told and not is_argument else ""
    return f"| {shown} | {one_line(parameter.help)}{after} |"


def value_of(parameter: Any) -> str:
    """What stands for the value of an option; nothing for a switch or an argument."""
    if parameter.param_type_name == "argument" or parameter.is_flag:
        return ""
    return f" {parameter.metavar or parameter.name.upper()}"


def one_line(text: str | None) -> str:
    """A help text without line ends, safe in a table."""
    return " ".join((text or "").split()).replace("|", "\\|")


def paragraphs(text: str | None) -> str:
    """A help text with its paragraphs kept, as Markdown."""
    return "\n\n".join(
        " ".join(part.split()) for part in (text or "").split("\n\n") if part.strip()
    )
