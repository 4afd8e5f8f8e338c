"""Boiling down: how long it takes on one ring of the hob, and what is left."""

from __future__ import annotations

from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import OutsideRange, QuantityError
from entremetry.method.cooking import Heated
from entremetry.physics.reduction import reduce
from entremetry.timings.bowl_content import bowl_content, mix_of
from entremetry.timings.start import HELD_AT, stated_temperature
from entremetry.timings.step_temperatures import Fact, StepTemperatures
from entremetry.timings.timed_step import TimedStep

NET_POWER = 800.0  # W into the pan from a ring at medium heat, our_own
POWERS = (500.0, 1300.0)
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
    times = [_time(before, gone, power, timed) for power in (NET_POWER, *POWERS)]
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=None,
        time=times[0],
        low=times[2],
        high=times[1],
        reason="",
        mostly="how strong the ring is",
        because="heat of the ring into warming and into boiling water away, 2257 kJ a kilogram",
        sources=SOURCES,
        assumptions=(
            f"{NET_POWER:.0f} W reach the pan; {POWERS[0]:.0f} to {POWERS[1]:.0f} W are tried.",
        ),
        curves=(),
        marks=(),
        field=None,
        balance_error=0.0,
        written_time=timed.step.time,
        facts=(
            Fact(name="water to boil away", value=gone * 1e3, unit="g"),
            Fact(name="left in the pan", value=(before - gone) * 1e3, unit="g"),
        ),
    )


def _water(reckoning: Reckoning, timed: TimedStep) -> tuple[float, float]:
    """Water that the step boils away and what was in the pan before, for this batch. [kg]"""
    component = timed.component
    if component is None:
        raise QuantityError("a simmer in the assembly", "a simmer in a component's method")
    made = reckoning.makings[component.id]
    label = timed.step.id or f"step {timed.number}, {timed.step.step}"
    lost = [c for c in made.changes if c.step == label and c.mass < 0.0 and "water" in c.reason]
    if not lost:
        raise QuantityError(
            f"nothing boils away in '{timed.sentence}'",
            "a step with evaporates, to_mass or to_brix",
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
        raise QuantityError(f"'{timed.sentence}'", str(error)) from error
    return done.time
