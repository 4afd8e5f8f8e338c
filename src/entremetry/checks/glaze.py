"""Checks of glazes: water, sugar, gelatine, film, how much is poured, how soon."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount, given, number
from entremetry.dessert.needs import total
from entremetry.method.waiting import GlazeAt
from entremetry.words import say, say_as, say_later

CONCERN = "glaze"
WET = 0.12  # water from which a coating is a glaze, not a spray of chocolate


def _water(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("glaze"):
        if each.gelatine <= 0.0:
            continue
        value = 100.0 * each.share.water
        yield Finding(
            component=each.id,
            value=value,
            error=1.5,
            fact=say("It holds {amount} water", amount=amount(value, "%")),
            inputs=(given(say("dissolved solids"), each.brix, "°Brix"),),
        )


def _brix(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("glaze"):
        if each.share.water < WET:
            continue
        yield Finding(
            component=each.id,
            value=each.brix,
            error=1.5,
            fact=say("Its syrup has {amount}", amount=amount(each.brix, "°Brix")),
            inputs=(given(say("water"), 100.0 * each.share.water, "%"),),
        )


def _gelatine(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("glaze"):
        if each.gelatine <= 0.0:
            continue
        value = 100.0 * each.gelatine
        yield Finding(
            component=each.id,
            value=value,
            error=0.1 * value,
            fact=say("It holds {amount} gelatine of 200 Bloom", amount=amount(value, "%")),
        )


def _film(bench: Bench) -> Iterator[Finding]:
    for placed in bench.coatings:
        each = bench.by_id[placed.component]
        if each.share.water < WET:
            continue
        film = placed.film or (placed.per_area or 0.0) / each.made.density.value
        value = film * 1e3
        yield Finding(
            component=each.id,
            value=value,
            error=0.3 * value,
            fact=say("The film is {amount} thick", amount=amount(value, "mm")),
        )


def _poured(bench: Bench) -> Iterator[Finding]:
    for placed in bench.coatings:
        stays = total(bench.reckoning.needs, placed.component).mass
        if placed.pour is None or stays <= 0.0:
            continue
        value = placed.pour / stays
        yield Finding(
            component=placed.component,
            value=value,
            error=0.2 * value,
            fact=say("{number} times what stays is poured over each piece", number=number(value)),
            inputs=(
                given(say("poured"), placed.pour * 1e3, "g"),
                given(say_as("input", "stays"), stays * 1e3, "g"),
            ),
        )


def _within(bench: Bench) -> Iterator[Finding]:
    for step in bench.assembly:
        if isinstance(step, GlazeAt) and step.within is not None:
            value = step.within / 60.0
            yield Finding(
                component=DESSERT,
                value=value,
                fact=say(
                    "It may be out of the freezer for {amount} before it is glazed",
                    amount=amount(value, "min"),
                ),
            )


RULES = (
    Rule(
        id="glaze-water",
        title=say_later("Water in the glaze"),
        concern=CONCERN,
        band=Band(unit="%", low=24.0, high=42.0, fails_below=16.0, fails_above=55.0),
        source="common_practice",
        formula=say_later("water ÷ mass of the glaze"),
        look=_water,
        too_low=Side(
            why=say_later("so it is thick and leaves ridges"),
            advice=say_later("Weigh it after cooking and put the water back that has gone."),
        ),
        too_high=Side(
            why=say_later("so it runs thin and turns dull"),
            advice=say_later("Boil the syrup further, or take less water; 27 to 31 % is usual."),
        ),
    ),
    Rule(
        id="glaze-syrup",
        title=say_later("The glaze shines"),
        concern=CONCERN,
        band=Band(unit="°Brix", low=50.0, high=76.0, fails_below=38.0, fails_above=84.0),
        source="common_practice",
        formula=say_later("soluble solids ÷ (soluble solids + water)"),
        look=_brix,
        too_low=Side(
            why=say_later("too dilute for a shiny film, and it freezes cloudy"),
            advice=say_later(
                "Take more sugar and glucose syrup, or boil it down to 60 to 68 °Brix."
            ),
        ),
        too_high=Side(
            why=say_later("so concentrated that it is sticky and may turn grainy"),
            advice=say_later("Add water by the spoonful until it reads 60 to 68 °Brix."),
        ),
    ),
    Rule(
        id="glaze-gelatine",
        title=say_later("Gelatine in the glaze"),
        concern=CONCERN,
        band=Band(unit="%", low=1.1, high=1.9, fails_below=0.6, fails_above=3.0),
        source="common_practice",
        formula=say_later("gelatine × Bloom ÷ 200 ÷ mass of the glaze"),
        look=_gelatine,
        too_low=Side(
            why=say_later("too little to grip, so it runs off"),
            advice=say_later("Take 1.3 to 1.7 % gelatine of 200 Bloom."),
        ),
        too_high=Side(
            why=say_later("so much that it peels off like a skin"),
            advice=say_later("Take 1.3 to 1.7 % gelatine of 200 Bloom."),
        ),
    ),
    Rule(
        id="glaze-film",
        title=say_later("Thickness of the glaze"),
        concern=CONCERN,
        band=Band(unit="mm", low=0.8, high=2.5, fails_below=0.4, fails_above=4.0),
        source="common_practice",
        formula=say_later("as the document states it, or mass per area ÷ density"),
        look=_film,
        too_low=Side(
            why=say_later("so thin that the mousse shows through"),
            advice=say_later("Pour cooler, or twice."),
        ),
        too_high=Side(
            why=say_later("so thick that it tastes of nothing else"),
            advice=say_later(
                "Pour 2 °C warmer and let it run off; draw a palette knife over the top."
            ),
        ),
    ),
    Rule(
        id="glaze-poured",
        title=say_later("Enough glaze in the jug"),
        concern=CONCERN,
        band=Band(unit="×", low=1.8, fails_below=1.1),
        source="common_practice",
        formula=say_later("mass poured ÷ mass that stays"),
        look=_poured,
        too_low=Side(
            why=say_later("too little to cover it in one pass"),
            advice=say_later("Pour two to four times what stays, and catch what runs off."),
        ),
    ),
    Rule(
        id="glaze-at-once",
        title=say_later("Glazed straight from the freezer"),
        concern=CONCERN,
        band=Band(unit="min", high=5.0, fails_above=10.0),
        source="common_practice",
        formula=say_later("as the method states it"),
        look=_within,
        too_high=Side(
            why=say_later("long enough for frost and dew to lie under the glaze"),
            advice=say_later(
                "Have the glaze ready, take pieces out by twos and threes, wipe off frost."
            ),
        ),
    ),
)
