"""The steps of a method as they stand once some of what they name is gone."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from entremetry.method.work import MAIN

ONLY_ADDS = frozenset({"weigh", "soak", "mix", "fold", "place"})
"""Steps that are there for what they add: without it nothing is left to do."""

Written = Mapping[str, Any]


def steps_without(
    steps: Sequence[Written], gone: Collection[str], *, lines: Collection[str]
) -> tuple[Written | None, ...]:
    """Each step as it is written without what is gone; None if nothing is left to do in it.

    A bowl that nothing gets into any more is gone as well, with the steps in it. `lines` are all
    lines of the formula before.
    """
    missing = set(gone)
    filled = {MAIN} if set(lines) - _named(steps) - missing else set()
    left: list[Written | None] = []
    for number, step in enumerate(steps):
        bowl = _bowl(steps, number, lines)
        kept = _kept(step, missing, bowl in filled)
        left.append(kept)
        if kept is not None:
            filled.add(bowl)
        elif bowl not in filled and bowl != MAIN:
            missing.add(bowl)
    return tuple(left)


def _kept(step: Written, missing: Collection[str], filled: bool) -> Written | None:
    there = tuple(step.get("what") or ())
    what = [name for name in there if name not in missing]
    if not what and (not filled or (there and step["step"] in ONLY_ADDS)):
        return None
    removes = [name for name in step.get("removes") or () if name not in missing]
    named = {"what": what, "removes": removes}
    return {
        key: named.get(key, value) for key, value in step.items() if key not in named or named[key]
    }


def _bowl(steps: Sequence[Written], number: int, lines: Collection[str]) -> str:
    """The bowl a step works in: its own, that of the single line it sets aside, or the main one."""
    step = steps[number]
    if step.get("bowl"):
        return str(step["bowl"])
    what = _named([step])
    if len(what) == 1 and what <= set(lines):
        name = next(iter(what))
        if name in _named(steps[number + 1 :]) - _named(steps[:number]):
            return name
    return MAIN


def _named(steps: Sequence[Written]) -> set[str]:
    return {str(name) for step in steps for name in step.get("what") or ()}
