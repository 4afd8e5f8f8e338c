"""Checks of fat in water: whether it splits, how warm it is brought together."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import Finding, Rule, Side
from entremetry.checks.saying import amount, given
from entremetry.words import say, say_later

CONCERN = "emulsion"


def _fat_to_water(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse", "glaze"):
        if not each.is_moist or each.share.fat < 0.10:
            continue
        value = each.share.fat / each.share.water
        yield Finding(
            component=each.id,
            value=value,
            error=0.1 * value,
            fact=say("Its fat is {amount} of its water", amount=amount(value, "g/g")),
            inputs=(
                given(say("fat"), 100.0 * each.share.fat, "%"),
                given(say("water"), 100.0 * each.share.water, "%"),
            ),
        )


def _after_entering(each: BenchComponent, names: tuple[str, ...]) -> Iterator[tuple[str, float]]:
    """Lines that enter a bowl with something in it, and how warm it is then."""
    for moment in each.moments:
        for name in names:
            if name in moment.entering and moment.before is not None:
                yield name, moment.after


def _butter(bench: Bench) -> Iterator[Finding]:
    for each in bench.of_kind("insert", "mousse", "glaze"):
        butter = tuple(name for name, line in each.lines.items() if "butter-" in line.ingredient)
        if each.is_baked:
            continue
        milky = tuple(name for name in butter if each.lines[name].constituents.milk_fat > 0.0)
        for _, warm in _after_entering(each, milky):
            value = warm - 273.15
            yield Finding(
                component=each.id,
                value=value,
                error=4.0,
                fact=say(
                    "With the butter in it the bowl is at about {amount}",
                    amount=amount(value, "°C"),
                ),
            )


def _chocolate(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        solid = tuple(
            name
            for name in each.tagged("chocolate")
            if each.lines[name].constituents.cocoa_butter > 0.25 * each.lines[name].mass
        )
        if each.is_baked or not solid or not each.steps:
            continue
        value = min(each.highest(name) for name in solid) - 273.15
        yield Finding(
            component=each.id,
            value=value,
            error=5.0,
            fact=say(
                "The warmest its chocolate gets is about {amount}", amount=amount(value, "°C")
            ),
        )


RULES = (
    Rule(
        id="fat-and-water",
        title=say_later("Fat and water stay together"),
        concern=CONCERN,
        band=Band(unit="g/g", high=1.5, fails_above=2.0),
        source="from_memory",
        sources=("mcgee_2004", "from_memory"),
        formula=say_later("fat ÷ water; a ganache of much more than 2 to 1 splits"),
        look=_fat_to_water,
        too_high=Side(
            why=say_later("so crowded with fat that it splits easily"),
            advice=say_later(
                "Add warm milk, not cream, a spoonful at a time, and blend under the surface."
            ),
        ),
    ),
    Rule(
        id="butter-temperature",
        title=say_later("Butter goes in at the right warmth"),
        concern=CONCERN,
        band=Band(unit="°C", low=28.0, high=60.0, fails_below=18.0, fails_above=75.0),
        source="common_practice",
        formula=say_later("temperature of the bowl with the butter in it, by its heat"),
        look=_butter,
        too_low=Side(
            why=say_later("so cool that the butter stays in grains"),
            advice=say_later("Blend it in at 35 to 45 °C, soft and in pieces."),
        ),
        too_high=Side(
            why=say_later("so hot that it melts to oil and lies on top"),
            advice=say_later("Let it cool to 35 to 45 °C before the butter goes in."),
        ),
    ),
    Rule(
        id="chocolate-melted",
        title=say_later("Chocolate melts and does not scorch"),
        concern=CONCERN,
        band=Band(unit="°C", low=38.0, high=85.0, fails_below=31.0, fails_above=100.0),
        source="common_practice",
        sources=("common_practice", "beckett_2009"),
        formula=say_later(
            "warmest that the bowl gets with the chocolate in it, heat of mixing counted"
        ),
        look=_chocolate,
        too_low=Side(
            why=say_later("too cool to melt all of it, so grains stay"),
            advice=say_later("Bring it to 40 to 45 °C and blend."),
        ),
        too_high=Side(
            why=say_later("hot enough to scorch its milk and its sugar"),
            advice=say_later("Pour the hot liquid over it off the heat, in three goes."),
        ),
    ),
)
