"""Checks of gelatine: enough, not too much, soaked, dissolved, not boiled, not digested."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given, number
from entremetry.checks.strength import grades, setting_index
from entremetry.method.cooking import Fold, Heated, Soak
from entremetry.method.shaping import Pour
from entremetry.words import say, say_later

CONCERN = "setting"
FIRMEST = {"mousse": (1.7, 2.6), "insert": (2.5, 4.0), "glaze": (1.9, 3.0)}
VESSEL = Band(unit="×", low=0.5, fails_below=0.25)
WEAK = ("mango", "guava")  # digest gelatine less than the others: from_memory
WEAK_BAND = Band(unit="°C", low=85.0)
HANDWARM = 37.0  # °C, below which no step heats it


def _gelatine_lines(each: BenchComponent) -> tuple[str, ...]:
    return tuple(name for name, line in each.lines.items() if line.is_gelatine)


def _sets(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("mousse", "insert"):
        if each.is_baked:
            continue
        parts = setting_index(each)
        value = sum(parts.values())
        names = ", ".join(say(agent) for agent in parts) or say("nothing")
        least = say("× the least that holds")
        yield Finding(
            component=each.id,
            value=value,
            error=0.25 * value,
            fact=say(
                "What sets it ({names}) comes to {times} times the least that holds",
                names=names,
                times=number(value),
            ),
            band=None if bench.is_released else VESSEL,
            inputs=(
                *(given(say(agent), part, least) for agent, part in parts.items()),
                *grades(each),
            ),
        )


def _rubbery(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if each.gelatine <= 0.0 or each.kind not in FIRMEST:
            continue
        high, fails = FIRMEST[each.kind]
        value = 100.0 * each.gelatine
        yield Finding(
            component=each.id,
            value=value,
            error=0.1 * value,
            fact=say("It holds {amount} gelatine of 200 Bloom", amount=amount(value, "%")),
            band=Band(unit="%", high=high, fails_above=fails),
            inputs=(
                given(say("gelatine in its water"), 100.0 * each.gelatine / each.share.water, "%"),
                *grades(each),
            ),
        )


def _soaking_water(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for step in each.steps:
            names = [n for n in _gelatine_lines(each) if isinstance(step, Soak) and n in step.what]
            mass = sum(each.lines[name].mass for name in names)
            if not names or not isinstance(step, Soak) or step.water is None:
                continue
            value = step.water / mass
            yield Finding(
                component=each.id,
                value=value,
                fact=say(
                    "The gelatine soaks in {times} times its mass of water", times=number(value)
                ),
                inputs=(
                    given(say("water"), step.water * 1e3, "g"),
                    given(say("gelatine"), mass * 1e3, "g"),
                ),
            )


def _boiled(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        names = _gelatine_lines(each)
        if names and not each.is_baked:
            value = max(each.peaks[name] for name in names) - 273.15
            if value <= HANDWARM:
                continue
            yield Finding(
                component=each.id,
                value=value,
                fact=say("The gelatine is heated to {amount}", amount=amount(value, "°C")),
            )


def _dissolved(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        for name in _gelatine_lines(each):
            warmed = any(isinstance(step, Heated) for step in each.steps)
            if warmed and "gelatine-mass" not in each.lines[name].ingredient:
                value = each.highest(name) - 273.15
                yield Finding(
                    component=each.id,
                    value=value,
                    error=5.0,
                    fact=say(
                        "The warmest the gelatine gets is about {amount}",
                        amount=amount(value, "°C"),
                    ),
                )


def _digested(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        fruit = each.tagged("proteolytic")
        if not fruit or each.gelatine <= 0.0:
            continue
        for name in fruit:
            value = each.peaks[name] - 273.15
            yield Finding(
                component=each.id,
                value=value,
                fact=say(
                    "{name} is heated to {amount}",
                    name=each.lines[name].name,
                    amount=amount(value, "°C"),
                ),
                band=WEAK_BAND if each.lines[name].ingredient in WEAK else None,
            )


def _poured(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "glaze"):
        pours = [n for n, moment in enumerate(each.moments) if isinstance(moment.step, Pour)]
        folded = any(isinstance(step, Fold) for step in each.steps)
        if each.gelatine <= 0.0 or not pours or folded:
            continue
        value = each.moments[pours[-1]].after - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=1.0,
            fact=say("It is poured at {amount}", amount=amount(value, "°C")),
        )


RULES = (
    Rule(
        id="sets",
        title=say_later("It sets"),
        concern=CONCERN,
        band=Band(unit="×", low=1.0, fails_below=0.6),
        source="common_practice",
        sources=("common_practice", "lersch_2014", "our_own"),
        formula=(
            say_later(
                "sum of each setting agent ÷ its least dose: gelatine of 200 Bloom 0.6 %, cocoa "
                "butter "
                "8 %, agar 0.2 % and so on"
            )
        ),
        look=_sets,
        too_low=Side(
            why=say_later("so it may not stand when it has thawed"),
            advice=(
                say_later(
                    "Take more gelatine: 0.8 to 1.5 % of a mousse, 0.7 to 1.7 % of an insert; or "
                    "more "
                    "couverture."
                )
            ),
        ),
    ),
    Rule(
        id="rubbery",
        title=say_later("It does not turn rubbery"),
        concern=CONCERN,
        band=Band(unit="%", high=1.7, fails_above=2.6),
        source="common_practice",
        formula=say_later("mass of gelatine × Bloom ÷ 200 ÷ mass of the component (linear rule)"),
        sources=("common_practice", "ward_courts_1977"),
        look=_rubbery,
        too_high=Side(
            why=say_later("more than most makers take, so it may chew like rubber"),
            advice=say_later(
                "Check the Bloom; take a quarter less, or a third if it is made a day ahead."
            ),
        ),
    ),
    Rule(
        id="soaking-water",
        title=say_later("Gelatine gets its water"),
        concern=CONCERN,
        band=Band(unit="×", low=4.0, high=8.0, fails_below=2.0, fails_above=15.0),
        source="common_practice",
        formula=say_later("soaking water ÷ gelatine"),
        look=_soaking_water,
        too_low=Side(
            why=say_later("too little to swell it through, so lumps stay"),
            advice=say_later("Soak powder in 5 to 6 times its mass of cold water."),
        ),
        too_high=Side(
            why=say_later("more than it needs, which thins the component"),
            advice=say_later("Weigh 5 to 6 times its mass of water and let all of it go in."),
        ),
    ),
    Rule(
        id="gelatine-boiled",
        title=say_later("Gelatine is not boiled"),
        concern=CONCERN,
        band=Band(unit="°C", high=80.0, fails_above=101.0),
        source="common_practice",
        formula=say_later(
            "highest temperature that a step states for the bowl with the gelatine in it"
        ),
        look=_boiled,
        too_high=Side(
            why=say_later("hot enough to weaken it"),
            advice=say_later("Stir it in off the heat, at 50 to 60 °C."),
        ),
    ),
    Rule(
        id="gelatine-dissolved",
        title=say_later("Gelatine dissolves"),
        concern=CONCERN,
        band=Band(unit="°C", low=42.0, fails_below=34.0),
        source="common_practice",
        formula=say_later(
            "warmest that the bowl gets with the gelatine in it, heat of what is mixed counted"
        ),
        look=_dissolved,
        too_low=Side(
            why=say_later("too cold to dissolve it, so threads and grains stay"),
            advice=say_later(
                "Melt it into a part of the liquid at 50 to 60 °C, then stir that in."
            ),
        ),
    ),
    Rule(
        id="raw-fruit-and-gelatine",
        title=say_later("No raw fruit that digests gelatine"),
        concern=CONCERN,
        band=Band(unit="°C", low=85.0, fails_below=70.0),
        source="common_practice",
        formula=say_later("highest temperature that a step states for the fruit"),
        look=_digested,
        too_low=Side(
            why=say_later("and raw it cuts gelatine to pieces, so that nothing sets"),
            advice=(
                say_later(
                    "Bring the fruit to 85 °C right through and let it cool first, use tinned "
                    "fruit, "
                    "or set it with agar or pectin."
                )
            ),
        ),
    ),
    Rule(
        id="poured-before-it-sets",
        title=say_later("It is poured before it sets"),
        concern=CONCERN,
        band=Band(unit="°C", low=23.0, fails_below=18.0),
        source="common_practice",
        sources=("common_practice", "boran_2010"),
        formula=say_later("temperature of the bowl at the pour; gelatine sets from about 20 °C"),
        look=_poured,
        too_low=Side(
            why=say_later("where gelatine is setting already, so it pours in lumps"),
            advice=say_later("Warm it to 25 to 30 °C and stir until it runs smooth."),
        ),
    ),
)
