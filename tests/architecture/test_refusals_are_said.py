"""What a refusal tells is said: no words of it stand in the code as they are."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import TypeGuard

import pytest

import entremetry
from entremetry import errors

SOURCE = Path(entremetry.__file__).parent
ROOMS = (
    "adapt",
    "agenda",
    "dessert",
    "documents",
    "formula",
    "kitchen",
    "labels",
    "larder",
    "method",
    "publish",
    "quantities",
    "questions",
    "shapes",
    "store",
    "timings",
    "usecases",
)
"""Rooms whose refusals a person meets; `physics` and `planning` refuse what we made ourselves."""
OWN_COMPUTING = {"publish/temperature_section.py", "timings/second_opinion.py"}
"""Refusals that are met by the code around them and never told."""
REFUSING = {"Fault", "ValueError"} | {
    name
    for name, each in vars(errors).items()
    if isinstance(each, type) and issubclass(each, errors.EntremetryError)
}
TOLD = {"found", "accepted", "told"}
WORD = re.compile(r"[^\W\d_]{3,}")


def name_of(call: ast.Call) -> str:
    """Last name of what is called."""
    return getattr(call.func, "attr", getattr(call.func, "id", ""))


def bare(node: ast.AST) -> Iterator[str]:
    """Yield the words that stand in an expression without being said."""
    if isinstance(node, ast.Call) and name_of(node) != "join":
        return
    if isinstance(node, ast.Constant):
        if isinstance(node.value, str) and WORD.search(node.value) and "--" not in node.value:
            yield node.value
        return
    if isinstance(node, ast.Subscript | ast.Compare):
        return
    if isinstance(node, ast.FormattedValue):
        yield from bare(node.value)
        return
    for child in ast.iter_child_nodes(node):
        yield from bare(child)


def unsaid(tree: ast.AST) -> Iterator[str]:
    """Yield the bare words of all that a module refuses."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and name_of(node) in REFUSING - {"UnknownName"}:
            for told in (*node.args, *(k.value for k in node.keywords if k.arg in TOLD)):
                yield from bare(told)
        elif _names_what_is_told(node):
            yield from bare(node.value)


def _names_what_is_told(node: ast.AST) -> TypeGuard[ast.Assign]:
    """Whether a line gives a name to what a refusal will tell."""
    return (
        isinstance(node, ast.Assign)
        and getattr(node.targets[0], "id", "") in TOLD
        and not isinstance(node.value, ast.Dict)
    )


def things(tree: ast.AST) -> Iterator[str]:
    """Yield what unknown names are names of, where it stands in the call."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and name_of(node) in {"UnknownName", "require_known"}:
            first = node.args[0]
            yield from (
                each.value
                for each in ast.walk(first)
                if isinstance(each, ast.Constant) and isinstance(each.value, str)
            )


@pytest.mark.parametrize("room", ROOMS)
def test_every_word_of_a_refusal_is_said(room: str) -> None:
    found = {
        str(path.relative_to(SOURCE)): list(unsaid(ast.parse(path.read_text(encoding="utf-8"))))
        for path in sorted((SOURCE / room).rglob("*.py"))
    }
    assert {
        name: words for name, words in found.items() if words and name not in OWN_COMPUTING
    } == {}


@pytest.mark.parametrize("room", [*ROOMS, "checks", "sources", "web", "cli"])
def test_every_kind_of_unknown_name_can_be_said(room: str) -> None:
    paths = sorted((SOURCE / room).rglob("*.py"))
    named = {each for path in paths for each in things(ast.parse(path.read_text(encoding="utf-8")))}
    assert named <= set(errors.THINGS)


def test_words_that_are_not_said_would_be_found() -> None:
    tree = ast.parse("raise QuantityError(f\"'{x}', a range\", say('one number'))")
    assert list(unsaid(tree)) == ["', a range"]
