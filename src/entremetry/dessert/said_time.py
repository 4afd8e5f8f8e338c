"""Durations in a sentence: 10 minutes, 1 h 30 min, 8 to 10 minutes, overnight."""

from __future__ import annotations

import re
from dataclasses import dataclass

from entremetry.errors import QuantityError
from entremetry.quantities import format_duration
from entremetry.quantities.number import NUMBER_PATTERN, number

_UNITS: tuple[tuple[str, float], ...] = (
    (r"s|secs?|seconds?|secondes?", 1.0),
    (r"m|mins?|minutes?|mn", 60.0),
    (r"h|hrs?|hours?|heures?", 3600.0),
    (r"days?|jours?", 86400.0),
)
_UNIT = "|".join(f"(?:{words})" for words, _ in _UNITS)
_TERM = re.compile(
    rf"(?<![\w.,/-])(?P<low>{NUMBER_PATTERN})(?:\s?(?:-|–|—|to|or|à|ou)\s?(?P<high>{NUMBER_PATTERN}))?"
    rf"[\s-]?(?P<unit>{_UNIT})(?![^\W\d_])",
    re.IGNORECASE,
)
_MORE = re.compile(r"\s?(?:and|et)?\s?")
_SOME = re.compile(
    r"overnight|a few (?:minutes|hours)|several hours|half an hour|an hour|une nuit|"
    r"quelques minutes",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidTime:
    """`seconds` is None where the words leave open how long; `either` has both ends of a range."""

    written: str
    seconds: float | None = None
    either: tuple[str, ...] = ()


def said_times(text: str) -> tuple[SaidTime, ...]:
    """Every duration that a text states, '1 h 30 min' as one."""
    found: list[tuple[int, int, SaidTime]] = []
    for term in _TERM.finditer(text):
        time = _time(term)
        if time is None:
            continue
        before = found[-1] if found else None
        if before and _continues(text, before, term.start(), time):
            joined = (before[2].seconds or 0.0) + (time.seconds or 0.0)
            written = text[before[0] : term.end()]
            found[-1] = (before[0], term.end(), SaidTime(written=written, seconds=joined))
        else:
            found.append((term.start(), term.end(), time))
    found.extend((m.start(), m.end(), SaidTime(written=m.group())) for m in _SOME.finditer(text))
    return tuple(time for _, _, time in sorted(found, key=lambda each: each[0]))


def _continues(text: str, before: tuple[int, int, SaidTime], start: int, time: SaidTime) -> bool:
    _, end, last = before
    if last.seconds is None or time.seconds is None or time.seconds >= last.seconds:
        return False
    return bool(_MORE.fullmatch(text[end:start])) and time.seconds < 3600.0


def _time(term: re.Match[str]) -> SaidTime | None:
    unit = next(f for words, f in _UNITS if re.fullmatch(words, term["unit"], re.IGNORECASE))
    try:
        ends = [number(said) * unit for said in (term["low"], term["high"]) if said]
    except QuantityError:
        return None
    if len(ends) == 1:
        return SaidTime(written=term.group(), seconds=ends[0])
    return SaidTime(written=term.group(), either=tuple(format_duration(end) for end in ends))
