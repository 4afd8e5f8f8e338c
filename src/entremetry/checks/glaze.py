"""Checks of glazes: water, sugar, gelatine, film, how much is poured, how soon."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.dessert.needs import total
from entremetry.method.waiting import GlazeAt

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
            fact=f"It holds {amount(value, '%')} water",
            inputs=(given("dissolved solids", each.brix, "°Brix"),),
        )


def _brix(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("glaze"):
        if each.share.water < WET:
            continue
        yield Finding(
            component=each.id,
            value=each.brix,
            error=1.5,
            fact=f"Its syrup has {amount(each.brix, '°Brix')}",
            inputs=(given("water", 100.0 * each.share.water, "%"),),
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
            fact=f"It holds {amount(value, '%')} gelatine of 200 Bloom",
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
            fact=f"The film is {amount(value, 'mm')} thick",
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
            fact=f"{amount(value, 'times')} what stays is poured over each piece",
            inputs=(
                given("poured", placed.pour * 1e3, "g"),
                given("stays", stays * 1e3, "g"),
            ),
        )


def _within(bench: Bench) -> Iterator[Finding]:
    for step in bench.assembly:
        if isinstance(step, GlazeAt) and step.within is not None:
            value = step.within / 60.0
            yield Finding(
                component=DESSERT,
                value=value,
                fact=f"It may be out of the freezer for {amount(value, 'min')} before it is glazed",
            )


RULES = (
    Rule(
        id="glaze-water",
        title="Water in the glaze",
        concern=CONCERN,
        band=Band(unit="%", low=24.0, high=42.0, fails_below=16.0, fails_above=55.0),
        source="common_practice",
        formula="water ÷ mass of the glaze",
        look=_water,
        too_low=Side(
            why="so it is thick and leaves ridges",
            advice="Weigh it after cooking and put the water back that has gone.",
        ),
        too_high=Side(
            why="so it runs thin and turns dull",
            advice="Boil the syrup further, or take less water; 27 to 31 % is usual.",
        ),
    ),
    Rule(
        id="glaze-syrup",
        title="The glaze shines",
        concern=CONCERN,
        band=Band(unit="°Brix", low=50.0, high=76.0, fails_below=38.0, fails_above=84.0),
        source="common_practice",
        formula="soluble solids ÷ (soluble solids + water)",
        look=_brix,
        too_low=Side(
            why="too dilute for a shiny film, and it freezes cloudy",
            advice="Take more sugar and glucose syrup, or boil it down to 60 to 68 °Brix.",
        ),
        too_high=Side(
            why="so concentrated that it is sticky and may turn grainy",
            advice="Add water by the spoonful until it reads 60 to 68 °Brix.",
        ),
    ),
    Rule(
        id="glaze-gelatine",
        title="Gelatine in the glaze",
        concern=CONCERN,
        band=Band(unit="%", low=1.1, high=1.9, fails_below=0.6, fails_above=3.0),
        source="common_practice",
        formula="gelatine × Bloom ÷ 200 ÷ mass of the glaze",
        look=_gelatine,
        too_low=Side(
            why="too little to grip, so it runs off",
            advice="Take 1.3 to 1.7 % gelatine of 200 Bloom.",
        ),
        too_high=Side(
            why="so much that it peels off like a skin",
            advice="Take 1.3 to 1.7 % gelatine of 200 Bloom.",
        ),
    ),
    Rule(
        id="glaze-film",
        title="Thickness of the glaze",
        concern=CONCERN,
        band=Band(unit="mm", low=0.8, high=2.5, fails_below=0.4, fails_above=4.0),
        source="common_practice",
        formula="as the document states it, or mass per area ÷ density",
        look=_film,
        too_low=Side(
            why="so thin that the mousse shows through",
            advice="Pour cooler, or twice.",
        ),
        too_high=Side(
            why="so thick that it tastes of nothing else",
            advice="Pour 2 °C warmer and let it run off; draw a palette knife over the top.",
        ),
    ),
    Rule(
        id="glaze-poured",
        title="Enough glaze in the jug",
        concern=CONCERN,
        band=Band(unit="×", low=1.8, fails_below=1.1),
        source="common_practice",
        formula="mass poured ÷ mass that stays",
        look=_poured,
        too_low=Side(
            why="too little to cover it in one pass",
            advice="Pour two to four times what stays, and catch what runs off.",
        ),
    ),
    Rule(
        id="glaze-at-once",
        title="Glazed straight from the freezer",
        concern=CONCERN,
        band=Band(unit="min", high=5.0, fails_above=10.0),
        source="common_practice",
        formula="as the method states it",
        look=_within,
        too_high=Side(
            why="long enough for frost and dew to lie under the glaze",
            advice="Have the glaze ready, take pieces out by twos and threes, wipe off frost.",
        ),
    ),
)
