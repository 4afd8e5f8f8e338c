"""The nutrition declaration: one row for each value that a jurisdiction wants, in its order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from entremetry.labels import eu_rounding, us_rounding
from entremetry.labels.content import Content
from entremetry.labels.declared import Declared
from entremetry.labels.energy import (
    EU_SOURCE,
    US_SOURCE,
    Fuel,
    eu_kilocalories,
    eu_kilojoules,
    shares,
    us_kilocalories,
)
from entremetry.labels.english import percent
from entremetry.labels.nutrition import Amount, Missing, amounts, fuel
from entremetry.labels.panel_line import EU_LINES, US_LINES, Line
from entremetry.sources.figure import Figure
from entremetry.words import say, say_later

HUNDRED_GRAMS = 0.1
ONLY_IF_ANY = ("polyols",)
FUELS = {
    "carbohydrate": say_later("carbohydrate"),
    "polyols": say_later("polyols"),
    "erythritol": say_later("erythritol"),
    "protein": say_later("protein"),
    "fat": say_later("fat"),
    "alcohol": say_later("alcohol"),
    "organic_acids": say_later("organic acids"),
    "fibre": say_later("fibre"),
}
"""What gives energy, in words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One value of the declaration, in 100 g and in a serving.

    `key` ends in the unit of both numbers; these are not rounded, `declared_*` are. `highest_*` are
    more where a source leaves a blank, and so is `daily_value_up_to_percent`. `level` 1 stands
    below the row before ('of which').
    """

    key: str
    level: int
    per_100g: float
    per_serving: float
    highest_100g: float
    highest_serving: float
    declared_100g: Declared
    declared_serving: Declared
    figure: Figure
    missing: tuple[Missing, ...] = ()
    daily_value_percent: int | None = None
    daily_value_up_to_percent: int | None = None


def eu_rows(serving: Content, parts: tuple[Content, ...]) -> tuple[Row, ...]:
    """The rows of a European declaration; energy in kJ, then in kcal."""
    energy = (
        _energy("energy_kj", "kJ", eu_kilojoules, eu_rounding.energy, serving, EU_SOURCE),
        _energy("energy_kcal", "kcal", eu_kilocalories, eu_rounding.energy, serving, EU_SOURCE),
    )
    return energy + _rows(EU_LINES, serving, parts)


def us_rows(serving: Content, parts: tuple[Content, ...]) -> tuple[Row, ...]:
    """The rows of an American declaration for a serving, with percent of the daily value."""

    def rounding(value: float, unit: str) -> Declared:
        return us_rounding.calories(value)

    energy = _energy("energy_kcal", "kcal", us_kilocalories, rounding, serving, US_SOURCE)
    return (energy, *_rows(US_LINES, serving, parts))


def _energy(
    key: str,
    unit: str,
    of: Callable[..., float],
    rounding: Callable[[float, str], Declared],
    serving: Content,
    source: str,
) -> Row:
    value = of(fuel(serving))
    per_100g = value * HUNDRED_GRAMS / serving.mass
    return Row(
        key=key,
        level=0,
        per_100g=per_100g,
        per_serving=value,
        highest_100g=per_100g,
        highest_serving=value,
        declared_100g=rounding(per_100g, unit),
        declared_serving=rounding(value, unit),
        figure=Figure(
            value=value,
            unit=unit,
            because=_energy_because(fuel(serving)),
            sources=(source,),
            relative_error=0.05,
        ),
    )


def _energy_because(burnt: Fuel) -> str:
    named = [f"{say(FUELS[name])} {percent(share)}" for name, share in shares(burnt)[:3]]
    if not named:
        return say("nothing in it gives energy")
    return say("fixed factors; {shares}", shares=", ".join(named))


def _rows(lines: tuple[Line, ...], serving: Content, parts: tuple[Content, ...]) -> tuple[Row, ...]:
    found = amounts(serving, parts)
    return tuple(
        _row(line, found[line.nutrient], serving.mass)
        for line in lines
        if found[line.nutrient].highest > 0.0 or line.nutrient not in ONLY_IF_ANY
    )


def _row(line: Line, amount: Amount, mass: float) -> Row:
    value, highest = amount.known * line.factor, amount.highest * line.factor
    share = HUNDRED_GRAMS / mass
    return Row(
        key=line.key,
        level=line.level,
        per_100g=value * share,
        per_serving=value,
        highest_100g=highest * share,
        highest_serving=highest,
        declared_100g=_declared(line.rounding, value * share, highest * share),
        declared_serving=_declared(line.rounding, value, highest),
        figure=amount.figure,
        missing=amount.missing,
        daily_value_percent=_percent(line, amount.known),
        daily_value_up_to_percent=_percent(line, amount.highest),
    )


def _percent(line: Line, kilograms: float) -> int | None:
    if not line.in_percent:
        return None
    return us_rounding.daily_value_percent(line.nutrient, kilograms)


def _declared(rounding: Callable[[float], Declared], value: float, highest: float) -> Declared:
    """The rounded value, or the span in which it lies where a blank could change it."""
    low, high = rounding(value), rounding(highest)
    if low == high:
        return low
    bottom = low.number if not low.less_than else low.number * 0
    return replace(low, number=bottom, less_than=False, up_to=high.number)
