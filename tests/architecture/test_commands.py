"""Every command explains itself and stands in the documentation."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import typer

from entremetry.cli.app import app

DOCS = Path(__file__).parents[2] / "docs"
GROUP: Any = typer.main.get_command(app)
SHOWN = sorted(name for name, command in GROUP.commands.items() if not command.hidden)
PROMISED = {"batch", "publish", "schema", "serve"}


def test_the_promised_commands_are_there() -> None:
    assert set(SHOWN) >= PROMISED


@pytest.mark.parametrize("name", SHOWN)
def test_a_command_and_all_it_takes_say_what_they_are_for(name: str) -> None:
    command = GROUP.commands[name]
    assert command.help
    silent = [p.name for p in command.params if not getattr(p, "help", None)]
    assert not silent


@pytest.mark.parametrize("name", SHOWN)
def test_a_command_stands_in_the_reference(name: str) -> None:
    assert f"\n## {name}\n" in (DOCS / "reference" / "cli.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", SHOWN)
def test_option_names_are_words_joined_by_hyphens(name: str) -> None:
    for parameter in GROUP.commands[name].params:
        for option in parameter.opts if parameter.param_type_name == "option" else []:
            assert option == option.lower() and "_" not in option
