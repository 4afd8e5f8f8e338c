"""Checks of temperatures at the bench: folding, pouring, glazing, unmoulding, serving."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.checks.strength import setting_index
from entremetry.method.cooking import Fold
from entremetry.method.shaping import Unmould
from entremetry.method.waiting import FreezeUntil, GlazeAt, Rest, ThawUntil
from entremetry.physics.gelatine import SETTING
from entremetry.timings.mixing import folded_temperature
from entremetry.timings.start import ready_temperature, stated_temperature
from entremetry.words import say, say_later

CONCERN = "temperatures"
FIRM_UNFROZEN = 2.0  # of the least that sets: turns out without being frozen, our_own
ROOM = 293.15  # K
SAME_BOWL = 5.0  # K between what a step states and what the bowl has
MELTS = SETTING.melts_at - 273.15


def _folds_cream(each: BenchComponent) -> bool:
    folds = any(isinstance(step, Fold) for step in each.steps)
    creamy = any(
        "whippable" in line.tags and line.constituents.fat > 0.1 * line.mass
        for line in each.lines.values()
    )
    return folds and creamy and not each.is_baked


def _fold(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if not _folds_cream(each):
            continue
        found, error = _mix(bench, each)
        value = found - 273.15
        low = Band(unit="°C", low=22.0, high=30.0, fails_below=18.5, fails_above=34.0)
        without = Band(unit="°C", high=30.0, fails_above=34.0)
        yield Finding(
            component=each.id,
            value=value,
            error=error,
            fact=say("Base and whipped cream meet at {amount}", amount=amount(value, "°C")),
            band=low if each.gelatine > 0.0 else without,
            inputs=(given(say("base before the fold"), _before_fold(each) - 273.15, "°C"),),
        )


def _mix(bench: Bench, each: BenchComponent) -> tuple[float, float]:
    """Temperature where a fold lands, and how sure that is. [K]

    With latent heat where the last temperature stated is that of the bowl it is folded into;
    with several warm bowls by plain mixing.
    """
    last = [n for n, moment in enumerate(each.moments) if isinstance(moment.step, Fold)][-1]
    base, stated = each.moments[last].before, stated_temperature(each.steps[:last])
    found = folded_temperature(bench.reckoning, each.component, bench.kitchen)
    if found is None or base is None or stated is None or abs(base - stated) > SAME_BOWL:
        return each.moments[last].after, 4.0
    return found, 1.5


def _before_fold(each: BenchComponent) -> float:
    found = [m.before for m in each.moments if isinstance(m.step, Fold) and m.before is not None]
    return found[-1] if found else ROOM


def _chocolate_base(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if not _folds_cream(each) or each.share.cocoa_butter < 0.03:
            continue
        value = _before_fold(each) - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=1.0,
            fact=say(
                "The chocolate base is at {amount} when the cream goes in",
                amount=amount(value, "°C"),
            ),
            inputs=(given(say("cocoa butter"), 100.0 * each.share.cocoa_butter, "%"),),
        )


def _upper_layer(bench: Bench) -> Iterator[Finding]:
    for lower, upper in pairwise(bench.soft):
        below, above = bench.by_id[lower.component], bench.by_id[upper.component]
        if below.gelatine <= 0.0 or above.is_baked:
            continue
        folded = folded_temperature(bench.reckoning, above.component, bench.kitchen)
        found = folded or ready_temperature(above.steps)[0]
        value = found - 273.15
        yield Finding(
            component=above.id,
            value=value,
            error=2.0,
            fact=say(
                "It goes onto {below}, which gelatine sets, at {amount}",
                below=bench.name(below.id),
                amount=amount(value, "°C"),
            ),
            inputs=(given(say("gelatine melts from"), MELTS, "°C"),),
        )


def _glazes(bench: Bench) -> Iterator[tuple[GlazeAt, BenchComponent]]:
    """The pours of a gelatine glaze."""
    for step in bench.assembly:
        if isinstance(step, GlazeAt) and bench.coatings:
            each = bench.by_id[bench.coatings[0].component]
            if each.gelatine > 0.0:
                yield step, each


def _pour(bench: Bench) -> Iterator[Finding]:
    for step, each in _glazes(bench):
        value = step.temperature - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=1.0,
            fact=say("The glaze is poured at {amount}", amount=amount(value, "°C")),
        )


def _unmould(bench: Bench) -> Iterator[Finding]:
    unmoulds = [n for n, step in enumerate(bench.assembly) if isinstance(step, Unmould)]
    if not unmoulds or not bench.is_released or bench.outer is None:
        return
    before = bench.assembly[: unmoulds[0]]
    strength = sum(setting_index(bench.outer).values())
    if not any(isinstance(step, FreezeUntil) for step in before) and strength >= FIRM_UNFROZEN:
        return
    value = _coldest_stated(before) - 273.15
    yield Finding(
        component="dessert",
        value=value,
        error=1.0,
        fact=say("The heart is at {amount} when it leaves the mould", amount=amount(value, "°C")),
    )


def _coldest_stated(steps: tuple[object, ...]) -> float:
    for step in reversed(steps):
        if isinstance(step, FreezeUntil | Rest | ThawUntil) and step.temperature is not None:
            return step.temperature
        if isinstance(step, FreezeUntil):
            return 255.15
    return ROOM


def _still_hard(bench: Bench) -> Iterator[Finding]:
    thaws = [step for step in bench.assembly if isinstance(step, ThawUntil)]
    if not thaws or thaws[-1].temperature is None:
        return
    at = thaws[-1].temperature
    outer = [bench.outer] if bench.outer else []
    for each in [*(bench.by_id[p.component] for p in bench.inserts), *outer]:
        if each.is_baked:
            continue
        value = 100.0 * each.ice_share(at)
        yield Finding(
            component=each.id,
            value=value,
            error=3.0,
            fact=say(
                "At {temperature}, where thawing ends, {share} of its water is still ice",
                temperature=amount(at - 273.15, "°C"),
                share=amount(value, "%"),
            ),
        )


RULES = (
    Rule(
        id="fold-temperature",
        title=say_later("Temperature of the fold"),
        concern=CONCERN,
        band=Band(unit="°C", low=22.0, high=30.0, fails_below=18.5, fails_above=34.0),
        source="common_practice",
        sources=("choi_okos_1986", "common_practice"),
        formula=say_later("heat kept: what the base loses the cream gains, melting fat included"),
        look=_fold,
        too_low=Side(
            why=say_later("so cold that gelatine sets in threads before it is folded in"),
            advice=(
                say_later(
                    "Use the base 5 °C warmer, or stir a third of the cream in first and wait a "
                    "little "
                    "less."
                )
            ),
        ),
        too_high=Side(
            why=say_later("so warm that the fat of the cream melts and the air goes"),
            advice=say_later(
                "Let the base cool further before the cream goes in, and fold in three goes."
            ),
        ),
    ),
    Rule(
        id="chocolate-base-temperature",
        title=say_later("Temperature of the chocolate base"),
        concern=CONCERN,
        band=Band(unit="°C", low=36.0, high=50.0, fails_below=31.0, fails_above=60.0),
        source="common_practice",
        formula=say_later("temperature of the bowl before the fold, as the method states it"),
        look=_chocolate_base,
        too_low=Side(
            why=say_later("so cool that cocoa butter sets in grains on the cold cream"),
            advice=say_later("Use it at 40 to 45 °C, with cream whipped only to soft ribbons."),
        ),
        too_high=Side(
            why=say_later("so warm that the cream collapses"),
            advice=say_later("Let it cool to 40 to 45 °C."),
        ),
    ),
    Rule(
        id="layer-on-layer",
        title=say_later("A layer does not melt the one below"),
        concern=CONCERN,
        band=Band(unit="°C", high=32.0, fails_above=42.0),
        source="common_practice",
        sources=("common_practice", "boran_2010"),
        formula=say_later(
            "temperature at which the upper layer is poured; gelatine melts from about 27 °C"
        ),
        look=_upper_layer,
        too_high=Side(
            why=say_later("warm enough to melt it, so the two run into each other"),
            advice=say_later("Chill or freeze the lower layer first and pour at 25 to 30 °C."),
        ),
    ),
    Rule(
        id="glaze-temperature",
        title=say_later("Temperature of the glaze"),
        concern=CONCERN,
        band=Band(unit="°C", low=28.0, high=37.0, fails_below=23.0, fails_above=43.0),
        source="common_practice",
        formula=say_later("temperature of the pour, as the method states it"),
        look=_pour,
        too_low=Side(
            why=say_later("where it is setting already and leaves ridges"),
            advice=say_later(
                "Warm it to 30 to 35 °C, stir without air, strain it, and try a spoonful."
            ),
        ),
        too_high=Side(
            why=say_later("so fluid that it runs off and lets the piece show through"),
            advice=say_later("Let it cool to 30 to 35 °C, or pour a second thin coat."),
        ),
    ),
    Rule(
        id="unmould-temperature",
        title=say_later("It is frozen when it leaves the mould"),
        concern=CONCERN,
        band=Band(unit="°C", high=-12.0, fails_above=-5.0),
        source="our_own",
        formula=say_later("temperature of the heart that the freezing before it states"),
        look=_unmould,
        too_high=Side(
            why=say_later("not hard enough, so part of it may stay in the mould"),
            advice=say_later(
                "Freeze it on until the heart is at -15 °C; peel the mould off, do not press."
            ),
        ),
    ),
    Rule(
        id="ice-at-service",
        title=say_later("No hard heart at service"),
        concern=CONCERN,
        band=Band(unit="%", high=8.0, fails_above=20.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula=say_later("share of its water that is ice at the temperature where thawing ends"),
        look=_still_hard,
        too_high=Side(
            why=say_later("so it is served with a hard heart"),
            advice=say_later("Let it thaw until the heart is at -1 to 0 °C."),
        ),
    ),
)
