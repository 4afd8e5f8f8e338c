"""Checks of gelatine: enough, not too much, soaked, dissolved, not boiled, not digested."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.checks.strength import setting_index
from entremetry.checks.verdict import Input
from entremetry.method.cooking import Fold, Heated, Soak
from entremetry.method.shaping import Pour
from entremetry.physics.gelatine import BloomRule, equivalent_mass

CONCERN = "setting"
FIRMEST = {"mousse": (1.7, 2.6), "insert": (2.5, 4.0), "glaze": (1.9, 3.0)}
VESSEL = Band(unit="×", low=0.5, fails_below=0.25)
WEAK = ("mango", "guava")  # digest gelatine less than the others: from_memory
WEAK_BAND = Band(unit="°C", low=85.0)
HANDWARM = 37.0  # °C, below which no step heats it


def _gelatine_lines(each: BenchComponent) -> tuple[str, ...]:
    return tuple(name for name, line in each.lines.items() if line.is_gelatine)


def _grades(each: BenchComponent) -> Iterator[Input]:
    for ingredient in each.ingredients():
        bloom = ingredient.bloom
        if bloom is None or abs(bloom - 200.0) < 1.0:
            continue
        linear = equivalent_mass(1.0, bloom, 200.0)
        root = equivalent_mass(1.0, bloom, 200.0, BloomRule.SQUARE_ROOT)
        yield Input(
            name=f"1 g of {bloom:.0f} Bloom stands for",
            said=f"{linear:.2f} g of 200 Bloom (linear rule; {root:.2f} g by the square root)",
        )


def _sets(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("mousse", "insert"):
        if each.is_baked:
            continue
        parts = setting_index(each)
        value = sum(parts.values())
        names = ", ".join(parts) or "nothing"
        yield Finding(
            component=each.id,
            value=value,
            error=0.25 * value,
            fact=f"What sets it ({names}) comes to {amount(value, 'times')} the least that holds",
            band=None if bench.is_released else VESSEL,
            inputs=(
                *(given(name, part, "× the least that holds") for name, part in parts.items()),
                *_grades(each),
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
            fact=f"It holds {amount(value, '%')} gelatine of 200 Bloom",
            band=Band(unit="%", high=high, fails_above=fails),
            inputs=(
                given("gelatine in its water", 100.0 * each.gelatine / each.share.water, "%"),
                *_grades(each),
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
                fact=f"The gelatine soaks in {amount(value, 'times')} its mass of water",
                inputs=(
                    given("water", step.water * 1e3, "g"),
                    given("gelatine", mass * 1e3, "g"),
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
                fact=f"The gelatine is heated to {amount(value, '°C')}",
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
                    fact=f"The warmest the gelatine gets is about {amount(value, '°C')}",
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
                fact=f"{each.lines[name].name} is heated to {amount(value, '°C')}",
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
            fact=f"It is poured at {amount(value, '°C')}",
        )


RULES = (
    Rule(
        id="sets",
        title="It sets",
        concern=CONCERN,
        band=Band(unit="×", low=1.0, fails_below=0.6),
        source="common_practice",
        sources=("common_practice", "lersch_2014", "our_own"),
        formula=(
            "sum of each setting agent ÷ its least dose: gelatine of 200 Bloom 0.6 %, cocoa butter "
            "8 %, agar 0.2 % and so on"
        ),
        look=_sets,
        too_low=Side(
            why="so it may not stand when it has thawed",
            advice=(
                "Take more gelatine: 0.8 to 1.5 % of a mousse, 0.7 to 1.7 % of an insert; or more "
                "couverture."
            ),
        ),
    ),
    Rule(
        id="rubbery",
        title="It does not turn rubbery",
        concern=CONCERN,
        band=Band(unit="%", high=1.7, fails_above=2.6),
        source="common_practice",
        formula="mass of gelatine × Bloom ÷ 200 ÷ mass of the component (linear rule)",
        sources=("common_practice", "ward_courts_1977"),
        look=_rubbery,
        too_high=Side(
            why="more than most makers take, so it may chew like rubber",
            advice="Check the Bloom; take a quarter less, or a third if it is made a day ahead.",
        ),
    ),
    Rule(
        id="soaking-water",
        title="Gelatine gets its water",
        concern=CONCERN,
        band=Band(unit="×", low=4.0, high=8.0, fails_below=2.0, fails_above=15.0),
        source="common_practice",
        formula="soaking water ÷ gelatine",
        look=_soaking_water,
        too_low=Side(
            why="too little to swell it through, so lumps stay",
            advice="Soak powder in 5 to 6 times its mass of cold water.",
        ),
        too_high=Side(
            why="more than it needs, which thins the component",
            advice="Weigh 5 to 6 times its mass of water and let all of it go in.",
        ),
    ),
    Rule(
        id="gelatine-boiled",
        title="Gelatine is not boiled",
        concern=CONCERN,
        band=Band(unit="°C", high=80.0, fails_above=101.0),
        source="common_practice",
        formula="highest temperature that a step states for the bowl with the gelatine in it",
        look=_boiled,
        too_high=Side(
            why="hot enough to weaken it",
            advice="Stir it in off the heat, at 50 to 60 °C.",
        ),
    ),
    Rule(
        id="gelatine-dissolved",
        title="Gelatine dissolves",
        concern=CONCERN,
        band=Band(unit="°C", low=42.0, fails_below=34.0),
        source="common_practice",
        formula="warmest that the bowl gets with the gelatine in it, heat of what is mixed counted",
        look=_dissolved,
        too_low=Side(
            why="too cold to dissolve it, so threads and grains stay",
            advice="Melt it into a part of the liquid at 50 to 60 °C, then stir that in.",
        ),
    ),
    Rule(
        id="raw-fruit-and-gelatine",
        title="No raw fruit that digests gelatine",
        concern=CONCERN,
        band=Band(unit="°C", low=85.0, fails_below=70.0),
        source="common_practice",
        formula="highest temperature that a step states for the fruit",
        look=_digested,
        too_low=Side(
            why="and raw it cuts gelatine to pieces, so that nothing sets",
            advice=(
                "Bring the fruit to 85 °C right through and let it cool first, use tinned fruit, "
                "or set it with agar or pectin."
            ),
        ),
    ),
    Rule(
        id="poured-before-it-sets",
        title="It is poured before it sets",
        concern=CONCERN,
        band=Band(unit="°C", low=23.0, fails_below=18.0),
        source="common_practice",
        sources=("common_practice", "boran_2010"),
        formula="temperature of the bowl at the pour; gelatine sets from about 20 °C",
        look=_poured,
        too_low=Side(
            why="where gelatine is setting already, so it pours in lumps",
            advice="Warm it to 25 to 30 °C and stir until it runs smooth.",
        ),
    ),
)
