"""A custard, syrup, ganache or glaze cooling in its bowl."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange, QuantityError
from entremetry.formula.density import liquid_density
from entremetry.formula.mix import Mix
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.method.cooking import CoolTo
from entremetry.physics import specific_enthalpy
from entremetry.physics.bowl import Bowl, Cooling, Liquid, Room, cool
from entremetry.quantities import format_celsius, format_length, format_mass
from entremetry.timings.bowl_content import bowl_content, mix_of, steps_before
from entremetry.timings.cause import with_cause
from entremetry.timings.component_food import activity_of_water, component_food
from entremetry.timings.place import place
from entremetry.timings.start import stated_temperature
from entremetry.timings.step_temperatures import Curve, StepTemperatures
from entremetry.timings.timed_step import TimedStep
from entremetry.words import quoted, say, say_later

DEPTH = 1.0 / 3.0  # a bowl is filled so many times as deep as it is wide, our_own
AIR_SIDE = 8.0  # W/(m2 K) outside a bowl in still air: convection and a little radiation, our_own
ICE_SIDE = 80.0  # W/(m2 K) from a thick liquid stirred now and then into ice water, our_own
ICE = 273.15
HOTTEST = 373.15  # K: what is hotter boils, and is there in moments
COLDEST_LIQUID = 255.15  # K
COLDEST_AIR = 255.15  # K, 2 K above what is known of vapour over water
LID, SURFACE = 0.3, 0.95  # emissivity of a shiny lid and of food, incropera_2007
SOURCES = ("incropera_2007", "choi_okos_1986", "our_own")
UNCERTAIN = (
    (say_later("how wide the bowl is"), {"width": 0.85}, {"width": 1.6}),
    (say_later("the air over it"), {"air": 0.7}, {"air": 1.3}),
    (say_later("the wall and the stirring"), {"wall": 0.6}, {"wall": 1.5}),
    (say_later("the room"), {"room": 2.0}, {"room": -2.0}),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Scene:
    """What cools in what; `width` in m. A dry liquid gives no water to the air."""

    liquid: Liquid
    dry: bool
    volume: float
    width: float
    step: CoolTo
    room: float
    humidity: float
    start: float


def cooling_answer(
    reckoning: Reckoning, timed: TimedStep, kitchen: KitchenDocument | None
) -> StepTemperatures:
    """How long the content of the bowl takes to cool.

    Raises
    ------
    QuantityError
        If the method does not say how hot it is before, or it is no liquid.
    """
    scene, assumptions = _scene(reckoning, timed, kitchen)
    best = _cooled(scene)
    low, high, mostly = _interval(scene, best) if best.reached else (None, None, "")
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=scene.step.temperature,
        time=float(best.times[-1]) if best.reached else None,
        low=low,
        high=high,
        reason=best.reason,
        mostly=mostly,
        because=with_cause(
            say("heat lost by the surface (air, radiation, evaporation) and the wall of the bowl"),
            mostly,
        ),
        sources=SOURCES,
        assumptions=assumptions,
        curves=(Curve(name=timed.name, times=best.times, temperatures=best.temperatures),),
        written_time=timed.step.time,
    )


def _scene(
    reckoning: Reckoning, timed: TimedStep, kitchen: KitchenDocument | None
) -> tuple[_Scene, tuple[str, ...]]:
    component, step = timed.component, timed.step
    if component is None or not isinstance(step, CoolTo):
        raise QuantityError(
            say("a step of no component"), say("a cool-to step in a component's method")
        )
    start = stated_temperature(steps_before(component, timed.number - 1))
    if step.temperature < COLDEST_LIQUID or step.temperature >= HOTTEST:
        raise QuantityError(
            quoted(timed.sentence),
            say(
                "a temperature to cool to from {low} to {high}: "
                "below, it is frozen rather than cooled",
                low=format_celsius(COLDEST_LIQUID),
                high=format_celsius(HOTTEST - 1.0),
            ),
        )
    if start is None:
        raise QuantityError(
            say("no temperature before '{step}'", step=timed.sentence),
            say("an earlier step that says how hot it is, such as cook-to or melt"),
        )
    if start <= step.temperature:
        raise QuantityError(
            say(
                "a start of {temperature} before '{step}'",
                temperature=format_celsius(start),
                step=timed.sentence,
            ),
            say("a temperature to cool to that lies below what the bowl has"),
        )
    there = place(step.where, None, kitchen)
    if there.temperature < COLDEST_AIR:
        raise QuantityError(
            say(
                "a bowl in the {place} at {temperature}",
                place=there.name,
                temperature=format_celsius(there.temperature),
            ),
            say(
                "air of {temperature} or warmer: colder, its edge freezes",
                temperature=format_celsius(COLDEST_AIR),
            ),
        )
    begin = min(start, HOTTEST)
    mix = mix_of(reckoning, component, bowl_content(component, timed.number - 1).all)
    volume = mix.mass / liquid_density(mix)
    liquid, dry = _liquid(mix, component.kind, begin, step.temperature)
    width = (4.0 * volume / (math.pi * DEPTH)) ** (1.0 / 3.0)
    scene = _Scene(
        liquid=liquid,
        dry=dry,
        volume=volume,
        width=width,
        step=step,
        room=there.temperature,
        humidity=there.humidity or 0.5,
        start=begin,
    )
    return scene, (*there.assumptions, _in_bowl(scene))


def _in_bowl(scene: _Scene) -> str:
    """What is taken for granted of the bowl."""
    where = (
        say_later(
            "{mass} starts at {start} in a metal bowl {width} wide, stirred now and then, in ice "
            "water."
        )
        if scene.step.ice_bath
        else say_later(
            "{mass} starts at {start} in a metal bowl {width} wide, stirred now and then."
        )
    )
    return say(
        where,
        mass=format_mass(scene.liquid.mass),
        start=format_celsius(scene.start),
        width=format_length(round(scene.width, 2)),
    )


def _liquid(mix: Mix, kind: str, start: float, end: float) -> tuple[Liquid, bool]:
    """A mix as a liquid that cools, and whether it is too dry to give water to the air."""
    parts = mix.constituents * (1.0 / mix.mass)
    try:
        activity, dry = activity_of_water(parts), False
    except OutsideRange:  # melted chocolate, a caramel: no water to speak of
        activity, dry = 0.0, True
    heats = specific_enthalpy(
        component_food(mix, kind, liquid_density(mix)), np.array([end, start])
    )
    liquid = Liquid(
        mass=mix.mass,
        heat_capacity=float(heats[1] - heats[0]) / (start - end),
        water_activity=activity,
        solids=mix.mass * (1.0 - parts.water - parts.alcohol),
    )
    return liquid, dry


def _cooled(scene: _Scene, **off: float) -> Cooling:
    """One run, with factors on width, air and wall, and a shift of the room. [K]"""
    width = scene.width * off.get("width", 1.0)
    depth = 4.0 * scene.volume / (math.pi * width**2)
    ice = scene.step.ice_bath
    bowl = Bowl(
        opening=math.pi / 4.0 * width**2,
        coefficient=5.0 * off.get("air", 1.0),
        lid=scene.step.covered or scene.dry,
        lid_emissivity=LID if scene.step.covered else SURFACE,
        wall=math.pi * width * depth + math.pi / 4.0 * width**2,
        wall_coefficient=(ICE_SIDE if ice else AIR_SIDE) * off.get("wall", 1.0),
        bath=ICE if ice else None,
    )
    room = Room(temperature=scene.room + off.get("room", 0.0), humidity=scene.humidity)
    return cool(scene.liquid, bowl, room, scene.start, scene.step.temperature)


def _interval(scene: _Scene, best: Cooling) -> tuple[float, float | None, str]:
    """Low and high time [s], None where it may never come, and what that comes from most."""
    slower = faster = widest = 0.0
    mostly, endless = "", False
    for name, *ends in UNCERTAIN:
        runs = [_cooled(scene, **end) for end in ends]
        found = [math.log(r.times[-1] / best.times[-1]) for r in runs if r.reached]
        endless = endless or not all(run.reached for run in runs)
        slower += max([0.0, *found]) ** 2
        faster += min([0.0, *found]) ** 2
        spread = max(found, default=0.0) - min(found, default=0.0)
        if spread > widest:
            widest, mostly = spread, name
    time = float(best.times[-1])
    high = None if endless else time * math.exp(math.sqrt(slower))
    return time * math.exp(-math.sqrt(faster)), high, say(mostly) if mostly else ""
