"""Boiling down: how long it takes on one ring of the hob, and what is left."""

from __future__ import annotations

import math

from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange, QuantityError
from entremetry.method.cooking import Heated
from entremetry.method.step_names import step_name
from entremetry.physics.reduction import reduce
from entremetry.quantities import format_length
from entremetry.timings.bowl_content import bowl_content, mix_of
from entremetry.timings.start import HELD_AT, stated_temperature
from entremetry.timings.step_temperatures import Fact, StepTemperatures
from entremetry.timings.timed_step import TimedStep
from entremetry.words import quoted, say

MEDIUM = (31e3, 20e3, 51e3)  # W/m2 into a pan at medium heat: best, least, most, our_own
GENTLE = (10e3, 6e3, 18e3)  # W/m2 under eggs and milk, which are not let boil, our_own
GENTLE_UP_TO = 363.15  # K
LEAST_PAN = 0.14  # m, the smallest pan of a kitchen, our_own
LIQUID = 1050.0  # kg/m3, a quarter as deep in its pan as it is wide
BOILING = 373.15  # K
HEAT = 3600.0  # J/(kg K), a watery fruit base, choi_okos_1986
SOURCES = ("incropera_2007", "our_own")


def boiling_answer(reckoning: Reckoning, timed: TimedStep) -> StepTemperatures:
    """Time to heat up and to boil away what the step says.

    Raises
    ------
    QuantityError
        If nothing boils away at the step, so that there is no time to compute.
    """
    gone, before = _water(reckoning, timed)
    width = max(LEAST_PAN, (16.0 * before / LIQUID / math.pi) ** (1.0 / 3.0))
    powers = [math.pi / 4.0 * width**2 * flux for flux in _fluxes(timed)]
    best, slow, fast = (_time(before, gone, power, timed) for power in powers)
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=None,
        time=best,
        low=fast,
        high=slow,
        reason="",
        mostly="how strong the ring is",
        because="heat of the ring into warming and into boiling water away, 2257 kJ a kilogram",
        sources=SOURCES,
        assumptions=(
            f"In a pan {format_length(round(width, 2))} wide; about {_watts(powers[0])} reach what "
            f"is in it, and {_watts(powers[1])} to {_watts(powers[2])} are tried.",
        ),
        written_time=timed.step.time,
        facts=(
            Fact(name="water to boil away", value=gone * 1e3, unit="g"),
            Fact(name="left in the pan", value=(before - gone) * 1e3, unit="g"),
        ),
    )


def _fluxes(timed: TimedStep) -> tuple[float, float, float]:
    step = timed.step
    stated = step.temperature if isinstance(step, Heated) else None
    return GENTLE if stated is not None and stated < GENTLE_UP_TO else MEDIUM


def _watts(power: float) -> str:
    return f"{round(power, -1):.0f} W"


def _water(reckoning: Reckoning, timed: TimedStep) -> tuple[float, float]:
    """Water that the step boils away and what was in the pan before, for this batch. [kg]"""
    component = timed.component
    if component is None:
        raise QuantityError(
            say("a simmer in the assembly"), say("a simmer in a component's method")
        )
    made = reckoning.makings[component.id]
    label, boiled_off = step_name(timed.step, timed.number), say("water boiled off")
    lost = [c for c in made.changes if c.step == label and c.reason == boiled_off]
    if not lost:
        raise QuantityError(
            say("nothing boils away in '{step}'", step=timed.sentence),
            say("a step with evaporates, to_mass or to_brix"),
        )
    pieces = reckoning.dessert.document.pieces
    factor = reckoning.requirements(pieces)[component.id].factor
    content = bowl_content(component, timed.number - 1)
    return -lost[0].mass * factor, mix_of(reckoning, component, content.all).mass


def _time(before: float, gone: float, power: float, timed: TimedStep) -> float:
    component, step = timed.component, timed.step
    start = stated_temperature(component.steps[: timed.number - 1]) if component else None
    end = step.temperature if isinstance(step, Heated) and step.temperature else BOILING
    try:
        done = reduce(
            before,
            before - gone,
            power,
            start=min(start or HELD_AT, end),
            boiling_point=end,
            heat_capacity=HEAT,
        )
    except OutsideRange as error:
        raise QuantityError(quoted(timed.sentence), str(error)) from error
    return done.time
