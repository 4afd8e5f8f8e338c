"""Pieces that English sentences are made of."""

from __future__ import annotations

from collections.abc import Sequence

from entremetry.quantities.oven import FAN_CORRECTION, oven_temperature
from entremetry.quantities.printing import format_duration

SPELLED = {"s": "second", "min": "minute", "h": "hour", "day": "day", "days": "day"}


def spoken(seconds: float) -> str:
    """Duration in words: 10 minutes, 1 hour 30 minutes."""
    words = []
    count = ""
    for word in format_duration(seconds).split():
        unit = SPELLED.get(word)
        words.append(word if unit is None else unit if count == "1" else f"{unit}s")
        count = word
    return " ".join(words)


def listed(names: Sequence[str]) -> str:
    """Names with one article: the cream, milk and vanilla."""
    *most, last = _short(names)
    return f"the {', '.join(most)} and {last}" if most else f"the {last}"


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
