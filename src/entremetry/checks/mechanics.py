"""Checks of what sinks, floats and lets go."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.dessert.placed import Inclusion
from entremetry.method.shaping import Unmould
from entremetry.method.waiting import FreezeUntil
from entremetry.words import say, say_later

CONCERN = "mechanics"
GRAVITY = 9.81  # m/s2
COMPACT, FLAT = 14.0, 6.0  # pull ÷ yield stress of a ball (beris_1985) and of a disc (our_own)
FLATTEST = 0.35  # height over width below which a body counts as a disc
HEAVIER = say_later("It is {gap} heavier than {around}, which must hold against {stress}")
LIGHTER = say_later("It is {gap} lighter than {around}, which must hold against {stress}")


def _stress(part: Inclusion, heavier: float) -> float:
    """Yield stress that keeps a body in its place. [Pa]"""
    area = part.solid.area_at(part.solid.height) or math.pi / 4.0 * part.solid.width**2
    widest = max(area, part.solid.area_at(0.0))
    flat = part.solid.height < FLATTEST * min(part.solid.length, part.solid.width)
    pull = abs(heavier) * GRAVITY * part.solid.volume / widest
    return pull / (FLAT if flat else COMPACT)


def _moves(bench: Bench, *, sinks: bool) -> Iterator[Finding]:
    """Bodies heavier (or lighter) than the soft part around them."""
    around = bench.outer
    if around is None:
        return
    soft = around.made.density.value
    for part in bench.reckoning.placed.inclusions:
        body = bench.by_id[part.component].made.density.value
        if part.is_base == sinks or (body > soft) != sinks:
            continue
        value = _stress(part, body - soft)
        yield Finding(
            component=part.component,
            value=value,
            error=0.5 * value,
            fact=say(
                HEAVIER if sinks else LIGHTER,
                gap=amount(abs(body - soft) / 1e3, "g/ml"),
                around=bench.name(around.id),
                stress=amount(value, "Pa"),
            ),
            inputs=(
                given(say("its density"), body / 1e3, "g/ml"),
                given(say("density around it"), soft / 1e3, "g/ml"),
            ),
        )


def _sinks(bench: Bench) -> Iterator[Finding]:
    yield from _moves(bench, sinks=True)


def _floats(bench: Bench) -> Iterator[Finding]:
    if bench.dessert.mould.fills_upside_down:
        yield from _moves(bench, sinks=False)


def _releases(bench: Bench) -> Iterator[Finding]:
    steps = bench.assembly
    unmoulds = any(isinstance(step, Unmould) for step in steps)
    freezes = [s for s in steps if isinstance(s, FreezeUntil) and s.temperature is not None]
    each = bench.outer
    if each is None or not unmoulds or not freezes or not bench.is_released:
        return
    at = freezes[0].temperature or bench.frozen_to
    value = 100.0 * each.ice_share(at)
    yield Finding(
        component=each.id,
        value=value,
        error=5.0,
        fact=say(
            "At {temperature}, when it is unmoulded, {share} of the water of its outer layer is "
            "ice",
            temperature=amount(at - 273.15, "°C"),
            share=amount(value, "%"),
        ),
    )


def _settles(bench: Bench) -> Iterator[Finding]:
    for lower, upper in pairwise(bench.soft):
        below, above = bench.by_id[lower.component], bench.by_id[upper.component]
        if above.is_baked or below.gelatine > 0.0 or below.is_baked:
            continue
        gap = (above.made.density.value - below.made.density.value) / 1e3
        if below.tagged("gelling") or not below.is_whipped:
            continue
        yield Finding(
            component=above.id,
            value=gap,
            error=0.05,
            fact=say(
                "It is {gap} denser than {below} under it",
                gap=amount(gap, "g/ml"),
                below=bench.name(below.id),
            ),
        )


RULES = (
    Rule(
        id="insert-sinks",
        title=say_later("The insert stays where it is laid"),
        concern=CONCERN,
        band=Band(unit="Pa", high=15.0, fails_above=40.0),
        source="our_own",
        sources=("beris_1985", "our_own"),
        formula=(
            say_later(
                "weight gap × gravity × volume ÷ widest area, ÷ 14 for a compact body or 6 for a "
                "disc; "
                "a spooned bump of 5 mm that stays means about 30 Pa"
            )
        ),
        look=_sinks,
        too_high=Side(
            why=say_later("which a freshly folded mousse may not"),
            advice=say_later(
                "Wait until a spooned bump stays, chill the mould for 5 min, lay it level."
            ),
        ),
    ),
    Rule(
        id="base-floats",
        title=say_later("The base does not float up"),
        concern=CONCERN,
        band=Band(unit="Pa", high=15.0, fails_above=40.0),
        source="our_own",
        sources=("beris_1985", "our_own"),
        formula=say_later("as for an insert, with the pull upwards"),
        look=_floats,
        too_high=Side(
            why=say_later("which a freshly folded mousse may not"),
            advice=say_later("Soak it, press it in and keep it down with a tray in the freezer."),
        ),
    ),
    Rule(
        id="layer-sinks",
        title=say_later("A layer lies on the one below"),
        concern=CONCERN,
        band=Band(unit="g/ml", high=0.10, fails_above=0.40),
        source="our_own",
        formula=say_later(
            "density of the upper layer - density of the layer under it, if nothing sets that"
        ),
        look=_settles,
        too_high=Side(
            why=say_later("and nothing sets that one, so it can break through"),
            advice=say_later("Chill or freeze the lower layer before the next goes on, or set it."),
        ),
    ),
    Rule(
        id="releases",
        title=say_later("It comes out of the mould"),
        concern=CONCERN,
        band=Band(unit="%", low=50.0, fails_below=30.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula=say_later("share of the water that is ice when solution and ice are in balance"),
        look=_releases,
        too_low=Side(
            why=say_later("so its skin is soft and sticks"),
            advice=say_later(
                "Freeze it colder, use less sugar or spirit, peel the mould off slowly."
            ),
        ),
    ),
)
