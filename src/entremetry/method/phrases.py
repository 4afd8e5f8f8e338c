"""Pieces that sentences about steps are made of, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.quantities.oven import FAN_CORRECTION, oven_temperature
from entremetry.quantities.printing import duration_parts, format_temperature
from entremetry.words import say, say_count


def spoken(seconds: float) -> str:
    """Duration in words: 10 minutes, 1 hour 30 minutes."""
    return " ".join(_in_words(number, unit) for number, unit in duration_parts(seconds))


def _in_words(number: int, unit: str) -> str:
    """One part of a duration."""
    match unit:
        case "day":
            return say_count("{number} day", "{number} days", number)
        case "h":
            return say_count("{number} hour", "{number} hours", number)
        case "min":
            return say_count("{number} minute", "{number} minutes", number)
    return say_count("{number} second", "{number} seconds", number)


def listed(names: Sequence[str]) -> str:
    """Names with one article where the language has one: the cream, milk and vanilla."""
    *most, last = _short(names)
    if most:
        return say("the {names} and {last}", names=", ".join(most), last=last)
    return say("the {name}", name=last)


def soaked(names: Sequence[str]) -> str:
    """Names of what has been soaked before."""
    *most, last = _short(names)
    if most:
        return say("the soaked {names} and {last}", names=", ".join(most), last=last)
    return say("the soaked {name}", name=last)


def _short(names: Sequence[str]) -> list[str]:
    """Names as they stand inside a sentence, up to their comma unless two would be alike."""
    full = [in_sentence(name) for name in names]
    short = [name.partition(",")[0] for name in full]
    return short if len(set(short)) == len(full) else full


def in_sentence(name: str) -> str:
    """Name without its capital unless it is an abbreviation."""
    return name if name[1:2].isupper() else name[:1].lower() + name[1:]


def capital(sentence: str) -> str:
    """Sentence with a capital."""
    return sentence[:1].upper() + sentence[1:]


def oven(kelvin: float, *, written_for_fan: bool, oven_fan: bool | None) -> str:
    """Oven setting, for the reader's oven if it is known."""
    fan = written_for_fan if oven_fan is None else oven_fan
    shift = FAN_CORRECTION * (int(written_for_fan) - int(fan))
    return oven_temperature(kelvin + shift, fan=fan)


def lasting(seconds: float | None) -> str:
    """How long, as the end of a sentence; nothing if it is not stated."""
    return "" if seconds is None else say(" for {time}", time=spoken(seconds))


def taking(seconds: float | None) -> str:
    """How long it takes about, as the end of a sentence; nothing if it is not stated."""
    return "" if seconds is None else say(", about {time}", time=spoken(seconds))


def warmed(kelvin: float | None) -> str:
    """To what temperature; nothing if it is not stated."""
    if kelvin is None:
        return ""
    return say(" to {temperature}", temperature=format_temperature(kelvin))


def kept_at(kelvin: float | None) -> str:
    """At what temperature; nothing if it is not stated."""
    if kelvin is None:
        return ""
    return say(" at {temperature}", temperature=format_temperature(kelvin))
