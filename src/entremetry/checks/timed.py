"""Checks that need the temperatures of a step: times long enough, and where the glaze touches."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.quantities import format_duration
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.words import say, say_later

CONCERN = "times"
TOUCHES = "temperature where glaze and piece touch"
LONG_ENOUGH = Band(unit="%", low=90.0, fails_below=60.0)


def _written_against_needed(bench: Bench, kind: str) -> Iterator[Finding]:
    for step in bench.temperatures.values():
        if step.kind != kind or not step.written_time or not step.time:
            continue
        value = 100.0 * step.written_time / step.time
        yield Finding(
            component=_component(bench, step),
            value=value,
            error=_error(step, value),
            fact=say(
                "The method gives it {written}, and it takes about {computed}",
                written=format_duration(step.written_time),
                computed=format_duration(step.time),
            ),
            inputs=tuple(
                given(name, seconds / 3600.0, "h")
                for name, seconds in ((say("at least"), step.low), (say("at most"), step.high))
                if seconds is not None
            ),
        )


def _error(step: StepTemperatures, value: float) -> float:
    if not (step.written_time and step.low and step.high):
        return 0.3 * value
    ends = (100.0 * step.written_time / step.low, 100.0 * step.written_time / step.high)
    return max(abs(end - value) for end in ends)


def _component(bench: Bench, step: StepTemperatures) -> str:
    return next((c.id for c in bench.components if bench.name(c.id) == step.name), DESSERT)


def _freezing(bench: Bench) -> Iterator[Finding]:
    yield from _written_against_needed(bench, "freeze-until")


def _thawing(bench: Bench) -> Iterator[Finding]:
    yield from _written_against_needed(bench, "thaw-until")


def _cooling(bench: Bench) -> Iterator[Finding]:
    yield from _written_against_needed(bench, "cool-to")


def _contact(bench: Bench) -> Iterator[Finding]:
    for step in bench.temperatures.values():
        coating = next((bench.by_id[p.component] for p in bench.coatings), None)
        if step.kind != "glaze-at" or coating is None or coating.gelatine <= 0.0:
            continue
        for fact in step.facts:
            if fact.name == TOUCHES:
                yield Finding(
                    component=coating.id,
                    value=fact.value,
                    error=2.0,
                    fact=say(
                        "Glaze and frozen piece meet at {amount}", amount=amount(fact.value, "°C")
                    ),
                )


RULES = (
    Rule(
        id="freezing-time",
        title=say_later("Time to freeze"),
        concern=CONCERN,
        band=LONG_ENOUGH,
        source="our_own",
        sources=("choi_okos_1986", "crc_handbook_102", "our_own"),
        formula=say_later(
            "written time ÷ computed time, by conduction with freezing in the true section"
        ),
        look=_freezing,
        too_low=Side(
            why=say_later("so the heart may still be soft"),
            advice=say_later("Freeze it longer, on a metal shelf, or in a colder or moving air."),
        ),
    ),
    Rule(
        id="thawing-time",
        title=say_later("Time to thaw"),
        concern=CONCERN,
        band=LONG_ENOUGH,
        source="our_own",
        sources=("choi_okos_1986", "crc_handbook_102", "our_own"),
        formula=say_later(
            "written time ÷ computed time, by heat conduction with melting in the true section"
        ),
        look=_thawing,
        too_low=Side(
            why=say_later("so the heart may still be frozen when it is served"),
            advice=say_later(
                "Take it out earlier, or let it stand on a shelf that conducts, not in a box."
            ),
        ),
    ),
    Rule(
        id="cooling-time",
        title=say_later("Time to cool"),
        concern=CONCERN,
        band=Band(unit="%", low=60.0, fails_below=25.0),
        source="our_own",
        sources=("our_own",),
        formula=say_later(
            "written time ÷ computed time, by the heat a bowl loses to air, bath and steam"
        ),
        look=_cooling,
        too_low=Side(
            why=say_later("so it will be warmer than the next step wants"),
            advice=say_later(
                "Allow the time, use a wide shallow bowl, or stand the bowl in ice water."
            ),
        ),
    ),
    Rule(
        id="glaze-contact",
        title=say_later("The glaze grips"),
        concern=CONCERN,
        band=Band(unit="°C", high=20.0, fails_above=24.0),
        source="common_practice",
        sources=("carslaw_jaeger_1959", "from_memory"),
        formula=say_later(
            "temperature where two bodies touch, by the root of conductivity × heat × density"
        ),
        look=_contact,
        too_high=Side(
            why=say_later("too warm to set the film where it lies, so it may slide"),
            advice=say_later("Glaze a colder piece, pour cooler, wipe off the frost."),
        ),
    ),
)
