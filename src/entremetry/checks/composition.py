"""Checks of what a component is made of: crystals, sweetness, alcohol, acid, ice."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.formula.sweetness import SWEET_PARTS, mix_sweetness
from entremetry.physics.syrup import sucrose_solubility

CONCERN = "composition"
COLD = 277.15  # K
SOLUBLE = 100.0 * sucrose_solubility(COLD)


def _sucrose(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse", "glaze", "soak"):
        sucrose = each.share.sucrose + each.share.unsplit_sugars
        if not each.is_moist or sucrose <= 0.0:
            continue
        value = 100.0 * sucrose / (sucrose + each.share.water)
        yield Finding(
            component=each.id,
            value=value,
            error=1.0,
            fact=f"Its syrup holds {amount(value, '%')} sucrose",
            inputs=(
                given("sucrose", 100.0 * sucrose, "% of the component"),
                given("water", 100.0 * each.share.water, "% of the component"),
            ),
        )


def _lactose(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse", "glaze"):
        if not each.is_moist or each.share.lactose < 0.01:
            continue
        value = 100.0 * each.share.lactose / each.share.water
        yield Finding(
            component=each.id,
            value=value,
            error=0.1 * value,
            fact=f"Its water holds {amount(value, 'g/100 g')} of milk sugar",
            inputs=(given("milk sugar", 100.0 * each.share.lactose, "% of the component"),),
        )


def _sweetness(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse"):
        found = mix_sweetness(each.made.mix)
        value = 100.0 * found.usual
        yield Finding(
            component=each.id,
            value=value,
            error=50.0 * (found.high - found.low),
            fact=f"It is as sweet as {amount(value, '%')} of sucrose",
            inputs=tuple(
                given(name.replace("_", " "), 100.0 * getattr(each.share, name), "%")
                for name in SWEET_PARTS
                if getattr(each.share, name) > 1e-4
            ),
        )


def _alcohol(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse", "glaze"):
        value = 100.0 * each.share.alcohol
        if value > 0.0:
            yield Finding(
                component=each.id,
                value=value,
                error=0.1 * value,
                fact=f"It holds {amount(value, '%')} alcohol by mass",
            )


def _acid(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if each.gelatine <= 0.0 or each.share.organic_acids <= 0.0:
            continue
        value = 100.0 * each.share.organic_acids / each.share.water
        yield Finding(
            component=each.id,
            value=value,
            error=0.2 * value,
            fact=f"The water that the gelatine sets holds {amount(value, '%')} fruit acid",
            inputs=(given("fruit acid", 100.0 * each.share.organic_acids, "% of the component"),),
        )


def _hardens(bench: Bench) -> Iterator[Finding]:
    if not bench.is_frozen:
        return
    for placed in bench.inserts:
        each = bench.by_id[placed.component]
        if each.is_baked:
            continue
        value = 100.0 * each.ice_share(bench.frozen_to)
        yield Finding(
            component=each.id,
            value=value,
            error=5.0,
            fact=(
                f"At {amount(bench.frozen_to - 273.15, '°C')} "
                f"{amount(value, '%')} of its water is ice"
            ),
            inputs=(given("dissolved solids", each.brix, "°Brix"),),
        )


def _icy(bench: Bench) -> Iterator[Finding]:
    if not bench.is_frozen:
        return
    for each in bench.of_kind("insert", "mousse"):
        if each.is_baked:
            continue
        free = each.share.water - min(0.4 * each.share.protein, each.share.water)
        value = 100.0 * each.ice_share(bench.frozen_to) * free
        yield Finding(
            component=each.id,
            value=value,
            error=4.0,
            fact=f"Frozen, it is {amount(value, '%')} ice by mass",
            inputs=(
                given("water that can freeze", 100.0 * free, "% of the component"),
                given("dissolved solids", each.brix, "°Brix"),
            ),
        )


RULES = (
    Rule(
        id="sucrose-crystals",
        title="Sugar stays dissolved",
        concern=CONCERN,
        band=Band(unit="%", high=SOLUBLE, fails_above=72.0),
        source="bubnik_1995",
        sources=("bubnik_1995",),
        formula="sucrose ÷ (sucrose + water); full at 64.8 % at 4 °C, at 72 % at 50 °C",
        look=_sucrose,
        too_high=Side(
            why="more than stays dissolved in the fridge, so it can turn grainy",
            advice="Swap a third of the sugar for glucose syrup or invert sugar, or add water.",
        ),
    ),
    Rule(
        id="lactose-crystals",
        title="Milk sugar stays dissolved",
        concern=CONCERN,
        band=Band(unit="g/100 g", high=15.0, fails_above=30.0),
        source="from_memory",
        formula="lactose per 100 g of water; about 13 g dissolve at 4 °C, 19 g at 20 °C",
        look=_lactose,
        too_high=Side(
            why="more than cold water dissolves, so it can turn sandy after days in the cold",
            advice="Use less milk powder or condensed milk, or a lactose-free one.",
        ),
    ),
    Rule(
        id="sweetness",
        title="Sweet enough, not too sweet",
        concern=CONCERN,
        band=Band(unit="%", low=5.0, high=32.0, fails_above=50.0),
        source="common_practice",
        sources=("bender_2005", "gaman_sherrington_1990"),
        formula="sum of each sugar × its sweetness beside sucrose",
        look=_sweetness,
        too_low=Side(
            why="hardly sweet once it is cold",
            advice="Taste it cold; add sugar, and look at the ice again.",
        ),
        too_high=Side(
            why="sweeter than most people like a mousse or an insert",
            advice="Swap part of the sugar for glucose syrup of 42 DE or trehalose, or add acid.",
        ),
    ),
    Rule(
        id="alcohol",
        title="Alcohol lets it freeze and set",
        concern=CONCERN,
        band=Band(unit="%", high=3.0, fails_above=10.0),
        source="common_practice",
        formula="mass of ethanol ÷ mass of the component",
        look=_alcohol,
        too_high=Side(
            why="enough to keep it soft in a home freezer and to soften the gel",
            advice="Halve the spirit, or boil part of it off before the gelatine goes in.",
        ),
    ),
    Rule(
        id="acid-and-gelatine",
        title="Acid spares the gelatine",
        concern=CONCERN,
        band=Band(unit="%", high=2.5, fails_above=6.0),
        source="common_practice",
        sources=("belitz_2009",),
        formula="organic acids ÷ water, acid by titration from the larder",
        look=_acid,
        too_high=Side(
            why="sour enough to weaken the gel, the more so if they are heated together",
            advice=(
                "Add the gelatine to a part without juice and the juice last and cool, or take "
                "10 to 15 % more gelatine."
            ),
        ),
    ),
    Rule(
        id="insert-freezes-hard",
        title="The insert freezes hard",
        concern=CONCERN,
        band=Band(unit="%", low=50.0, fails_below=25.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula="share of the water that is ice when solution and ice are in balance",
        look=_hardens,
        too_low=Side(
            why="too little to unmould it and lay it in",
            advice=(
                "Use less sugar or spirit, add some gelatine, or lay it in straight from a mould "
                "at -25 °C."
            ),
        ),
    ),
    Rule(
        id="icy",
        title="It does not freeze to a block of ice",
        concern=CONCERN,
        band=Band(unit="%", high=68.0, fails_above=82.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula="ice share × (water - 0.4 × protein)",
        look=_icy,
        too_high=Side(
            why="so watery that its crystals grow coarse and it weeps when it thaws",
            advice="Boil it down, or add sugar, glucose syrup or pectin until it holds 18 °Brix.",
        ),
    ),
)
