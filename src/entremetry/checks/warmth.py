"""How warm each bowl of a method is, step by step, as far as the steps tell."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from entremetry.method.cooking import CoolTo, Heated, Simmer, Whip
from entremetry.method.portion import Portion
from entremetry.method.route import Stop, route
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, Hold, Rest

ROOM = 293.15  # K
COLD_CREAM = 279.15  # K, out of the fridge: common_practice
SIMMERING = 368.15  # K: common_practice
WHIPPED = 308.15  # K, lukewarm: hot meringue and yolks are whipped until then, common_practice
WATER_HEAT, SOLIDS_HEAT = 4180.0, 1600.0  # J/(kg K), rough: from_memory


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """One step: what is in its bowl and how warm that is when it begins and when it is done. [K]

    `before` is that of what was in the bowl already, None if it was empty; `warmest` the highest
    on the way, as when something hot is poured in; `entering` are the lines that come in now.
    """

    step: AnyStep
    inside: tuple[str, ...]
    entering: tuple[str, ...]
    before: float | None
    after: float
    warmest: float


@dataclass(slots=True)
class _Content:
    heat: float
    temperature: float
    names: tuple[str, ...]


def moments(
    lines: Mapping[str, Portion], steps: Sequence[AnyStep], component: str
) -> tuple[Moment, ...]:
    """Follow the heat through a method; what meets is mixed by its heat capacity.

    Good to some kelvin: bowls take no heat, and nothing cools that no step cools.
    """
    bowls: dict[str, _Content] = {}
    found = []
    for step, stop in zip(
        steps, route(tuple(lines), steps, component=component).stops, strict=True
    ):
        already = bowls.get(stop.bowl)
        before = already.temperature if already else None
        mixed = _met([*_joined(bowls, stop), *(_line(n, lines[n]) for n in stop.lines)])
        met = mixed.temperature
        mixed.temperature = _after(step, met)
        bowls[stop.bowl] = mixed
        entering = tuple(n for n in mixed.names if already is None or n not in already.names)
        found.append(
            Moment(
                step=step,
                inside=mixed.names,
                entering=tuple(dict.fromkeys((*entering, *stop.soaked))),
                before=before,
                after=mixed.temperature,
                warmest=max(met, mixed.temperature),
            )
        )
    return tuple(found)


def _joined(bowls: dict[str, _Content], stop: Stop) -> Iterable[_Content]:
    names = [name for name in (stop.bowl, *stop.bowls) if name in bowls]
    return [bowls.pop(name) for name in names]


def _line(name: str, portion: Portion) -> _Content:
    water = portion.constituents.water
    heat = water * WATER_HEAT + max(portion.mass - water, 0.0) * SOLIDS_HEAT
    cold = {"whippable", "dairy"} <= portion.tags
    return _Content(heat, COLD_CREAM if cold else ROOM, (name,))


def _met(contents: Sequence[_Content]) -> _Content:
    heat = sum(each.heat for each in contents)
    names = tuple(dict.fromkeys(name for each in contents for name in each.names))
    if heat <= 0.0:
        return _Content(0.0, ROOM, names)
    temperature = sum(each.heat * each.temperature for each in contents) / heat
    return _Content(heat, temperature, names)


def _after(step: AnyStep, temperature: float) -> float:
    match step:
        case Simmer():
            return step.temperature or SIMMERING
        case Heated() if step.temperature is not None:
            return step.temperature
        case CoolTo():
            return step.temperature
        case Rest() | Hold() | FreezeUntil() if step.temperature is not None:
            return step.temperature
        case Bake():
            return ROOM
        case Whip():
            return min(temperature, WHIPPED)
    return temperature
