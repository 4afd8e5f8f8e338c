"""The highest temperature that each line of a formula is stated to reach."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.method.cooking import Heated, Simmer
from entremetry.method.route import route
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep

KITCHEN = 293.15  # K, before anything is heated
SIMMERING = 368.15  # K, just below the boil: common_practice
BAKED_THROUGH = 363.15  # K, centre of a biscuit or sponge that is done: from_memory


def peaks(lines: Sequence[str], steps: Sequence[AnyStep], *, component: str) -> dict[str, float]:
    """Highest stated temperature of each line [K]; what is poured onto it hot does not count.

    Raises
    ------
    DocumentError
        With every name that is unknown, used twice or never joined.
    """
    highest = dict.fromkeys(lines, KITCHEN)
    contents: dict[str, set[str]] = {}
    way = route(lines, steps, component=component)
    for step, stop in zip(steps, way.stops, strict=True):
        inside = contents.setdefault(stop.bowl, set())
        inside.update(stop.lines)
        for name in stop.bowls:
            inside.update(contents.pop(name, set()))
        for line in inside:
            highest[line] = max(highest[line], reached(step))
    return highest


def reached(step: AnyStep) -> float:
    """Temperature that the step brings everything in its bowl to. [K]"""
    match step:
        case Simmer():
            return step.temperature or SIMMERING
        case Heated():
            return step.temperature or KITCHEN
        case Bake():
            return min(step.at, BAKED_THROUGH)
    return KITCHEN
