"""Freezing and thawing told as an answer: the time, the interval, curves, marks and pictures."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.reckoning import Reckoning
from entremetry.physics.conduction.history import History
from entremetry.physics.conduction.stage import COLDEST, WARMEST
from entremetry.quantities import format_celsius
from entremetry.timings.cause import with_cause
from entremetry.timings.component_food import freezing_curve
from entremetry.timings.crossing import crossing
from entremetry.timings.piece_body import WATCHED, piece_body
from entremetry.timings.piece_regions import main_part
from entremetry.timings.piece_run import Band, band, field, run_piece
from entremetry.timings.place import STANDING
from entremetry.timings.second_opinion import second_opinions
from entremetry.timings.setting import Setting
from entremetry.timings.step_temperatures import Curve, Mark, StepTemperatures
from entremetry.timings.timed_step import FREEZE, TimedStep
from entremetry.words import decimal, say

FEW_CELLS = 400  # enough for what an uncertain number does to the time
COLD_LIMIT = 278.15  # K, 5 °C: fda_food_code
SOURCES = ("choi_okos_1986", "crc_handbook_102", "our_own")


def piece_answer(
    reckoning: Reckoning, timed: TimedStep, setting: Setting, *, pictures: bool
) -> StepTemperatures:
    """Run the piece and say what a cook wants to know of it."""
    history = run_piece(setting.piece, setting.start, setting.stage, frames=pictures)
    coarse = piece_body(setting.placed, setting.materials, most_cells=FEW_CELLS)
    interval = band(coarse, setting.start, setting.stage, history)
    until = setting.stage.until
    opinions = second_opinions(setting) if interval.best else ()
    there = (say("It is there already at the start."),) if interval.best == 0.0 else ()
    upside_down = reckoning.dessert.mould.fills_upside_down and timed.component is None
    return StepTemperatures(
        step=timed.id,
        name=timed.name,
        kind=timed.kind,
        sentence=timed.sentence,
        target=until.temperature if until else None,
        time=interval.best,
        low=interval.low,
        high=interval.high,
        reason=_reason(setting, history),
        mostly=interval.mostly,
        because=_because(setting, interval),
        sources=(*SOURCES, *(source for _, source in opinions)),
        assumptions=(*setting.assumptions, *there),
        curves=tuple(_curves(reckoning, timed, history)),
        marks=tuple(_marks(reckoning, timed, history)),
        field=field(setting.piece, history, served_upside_down=upside_down) if pictures else None,
        balance_error=history.balance_error,
        written_time=timed.step.time,
        facts=tuple(fact for fact, _ in opinions),
    )


def _reason(setting: Setting, history: History) -> str:
    """Why the target is not reached; nothing if it is."""
    if history.reached:
        return ""
    there, until = setting.place, setting.stage.until
    air = format_celsius(there.temperature)
    if until is None:
        return history.ends[-1].reason
    if (
        until.falling == (there.temperature >= until.temperature)
        or there.temperature == until.temperature
    ):
        if until.falling:
            return say(
                "the {place} has {air}, and nothing in it gets colder than that",
                place=there.name,
                air=air,
            )
        return say(
            "the {place} has {air}, and nothing in it gets warmer than that",
            place=there.name,
            air=air,
        )
    return say(
        "after {hours} h the last place is still at {temperature}",
        hours=decimal(f"{history.end / 3600.0:.0f}"),
        temperature=format_celsius(float(history.curve(until.of)[-1]), decimals=1),
    )


def _because(setting: Setting, interval: Band) -> str:
    there = setting.place
    because = say(
        "heat conduction with freezing in the true section, in the {place} at {temperature}, "
        "{standing}",
        place=there.name,
        temperature=format_celsius(there.temperature),
        standing=say(STANDING[there.support]),
    )
    return with_cause(because, interval.mostly)


def _curves(reckoning: Reckoning, timed: TimedStep, history: History) -> Iterator[Curve]:
    names = reckoning.dessert.names
    for point in history.points:
        yield Curve(
            name=names.get(point) or say(WATCHED[point]),
            times=history.times,
            temperatures=history.curve(point),
        )


def _marks(reckoning: Reckoning, timed: TimedStep, history: History) -> Iterator[Mark]:
    """When ice begins or is gone, when all is safe, and when it leaves the cold."""
    component = timed.component.id if timed.component else main_part(reckoning.placed).component
    mix, name = reckoning.makings[component].mix, reckoning.dessert.names[component]
    curve = freezing_curve(mix.constituents * (1.0 / mix.mass))
    falling = timed.kind == FREEZE
    found: list[tuple[float | None, str]] = []
    if curve is not None:
        ice = curve.freezing_point
        if falling:
            found.append(
                (
                    crossing(history, WARMEST, ice, falling=falling),
                    say("ice everywhere in {name}", name=name),
                )
            )
        else:
            found.append(
                (
                    crossing(history, COLDEST, ice, falling=falling),
                    say("no ice left in {name}", name=name),
                )
            )
    if falling:
        found.append(
            (crossing(history, WARMEST, COLD_LIMIT, falling=falling), say("all of it below 5 °C"))
        )
    else:
        found.append(
            (crossing(history, "edge", COLD_LIMIT, falling=falling), say("edge above 5 °C"))
        )
    yield from sorted(
        (Mark(time=time, text=text) for time, text in found if time is not None),
        key=lambda mark: mark.time,
    )
