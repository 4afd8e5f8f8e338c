"""Checks of the order of work: soaked before, frozen before, cold enough to glaze."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount
from entremetry.method.cooking import Soak
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, GlazeAt
from entremetry.timings.start import ready_temperature
from entremetry.words import say, say_later

CONCERN = "order"
USUAL_SOAK = 600.0  # s, if the step states no time
ROOM = 293.15  # K
UNTOLD = Band(unit="°C", high=-10.0)  # where no step freezes it, that may only be left unsaid


def _soak_time(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for name, line in each.lines.items():
            if not line.is_gelatine or not each.steps or line.constituents.water > 0.5 * line.mass:
                continue
            value = _soaked(each, name) / 60.0
            yield Finding(
                component=each.id,
                value=value,
                fact=say("The gelatine soaks for {amount}", amount=amount(value, "min")),
            )


def _soaked(each: BenchComponent, name: str) -> float:
    soaks = [step for step in each.steps if isinstance(step, Soak) and name in step.what]
    return sum(USUAL_SOAK if step.time is None else step.time for step in soaks)


def _insert_frozen(bench: Bench) -> Iterator[Finding]:
    if not bench.is_frozen:
        return
    for placed in bench.inserts:
        each = bench.by_id[placed.component]
        if each.is_baked or not each.steps:
            continue
        value = ready_temperature(each.steps)[0] - 273.15
        freezes = any(isinstance(step, FreezeUntil) for step in each.steps)
        yield Finding(
            component=each.id,
            value=value,
            fact=say("It is at {amount} when it is laid in", amount=amount(value, "°C")),
            band=None if freezes else UNTOLD,
        )


def _glazed_cold(bench: Bench) -> Iterator[Finding]:
    for number, step in enumerate(bench.assembly):
        if isinstance(step, GlazeAt):
            value = _last_frozen(bench.assembly[:number]) - 273.15
            yield Finding(
                component=DESSERT,
                value=value,
                error=1.0,
                fact=say("Its heart is at {amount} when it is glazed", amount=amount(value, "°C")),
            )


def _last_frozen(steps: Sequence[AnyStep]) -> float:
    for step in reversed(steps):
        if isinstance(step, FreezeUntil):
            return step.temperature or 255.15
        temperature = getattr(step, "temperature", None)
        if temperature is not None:
            return float(temperature)
    return ROOM


RULES = (
    Rule(
        id="gelatine-soaked",
        title=say_later("Gelatine is soaked first"),
        concern=CONCERN,
        band=Band(unit="min", low=5.0, fails_below=1.0),
        source="common_practice",
        formula=say_later("time of the soaking step; 10 min if it states none"),
        look=_soak_time,
        too_low=Side(
            why=say_later("too short for it to swell through, so lumps stay"),
            advice=say_later("Soak it for 5 to 10 min in cold water before it goes in."),
        ),
    ),
    Rule(
        id="insert-frozen",
        title=say_later("The insert is frozen first"),
        concern=CONCERN,
        band=Band(unit="°C", high=-10.0, fails_above=0.0),
        source="common_practice",
        formula=say_later("temperature at which its method leaves it"),
        look=_insert_frozen,
        too_high=Side(
            why=say_later("too soft to lie straight in the mousse"),
            advice=say_later(
                "Freeze it hard in its own mould first, and turn it out at the last moment."
            ),
        ),
    ),
    Rule(
        id="glazed-frozen",
        title=say_later("The piece is frozen when it is glazed"),
        concern=CONCERN,
        band=Band(unit="°C", high=-12.0, fails_above=-5.0),
        source="common_practice",
        formula=say_later("temperature that the freezing before the glaze states"),
        look=_glazed_cold,
        too_high=Side(
            why=say_later("too warm to set the film before it runs off"),
            advice=say_later(
                "Freeze it through to -15 °C or colder and glaze it straight from the freezer."
            ),
        ),
    ),
)
