"""Checks of agar, pectin, starch and egg: each needs its own heat, sugar or acid."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.checks.strength import GUMS, weeping_share
from entremetry.physics.gels import AGAR, PECTIN_NH, SUCROSE, starch_thickens_at
from entremetry.words import say, say_later

CONCERN = "other gels"
HEATED = 323.15  # K, above which an egg is meant to be cooked
AGAR_BAND = Band(unit="°C", low=AGAR.hydrates_at - 273.15, fails_below=80.0)
PECTIN_BAND = Band(unit="°C", low=PECTIN_NH.hydrates_at - 273.15, fails_below=70.0)


def _with(each: BenchComponent, word: str) -> list[str]:
    return [name for name, line in each.lines.items() if word in line.ingredient]


def _agar(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for name in _with(each, "agar"):
            if "gelling" in each.lines[name].tags:
                yield _heated(each, name, say_later("The agar is heated to {amount}"))


def _pectin(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for name in _with(each, "pectin-"):
            if "pectin-liquid" not in each.lines[name].ingredient:
                yield _heated(each, name, say_later("The pectin is heated to {amount}"))


def _heated(each: BenchComponent, name: str, fact: str) -> Finding:
    value = max(each.peaks[name], each.highest(name)) - 273.15
    return Finding(
        component=each.id,
        value=value,
        error=3.0,
        fact=say(fact, amount=amount(value, "°C")),
    )


def _pectin_sugar(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if each.tagged("sets-with-sugar-and-acid"):
            yield Finding(
                component=each.id,
                value=each.brix,
                error=1.0,
                fact=say("With this pectin it holds {amount}", amount=amount(each.brix, "°Brix")),
            )


def _starch(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if each.is_baked:
            continue
        sucrose = each.share.sucrose + each.share.unsplit_sugars
        wet = sucrose + each.share.water
        part = min(sucrose / wet, SUCROSE.high) if wet > 0.0 else 0.0
        needed = starch_thickens_at(part) - 273.15
        for name in each.tagged("thickening"):
            line = each.lines[name]
            if any(gum in line.ingredient for gum in GUMS) or "cold" in line.ingredient:
                continue
            value = each.peaks[name] - 273.15
            yield Finding(
                component=each.id,
                value=value,
                fact=say("The starch is heated to {amount}", amount=amount(value, "°C")),
                band=Band(unit="°C", low=needed, fails_below=needed - 12.0),
                inputs=(given(say("sucrose in its liquid"), 100.0 * part, "%"),),
            )


def _custard(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        eggs = [*_with(each, "egg-yolk"), *_with(each, "egg-whole")]
        peak = max((each.peaks[name] for name in eggs), default=0.0)
        if each.is_baked or peak < HEATED or each.tagged("thickening"):
            continue
        value = peak - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=1.0,
            fact=say("The egg is heated to {amount}", amount=amount(value, "°C")),
        )


def _weeps(bench: Bench) -> Iterator[Finding]:
    if not bench.is_frozen:
        return
    for each in bench.of_kind("insert", "mousse"):
        if each.is_baked or not (each.tagged("gelling") or each.tagged("thickening")):
            continue
        value = 100.0 * weeping_share(each)
        yield Finding(
            component=each.id,
            value=value,
            error=10.0,
            fact=say(
                "{amount} of what sets it are gels that weep after freezing",
                amount=amount(value, "%"),
            ),
        )


RULES = (
    Rule(
        id="agar-boiled",
        title=say_later("Agar is boiled"),
        concern=CONCERN,
        band=AGAR_BAND,
        source="lersch_2014",
        formula=say_later("highest temperature of the bowl with the agar in it"),
        look=_agar,
        too_low=Side(
            why=say_later("and below 90 °C agar does not dissolve"),
            advice=say_later("Boil it for a minute or two in the liquid that is least sour."),
        ),
    ),
    Rule(
        id="pectin-boiled",
        title=say_later("Pectin is boiled"),
        concern=CONCERN,
        band=PECTIN_BAND,
        source="common_practice",
        formula=say_later("highest temperature of the bowl with the pectin in it"),
        look=_pectin,
        too_low=Side(
            why=say_later("too cold to dissolve it and start its gel"),
            advice=say_later("Rain it in mixed with sugar at 40 °C, then bring it to a full boil."),
        ),
    ),
    Rule(
        id="pectin-sugar",
        title=say_later("Pectin has its sugar"),
        concern=CONCERN,
        band=Band(unit="°Brix", low=60.0, high=80.0, fails_below=55.0, fails_above=85.0),
        source="common_practice",
        formula=say_later("soluble solids ÷ (soluble solids + water)"),
        look=_pectin_sugar,
        too_low=Side(
            why=say_later("and high-methoxyl pectin sets only from about 60 °Brix on, with acid"),
            advice=say_later(
                "Boil it further down, add sugar, or use pectin NH, which sets without."
            ),
        ),
        too_high=Side(
            why=say_later("so concentrated that it sets in the pan"),
            advice=say_later("Add water, or take it off the heat earlier."),
        ),
    ),
    Rule(
        id="starch-cooked",
        title=say_later("Starch is cooked"),
        concern=CONCERN,
        band=Band(unit="°C", low=70.0, fails_below=58.0),
        source="spies_hoseney_1982",
        sources=("spies_hoseney_1982", "from_memory"),
        formula=say_later("highest temperature with the starch in it; sugar raises what it needs"),
        look=_starch,
        too_low=Side(
            why=say_later("too cold to thicken it, and it tastes of raw starch"),
            advice=say_later(
                "Cook it until it bubbles in the middle, whisking; add sour juice after that."
            ),
        ),
    ),
    Rule(
        id="custard",
        title=say_later("The egg thickens and does not scramble"),
        concern=CONCERN,
        band=Band(unit="°C", low=79.0, high=86.0, fails_below=70.0, fails_above=91.0),
        source="common_practice",
        formula=say_later("highest temperature that a step states for the egg"),
        look=_custard,
        too_low=Side(
            why=say_later("where yolk hardly thickens"),
            advice=say_later(
                "Stir it to 82 to 84 °C: a finger drawn over the spatula leaves a clear line."
            ),
        ),
        too_high=Side(
            why=say_later("where egg scrambles"),
            advice=say_later(
                "Stop at 84 °C and strain it at once; it climbs some degrees by itself."
            ),
        ),
    ),
    Rule(
        id="weeping",
        title=say_later("It does not weep after freezing"),
        concern=CONCERN,
        band=Band(unit="%", high=25.0, fails_above=50.0),
        source="lersch_2014",
        sources=("lersch_2014", "common_practice"),
        formula=say_later(
            "setting strength of agar, kappa carrageenan and starch ÷ that of all that sets it"
        ),
        look=_weeps,
        too_high=Side(
            why=say_later("so it may stand in a puddle when it has thawed"),
            advice=say_later("Set it with gelatine or pectin NH, or add a little locust bean gum."),
        ),
    ),
)
