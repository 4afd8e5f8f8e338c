"""Checks of time and warmth for food that spoils: cautions only, no promise of any kind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from entremetry.checks.band import Band
from entremetry.checks.bench import Bench
from entremetry.checks.bench_component import BenchComponent
from entremetry.checks.rule import DESSERT, Finding, Rule, Side
from entremetry.checks.saying import amount
from entremetry.method.cooking import CoolTo
from entremetry.method.waiting import FreezeUntil, Hold, Rest, ThawUntil
from entremetry.words import say, say_later

CONCERN = "spoiling"
WARM_FROM, WARM_TO = 330.15, 294.15  # K, 57 and 21 °C: fda_food_code
CHILLED = 281.15  # K, 8 °C
DOUBTED = 343.15  # K, 70 °C
MOIST = 0.4  # water share from which food spoils: our_own


def _raw(bench: Bench, tag: str, what: str) -> Iterator[Finding]:
    for each in bench.components:
        for name in each.tagged(tag):
            value = _reached(each, name) - 273.15
            if each.steps:
                yield Finding(
                    component=each.id,
                    value=value,
                    error=2.0,
                    fact=say(
                        "{name} ({what}) comes to {amount}",
                        name=each.lines[name].name,
                        what=what,
                        amount=amount(value, "°C"),
                    ),
                )


def _reached(each: BenchComponent, name: str) -> float:
    """Temperature of a line: as a step states it, else by what is poured on hot, but no more
    than leaves a doubt, for nobody measured it there. [K]"""
    return max(each.peaks[name], min(each.highest(name), DOUBTED))


def _raw_egg(bench: Bench) -> Iterator[Finding]:
    yield from _raw(bench, "raw-egg", say("raw egg"))


def _raw_flour(bench: Bench) -> Iterator[Finding]:
    yield from _raw(bench, "raw-flour", say("raw flour"))


def _spoils(each: BenchComponent) -> bool:
    delicate = each.share.milk_fat + each.share.lactose > 0.0 or bool(each.tagged("raw-egg"))
    return delicate and each.share.water > MOIST and not each.is_baked


def _cooling(bench: Bench) -> Iterator[Finding]:
    for each in bench.components:
        if not _spoils(each):
            continue
        seconds, starts = 0.0, False
        for moment in each.moments:
            start = moment.before if moment.before is not None else 293.15
            if isinstance(moment.step, CoolTo) and moment.step.time is not None:
                starts = starts or start >= WARM_FROM
                seconds += moment.step.time if start > WARM_TO else 0.0
        if not starts:
            continue
        value = seconds / 60.0
        yield Finding(
            component=each.id,
            value=value,
            error=0.2 * value,
            fact=say(
                "The method cools it for {amount} from 57 °C towards 21 °C",
                amount=amount(value, "min"),
            ),
        )


def _chilled(bench: Bench) -> Iterator[Finding]:
    value = _hours(bench.assembly, warm=False)
    if value > 0.0:
        yield Finding(
            component=DESSERT,
            value=value,
            fact=say("It is kept in the cold, not frozen, for {amount}", amount=amount(value, "h")),
        )


def _warm(bench: Bench) -> Iterator[Finding]:
    value = _hours(bench.assembly, warm=True)
    if value > 0.0:
        yield Finding(
            component=DESSERT,
            value=value,
            fact=say("It stands warmer than 8 °C for {amount}", amount=amount(value, "h")),
        )


def _hours(steps: Sequence[object], *, warm: bool) -> float:
    """Hours of waiting out of the freezer, in the warm or in the cold. [h]"""
    total = 0.0
    for step in steps:
        match step:
            case FreezeUntil():
                continue
            case ThawUntil():
                is_warm = step.where == "room"
            case Hold() | Rest():
                is_warm = step.temperature is not None and step.temperature > CHILLED
            case _:
                continue
        total += (step.time or 0.0) / 3600.0 if is_warm is warm else 0.0
    return total


def _fridge(bench: Bench) -> Iterator[Finding]:
    for owned in bench.kitchen.fridges if bench.kitchen else ():
        value = owned.temperature - 273.15
        yield Finding(
            component=DESSERT,
            value=value,
            error=1.0,
            fact=say("{name} is at {amount}", name=owned.name, amount=amount(value, "°C")),
        )


def _freezer(bench: Bench) -> Iterator[Finding]:
    if not bench.is_frozen:
        return
    for owned in bench.kitchen.freezers if bench.kitchen else ():
        value = owned.temperature - 273.15
        yield Finding(
            component=DESSERT,
            value=value,
            error=1.0,
            fact=say("{name} is at {amount}", name=owned.name, amount=amount(value, "°C")),
        )


RULES = (
    Rule(
        id="raw-egg",
        title=say_later("Egg is heated"),
        concern=CONCERN,
        band=Band(unit="°C", low=71.0, fails_below=60.0),
        source="fda_food_code",
        formula=say_later(
            "highest temperature that a step states; hot syrup poured on counts up to 70 °C"
        ),
        look=_raw_egg,
        too_low=Side(
            why=say_later("less than the 71 °C that is advised for egg"),
            advice=say_later(
                "Use pasteurised egg of the same mass, or heat it and measure. "
                "Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="raw-flour",
        title=say_later("Flour is heated"),
        concern=CONCERN,
        band=Band(unit="°C", low=71.0, fails_below=60.0),
        source="from_memory",
        formula=say_later(
            "highest temperature that a step states; what is poured on counts up to 70 °C"
        ),
        look=_raw_flour,
        too_low=Side(
            why=say_later("and raw flour is not cleaned of germs"),
            advice=say_later(
                "Bake or cook it first. Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="cooling-in-two-stages",
        title=say_later("It cools fast enough"),
        concern=CONCERN,
        band=Band(unit="min", high=120.0, fails_above=240.0),
        source="fda_food_code",
        formula=say_later(
            "sum of the cooling steps between 57 and 21 °C, as the method states their times"
        ),
        look=_cooling,
        too_high=Side(
            why=say_later("longer than the 2 h of the two-stage rule"),
            advice=say_later(
                "Cool it in a shallow bowl in ice water, to 5 °C within 6 h in all. "
                "Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="chilled-life",
        title=say_later("Days in the fridge"),
        concern=CONCERN,
        band=Band(unit="h", high=72.0, fails_above=168.0),
        source="common_practice",
        sources=("common_practice", "fda_food_code"),
        formula=say_later(
            "sum of resting, holding and thawing in the cold, as the method states them"
        ),
        look=_chilled,
        too_high=Side(
            why=say_later("longer than the 2 to 3 days that are usual"),
            advice=say_later(
                "Keep it frozen and thaw it later. "
                "Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="hours-in-the-warm",
        title=say_later("Hours in the warm"),
        concern=CONCERN,
        band=Band(unit="h", high=2.0, fails_above=4.0),
        source="fda_food_code",
        formula=say_later("sum of thawing at room temperature and of holding above 8 °C"),
        look=_warm,
        too_high=Side(
            why=say_later("long for cream and egg"),
            advice=say_later(
                "Thaw it in the fridge and bring it to the table late. "
                "Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="fridge-temperature",
        title=say_later("The fridge is cold"),
        concern=CONCERN,
        band=Band(unit="°C", high=5.0, fails_above=8.0),
        source="fda_food_code",
        sources=("fda_food_code", "food_safety_england_2013"),
        formula=say_later("as the kitchen document states it"),
        look=_fridge,
        too_high=Side(
            why=say_later("warmer than cream and egg should be kept"),
            advice=say_later(
                "Set it to 3 or 4 °C and measure in the middle of the shelf. "
                "Your food rules, your thermometer and your senses decide."
            ),
        ),
    ),
    Rule(
        id="freezer-temperature",
        title=say_later("The freezer is cold"),
        concern=CONCERN,
        band=Band(unit="°C", high=-17.5, fails_above=-12.0),
        source="eu_89_108",
        formula=say_later("as the kitchen document states it"),
        look=_freezer,
        too_high=Side(
            why=say_later("warmer than the -18 °C that frozen food is kept at"),
            advice=say_later("Set it colder, take frost out, do not load it all at once."),
        ),
    ),
)
