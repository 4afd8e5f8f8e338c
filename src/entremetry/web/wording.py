"""Numbers, dates and reasons as the pages say them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime

from markupsafe import Markup

from entremetry.dessert.batch_sheet import IngredientAmount
from entremetry.publish.typography import (
    NO_BREAK,
    grams,
    hours,
    millilitres,
    millimetres,
    per_cent,
)
from entremetry.sources import BIBLIOGRAPHY, Figure, Source, Standing
from entremetry.words import decimal, full_date, say, say_later


def density(value: float) -> str:
    """Density in kg/m3, said in grams per millilitre."""
    return decimal(f"{value / 1e3:.2f}") + f"{NO_BREAK}g/ml"


def area(value: float) -> str:
    """Area in m2, said in square centimetres."""
    return f"{value * 1e4:.0f}{NO_BREAK}cm²"


def megabytes(size: float) -> str:
    """Size in bytes, said in megabytes."""
    return say("{size} MB", size=decimal(f"{size / 1e6:.1f}"))


NOTICED = 0.005

SAID: Mapping[str, Callable[[float], str]] = {
    "kg": grams,
    "m3": millilitres,
    "m³": millilitres,
    "kg/m3": density,
    "kg/m³": density,
    "m2": area,
    "m²": area,
    "m": millimetres,
    "s": hours,
}


def said(value: float, unit: str) -> str:
    """A value in its SI unit, said as a cook reads it."""
    plain = SAID.get(unit)
    return plain(value) if plain else f"{decimal(f'{value:g}')}{NO_BREAK}{unit}".rstrip()


def figure(value: Figure) -> str:
    """Value of a figure."""
    return said(value.value, value.unit)


def interval(value: Figure) -> str:
    """Where a figure may lie and how wide that is; empty for an exact one."""
    if not value.relative_error:
        return ""
    told = say(
        "It may lie between {low} and {high} (± {share}).",
        low=said(value.low, value.unit),
        high=said(value.high, value.unit),
        share=per_cent(value.relative_error),
    )
    return told.replace("± ", f"±{NO_BREAK}")


STANDINGS: Mapping[Standing, str] = {
    Standing.PUBLISHED: say_later("published"),
    Standing.COMMON_PRACTICE: say_later("common practice, no source"),
    Standing.FROM_MEMORY: say_later("from memory, not yet checked"),
    Standing.OUR_OWN: say_later("computed or measured by us"),
}


def standing(source: Source) -> str:
    """How far a source can be trusted."""
    return say(STANDINGS[source.standing])


def cited(keys: tuple[str, ...]) -> tuple[Source, ...]:
    """Sources behind these keys, each once; an author's own words stand for themselves."""
    return tuple(
        BIBLIOGRAPHY.get(key) or Source(key=key, text=key) for key in dict.fromkeys(keys) if key
    )


def drift(line: IngredientAmount) -> Markup:
    """By how much a household measure is off, unless it says so itself or is not."""
    error = line.household_error or 0.0
    if abs(error) < NOTICED or "%" in line.household:
        return Markup("")
    share = per_cent(abs(error))
    words = say("{share} more", share=share) if error > 0 else say("{share} less", share=share)
    return Markup(' <span class="off">{}</span>').format(words)


def when(moment: datetime) -> str:
    """Moment in local time, to the minute."""
    local = moment.astimezone()
    return say("{day}, {hour}", day=full_date(local), hour=f"{local:%H:%M}")
