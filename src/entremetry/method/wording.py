"""A method as sentences, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from entremetry.method.clause import told
from entremetry.method.cooking import Soak, Strain
from entremetry.method.route import Stop, route
from entremetry.method.step import AnyStep
from entremetry.method.telling import Telling


def sentence(
    step: AnyStep,
    *,
    names: Mapping[str, str],
    factor: float = 1.0,
    oven_fan: bool | None = None,
    into: str = "mould",
) -> str:
    """One step on its own; `names` are the printed names of lines and bowls, `into` is filled."""
    stop = Stop(bowl="", lines=step.what, adds=step.step == "fold" and len(step.what) == 1)
    return told(step, replace(_telling(step, stop, names, factor, oven_fan, {}), into=into))


def sentences(
    lines: Sequence[str],
    steps: Sequence[AnyStep],
    *,
    component: str,
    names: Mapping[str, str],
    factor: float = 1.0,
    oven_fan: bool | None = None,
    soaking_water: Mapping[str, float] | None = None,
) -> tuple[str, ...]:
    """All steps of a component, with the lines that no step names at the step they enter.

    `soaking_water` [kg] of each line, before scaling, is told where the method states none.

    Raises
    ------
    DocumentError
        With every name that is unknown, used twice or never joined.
    """
    stops = route(lines, steps, component=component).stops
    water = soaking_water or {}
    return tuple(
        told(step, _telling(step, stop, names, factor, oven_fan, water))
        for step, stop in zip(steps, stops, strict=True)
    )


def _telling(
    step: AnyStep,
    stop: Stop,
    names: Mapping[str, str],
    factor: float,
    oven_fan: bool | None,
    soaking_water: Mapping[str, float],
) -> Telling:
    water = sum(soaking_water.get(name, 0.0) for name in step.what) * factor
    return Telling(
        entering=tuple(_printed(name, names) for name in (*stop.lines, *stop.bowls)),
        soaked=tuple(_printed(name, names) for name in stop.soaked),
        removed=tuple(_printed(n, names) for n in step.removes) if isinstance(step, Strain) else (),
        adds=stop.adds,
        factor=factor,
        oven_fan=oven_fan,
        water=water if isinstance(step, Soak) else None,
    )


def _printed(name: str, names: Mapping[str, str]) -> str:
    return names.get(name, name.replace("-", " "))
