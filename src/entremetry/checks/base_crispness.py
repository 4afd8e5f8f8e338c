"""Checks of bases: dry, crisp until it is eaten, rested, thin enough, soaked enough."""

from __future__ import annotations

import math
from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.contact import contact_time
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.dessert.needs import total
from entremetry.dessert.placement import SoakPlacement
from entremetry.errors import OutsideRange
from entremetry.method.shaping import Bake, Roll
from entremetry.method.waiting import FreezeUntil, Rest
from entremetry.timings.component_food import activity_of_water
from entremetry.words import say, say_later

CONCERN = "base"
DIFFUSIVITY = 5e-11  # m2/s of moisture in a baked dough, good to a factor of 3: from_memory
CRISP_BELOW = 0.55  # water activity at which a biscuit is no longer crisp: from_memory
DRY_BISCUIT = 0.30  # water activity of a biscuit out of the oven: from_memory
CRUMB = 0.004  # m, half of what a lump of crumble measures: common_practice
BARRIER = 5.0  # times longer behind a film of cocoa butter: from_memory
FILM = 0.08  # cocoa butter in the base from which it counts as sealed


def _crisp(bench: Bench) -> Iterator[Finding]:
    outer = bench.outer
    if outer is None:
        return
    for each in bench.of_kind("base", "crumble"):
        if not each.is_crisp or not (contact := contact_time(bench, each.id)):
            continue
        seconds, words = contact
        wet = _activity(outer)
        value = _crisp_for(each, _thickness(bench, each), wet) / 3600.0
        needed = seconds / 3600.0
        yield Finding(
            component=each.id,
            value=value,
            error=0.5 * value,
            fact=say(
                "It stays crisp for about {time} and lies against {other} for {needed}",
                time=amount(value, "h"),
                other=bench.name(outer.id),
                needed=amount(needed, "h"),
            ),
            band=Band(unit="h", low=needed, fails_below=0.3 * needed),
            inputs=(
                given(say("water activity beside it"), wet, ""),
                given(say("its own, out of the oven"), DRY_BISCUIT, ""),
                given(say("thickness"), _thickness(bench, each) * 1e3, "mm"),
                given(words, needed, "h"),
            ),
        )


def _activity(each: BenchComponent) -> float:
    try:
        return activity_of_water(each.share)
    except OutsideRange:
        return 0.85


def _thickness(bench: Bench, each: BenchComponent) -> float:
    return next((p.thickness for p in bench.bases if p.component == each.id), CRUMB)


def _crisp_for(each: BenchComponent, thickness: float, wet: float) -> float:
    """Time until a slab, wet from one side, has taken up half-way to soft. [s]"""
    part = (CRISP_BELOW - DRY_BISCUIT) / max(wet - DRY_BISCUIT, CRISP_BELOW - DRY_BISCUIT)
    time = math.pi * (part * thickness) ** 2 / (4.0 * DIFFUSIVITY)
    return time * (BARRIER if each.share.cocoa_butter >= FILM else 1.0)


def _dry(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("base", "crumble"):
        if each.is_crisp:
            value = 100.0 * each.share.water
            yield Finding(
                component=each.id,
                value=value,
                error=1.0,
                fact=say("Baked, it still holds {amount} water", amount=amount(value, "%")),
                inputs=(given(say("baking loss"), 100.0 * _baking_loss(each), "%"),),
            )


def _baking_loss(each: BenchComponent) -> float:
    return sum(step.loss or 0.0 for step in each.steps if isinstance(step, Bake))


def _rest(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("base"):
        bakes = [n for n, step in enumerate(each.steps) if isinstance(step, Bake)]
        if not bakes or not any(isinstance(step, Roll) for step in each.steps):
            continue
        before = each.steps[: bakes[0]]
        rests = [step.time or 0.0 for step in before if isinstance(step, Rest | FreezeUntil)]
        value = sum(rests) / 60.0
        yield Finding(
            component=each.id,
            value=value,
            fact=say(
                "The dough rests for {amount} before it is baked", amount=amount(value, "min")
            ),
        )


def _thin(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("base"):
        for step in each.steps:
            if isinstance(step, Roll):
                value = step.thickness * 1e3
                yield Finding(
                    component=each.id,
                    value=value,
                    error=0.5,
                    fact=say("The dough is rolled to {amount}", amount=amount(value, "mm")),
                )


def _soaked(bench: Bench) -> Iterator[Finding]:
    for placed in bench.placements:
        if not isinstance(placed, SoakPlacement):
            continue
        base = total(bench.reckoning.needs, placed.on).mass
        syrup = total(bench.reckoning.needs, placed.component).mass
        if base <= 0.0:
            continue
        value = 100.0 * syrup / base
        yield Finding(
            component=placed.component,
            value=value,
            error=0.1 * value,
            fact=say(
                "{base} takes up {amount} of its mass in syrup",
                base=bench.name(placed.on),
                amount=amount(value, "%"),
            ),
            inputs=(given(say("syrup"), syrup * 1e3, "g"), given(say("base"), base * 1e3, "g")),
        )


RULES = (
    Rule(
        id="stays-crisp",
        title=say_later("The base stays crisp"),
        concern=CONCERN,
        band=Band(unit="h", low=4.0, fails_below=1.2),
        source="from_memory",
        sources=("norrish_1966", "from_memory"),
        formula=say_later(
            "pi × (part × thickness)² ÷ (4 × diffusivity), part = (0.55 - 0.30) ÷ (water activity "
            "beside it - 0.30)"
        ),
        look=_crisp,
        too_low=Side(
            why=say_later("so it may be soft when it is eaten"),
            advice=say_later(
                "Brush it with cocoa butter or chocolate, or put the piece on it later."
            ),
        ),
    ),
    Rule(
        id="baked-dry",
        title=say_later("The base is baked dry"),
        concern=CONCERN,
        band=Band(unit="%", high=5.5, fails_above=9.0),
        source="from_memory",
        sources=("usda_sr28", "from_memory"),
        formula=say_later("water left after the stated baking loss ÷ mass of the baked base"),
        look=_dry,
        too_high=Side(
            why=say_later("too much to be crisp"),
            advice=say_later("Bake it longer, to an even gold; weigh it before and after."),
        ),
    ),
    Rule(
        id="dough-rest",
        title=say_later("The dough rests"),
        concern=CONCERN,
        band=Band(unit="min", low=30.0, fails_below=10.0),
        source="common_practice",
        formula=say_later("sum of the rests in the cold before it is baked"),
        look=_rest,
        too_low=Side(
            why=say_later("so it may shrink and slide in the oven"),
            advice=say_later(
                "Rest it 30 min to a night in the fridge, or 30 min in the freezer once cut."
            ),
        ),
    ),
    Rule(
        id="dough-thickness",
        title=say_later("The dough is thin and holds"),
        concern=CONCERN,
        band=Band(unit="mm", low=2.0, high=5.0, fails_below=1.2, fails_above=9.0),
        source="common_practice",
        formula=say_later("thickness that the method states"),
        look=_thin,
        too_low=Side(
            why=say_later("so thin that it breaks when the piece is lifted"),
            advice=say_later("Roll it to 2.5 to 3 mm between two bars."),
        ),
        too_high=Side(
            why=say_later("so thick that it is hard to cut with a soft mousse"),
            advice=say_later("Roll it to 2.5 to 4 mm between two bars."),
        ),
    ),
    Rule(
        id="soak-share",
        title=say_later("The sponge is moist, not wet"),
        concern=CONCERN,
        band=Band(unit="%", low=8.0, high=70.0, fails_below=2.0, fails_above=110.0),
        source="common_practice",
        formula=say_later("mass of syrup ÷ mass of the base it is brushed on"),
        look=_soaked,
        too_low=Side(
            why=say_later("hardly enough to taste"),
            advice=say_later("Brush on a quarter to a half of the sponge's mass."),
        ),
        too_high=Side(
            why=say_later("more than a sponge holds without falling apart"),
            advice=say_later("Brush on a quarter to a half of the sponge's mass, in two goes."),
        ),
    ),
)
