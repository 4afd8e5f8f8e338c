"""Checks of what a component is made of: crystals, sweetness, alcohol, acid, ice."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.formula.sweetness import SWEET_PARTS, mix_sweetness
from entremetry.physics.syrup import sucrose_solubility
from entremetry.words import say, say_later

CONCERN = "composition"
COLD = 277.15  # K
SOLUBLE = 100.0 * sucrose_solubility(COLD)
PARTS = {
    "sucrose": say_later("sucrose"),
    "glucose": say_later("glucose"),
    "fructose": say_later("fructose"),
    "lactose": say_later("lactose"),
    "maltose": say_later("maltose"),
    "galactose": say_later("galactose"),
    "trehalose": say_later("trehalose"),
    "polyols": say_later("polyols"),
    "other_carbohydrate": say_later("other carbohydrate"),
    "unsplit_sugars": say_later("unsplit sugars"),
}
"""What the sweet constituents are called."""


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
            fact=say("Its syrup holds {amount} sucrose", amount=amount(value, "%")),
            inputs=(
                given(say("sucrose"), 100.0 * sucrose, say("% of the component")),
                given(say("water"), 100.0 * each.share.water, say("% of the component")),
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
            fact=say("Its water holds {amount} of milk sugar", amount=amount(value, "g/100 g")),
            inputs=(
                given(say("milk sugar"), 100.0 * each.share.lactose, say("% of the component")),
            ),
        )


def _sweetness(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse"):
        found = mix_sweetness(each.made.mix)
        value = 100.0 * found.usual
        yield Finding(
            component=each.id,
            value=value,
            error=50.0 * (found.high - found.low),
            fact=say("It is as sweet as {amount} of sucrose", amount=amount(value, "%")),
            inputs=tuple(
                given(say(PARTS[name]), 100.0 * getattr(each.share, name), "%")
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
                fact=say("It holds {amount} alcohol by mass", amount=amount(value, "%")),
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
            fact=say(
                "The water that the gelatine sets holds {amount} fruit acid",
                amount=amount(value, "%"),
            ),
            inputs=(
                given(
                    say("fruit acid"), 100.0 * each.share.organic_acids, say("% of the component")
                ),
            ),
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
            fact=say(
                "At {temperature} {amount} of its water is ice",
                temperature=amount(bench.frozen_to - 273.15, "°C"),
                amount=amount(value, "%"),
            ),
            inputs=(given(say("dissolved solids"), each.brix, "°Brix"),),
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
            fact=say("Frozen, it is {amount} ice by mass", amount=amount(value, "%")),
            inputs=(
                given(say("water that can freeze"), 100.0 * free, say("% of the component")),
                given(say("dissolved solids"), each.brix, "°Brix"),
            ),
        )


RULES = (
    Rule(
        id="sucrose-crystals",
        title=say_later("Sugar stays dissolved"),
        concern=CONCERN,
        band=Band(unit="%", high=SOLUBLE, fails_above=72.0),
        source="bubnik_1995",
        sources=("bubnik_1995",),
        formula=say_later("sucrose ÷ (sucrose + water); full at 64.8 % at 4 °C, at 72 % at 50 °C"),
        look=_sucrose,
        too_high=Side(
            why=say_later("more than stays dissolved in the fridge, so it can turn grainy"),
            advice=say_later(
                "Swap a third of the sugar for glucose syrup or invert sugar, or add water."
            ),
        ),
    ),
    Rule(
        id="lactose-crystals",
        title=say_later("Milk sugar stays dissolved"),
        concern=CONCERN,
        band=Band(unit="g/100 g", high=15.0, fails_above=30.0),
        source="from_memory",
        formula=say_later("lactose per 100 g of water; about 13 g dissolve at 4 °C, 19 g at 20 °C"),
        look=_lactose,
        too_high=Side(
            why=say_later(
                "more than cold water dissolves, so it can turn sandy after days in the cold"
            ),
            advice=say_later("Use less milk powder or condensed milk, or a lactose-free one."),
        ),
    ),
    Rule(
        id="sweetness",
        title=say_later("Sweet enough, not too sweet"),
        concern=CONCERN,
        band=Band(unit="%", low=5.0, high=32.0, fails_above=50.0),
        source="common_practice",
        sources=("bender_2005", "gaman_sherrington_1990"),
        formula=say_later("sum of each sugar × its sweetness beside sucrose"),
        look=_sweetness,
        too_low=Side(
            why=say_later("hardly sweet once it is cold"),
            advice=say_later("Taste it cold; add sugar, and look at the ice again."),
        ),
        too_high=Side(
            why=say_later("sweeter than most people like a mousse or an insert"),
            advice=say_later(
                "Swap part of the sugar for glucose syrup of 42 DE or trehalose, or add acid."
            ),
        ),
    ),
    Rule(
        id="alcohol",
        title=say_later("Alcohol lets it freeze and set"),
        concern=CONCERN,
        band=Band(unit="%", high=3.0, fails_above=10.0),
        source="common_practice",
        formula=say_later("mass of ethanol ÷ mass of the component"),
        look=_alcohol,
        too_high=Side(
            why=say_later("enough to keep it soft in a home freezer and to soften the gel"),
            advice=say_later(
                "Halve the spirit, or boil part of it off before the gelatine goes in."
            ),
        ),
    ),
    Rule(
        id="acid-and-gelatine",
        title=say_later("Acid spares the gelatine"),
        concern=CONCERN,
        band=Band(unit="%", high=2.5, fails_above=6.0),
        source="common_practice",
        sources=("belitz_2009",),
        formula=say_later("organic acids ÷ water, acid by titration from the larder"),
        look=_acid,
        too_high=Side(
            why=say_later("sour enough to weaken the gel, the more so if they are heated together"),
            advice=say_later(
                "Add the gelatine to a part without juice and the juice last and cool, or take "
                "10 to 15 % more gelatine."
            ),
        ),
    ),
    Rule(
        id="insert-freezes-hard",
        title=say_later("The insert freezes hard"),
        concern=CONCERN,
        band=Band(unit="%", low=50.0, fails_below=25.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula=say_later("share of the water that is ice when solution and ice are in balance"),
        look=_hardens,
        too_low=Side(
            why=say_later("too little to unmould it and lay it in"),
            advice=say_later(
                "Use less sugar or spirit, add some gelatine, or lay it in straight from a mould "
                "at -25 °C."
            ),
        ),
    ),
    Rule(
        id="icy",
        title=say_later("It does not freeze to a block of ice"),
        concern=CONCERN,
        band=Band(unit="%", high=68.0, fails_above=82.0),
        source="our_own",
        sources=("norrish_1966", "crc_handbook_102"),
        formula=say_later("ice share × (water - 0.4 × protein)"),
        look=_icy,
        too_high=Side(
            why=say_later("so watery that its crystals grow coarse and it weeps when it thaws"),
            advice=say_later(
                "Boil it down, or add sugar, glucose syrup or pectin until it holds 18 °Brix."
            ),
        ),
    ),
)
