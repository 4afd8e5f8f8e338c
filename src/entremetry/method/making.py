"""A formula taken through its method: what comes out, and where the rest went."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from entremetry.errors import BalanceError
from entremetry.formula.mix import Mix, mixed
from entremetry.formula.scaling import scaled
from entremetry.method.bowl import Bowl
from entremetry.method.effect import effect, left_behind, lose
from entremetry.method.ledger import Ledger
from entremetry.method.made import Made
from entremetry.method.made_density import (
    baked_density,
    measured_density,
    mix_density,
    with_density,
)
from entremetry.method.portion import Portion
from entremetry.method.route import Route, Stop, route
from entremetry.method.step import AnyStep
from entremetry.method.step_names import step_name
from entremetry.sources.figure import Figure
from entremetry.words import say, say_as

USUAL_LOSS = 0.05  # bowl and bag keep 5 to 8 %: common_practice
STICKY = ("mousse", "insert", "glaze", "soak")  # kinds for which that loss is assumed


def make(
    lines: Mapping[str, Portion],
    steps: Sequence[AnyStep],
    *,
    component_name: str,
    component_id: str = "",
    kind: str = "",
    density: float | None = None,
) -> Made:
    """Follow a method step by step and keep the books.

    `component_name` is used in refusals, `component_id` in the place of a fault in the document
    (the name, if there is none). `kind` decides whether the usual loss in bowl and bag is assumed
    where the method states none. `density` [kg/m3] is the author's own measurement of the
    finished component.

    Raises
    ------
    DocumentError
        With every name that is unknown, used twice or never joined.
    BalanceError
        If a step takes more than there is; the message names component and step.
    """
    ledger = Ledger()
    way = route(tuple(lines), steps, component=component_id or component_name)
    bowl, raw = _follow(lines, steps, way, component_name, ledger)
    bowl = _after_usual_loss(bowl, steps, kind, ledger)
    mix = bowl.mix
    if not mix.mass > 0.0:
        told = say("{name}: nothing is left of it; give its formula masses", name=component_name)
        raise BalanceError(told)
    figure = _density(mix, raw, density, ledger)
    return Made(
        mass_in=sum(line.mass for line in lines.values()) + sum(ledger.soaking_water.values()),
        mix=mix if density is None else with_density(mix, density),
        density=figure,
        raw_density=mix_density(raw, dough=True) if raw else figure,
        changes=tuple(ledger.changes),
        soaking_water=tuple(ledger.soaking_water.items()),
        assumptions=tuple(ledger.assumptions),
        kept={name: bowl.still_there.get(name, 0.0) for name in lines},
    )


def scaled_made(made: Made, factor: float) -> Made:
    """What the same method makes of `factor` times the formula."""
    return replace(
        made,
        mass_in=made.mass_in * factor,
        mix=scaled(made.mix, factor),
        changes=tuple(replace(change, mass=change.mass * factor) for change in made.changes),
        soaking_water=tuple((name, water * factor) for name, water in made.soaking_water),
    )


def _follow(
    lines: Mapping[str, Portion],
    steps: Sequence[AnyStep],
    way: Route,
    name: str,
    ledger: Ledger,
) -> tuple[Bowl, Mix | None]:
    """Bowl at the end, and the dough as it went into the oven."""
    if not steps:
        return _filled(Stop(bowl=way.last_bowl, lines=tuple(lines)), {}, lines), None
    bowls: dict[str, Bowl] = {}
    raw = None
    for index, (step, stop) in enumerate(zip(steps, way.stops, strict=True)):
        ledger.step = step_name(step, index + 1)
        bowl = _filled(stop, bowls, lines)
        raw = bowl.mix if raw is None and step.step == "bake" else raw
        bowls[stop.bowl] = _done(step, bowl, lines, name, ledger)
    return bowls[way.last_bowl], raw


def _filled(stop: Stop, bowls: dict[str, Bowl], lines: Mapping[str, Portion]) -> Bowl:
    """Bowl with everything in it that enters now; the bowls poured in are gone afterwards."""
    joined = [bowls.pop(name) for name in (stop.bowl, *stop.bowls) if name in bowls]
    entering = [Mix(constituents=lines[n].constituents, gas=lines[n].gas) for n in stop.lines]
    still_there = dict.fromkeys(stop.lines, 1.0)
    for bowl in joined:
        still_there.update(bowl.still_there)
    return Bowl(mix=mixed(*(bowl.mix for bowl in joined), *entering), still_there=still_there)


def _done(
    step: AnyStep, bowl: Bowl, lines: Mapping[str, Portion], name: str, ledger: Ledger
) -> Bowl:
    try:
        return left_behind(step, effect(step, bowl, lines, ledger), ledger)
    except BalanceError as error:
        told = say(
            "{component}, {step}: {problem}", component=name, step=ledger.step, problem=error
        )
        raise BalanceError(told) from error


def _after_usual_loss(bowl: Bowl, steps: Sequence[AnyStep], kind: str, ledger: Ledger) -> Bowl:
    ledger.step = ""
    if kind not in STICKY or any(step.left_behind is not None for step in steps):
        return bowl
    percent = f"{USUAL_LOSS * 100:g}"
    text = say(
        "{percent} % stays in bowl and bag (common practice: 5 to 8 %, no source); "
        "state left_behind to be exact",
        percent=percent,
    )
    ledger.assume(text, "common_practice")
    ledger.step = step_name(steps[-1], len(steps)) if steps else say_as("work", "filling")
    because = say("{percent} % of what is ready, an assumption", percent=percent)
    loss, reason = USUAL_LOSS * bowl.mix.mass, say("left in bowl and bag")
    return lose(bowl, loss, reason, ledger, because=because, source="common_practice")


def _density(mix: Mix, raw: Mix | None, stated: float | None, ledger: Ledger) -> Figure:
    if stated is not None:
        return measured_density(stated)
    sources = tuple(key for key in ledger.sources if key != "common_practice")
    if raw is None:
        return mix_density(mix, sources=sources)
    ledger.step = ""
    baked = say(
        "what is baked is taken to keep the volume it had before the oven, which can be wrong by "
        "half; weigh a piece, divide by its volume and state the density"
    )
    ledger.assume(baked)
    return baked_density(mix, sources=sources)
