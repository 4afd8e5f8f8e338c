"""What a sentence about a step has to tell, before any language puts it into words."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """The parts of a sentence that do not depend on language.

    `entering` are the printed names of what enters, `soaked` of what waits soaked in the bowl,
    `removed` of what is strained out; `adds` tells that the bowl holds something else already;
    `factor` scales every mass; `oven_fan` is the oven of the reader, None for the one the author
    wrote for; `water` [kg] is for soaking; `into` is what is filled: mould,
    moulds, glasses or vessels.
    """

    entering: tuple[str, ...] = ()
    soaked: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    adds: bool = False
    factor: float = 1.0
    oven_fan: bool | None = None
    water: float | None = None
    into: str = "mould"
