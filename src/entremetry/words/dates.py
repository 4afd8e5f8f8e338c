"""Days in the language that is spoken."""

from __future__ import annotations

from datetime import date

from entremetry.words.language import ENGLISH, current

FIRST = {"fr": "1er"}
"""Languages that say 'the first' of a month where they say 'two' of the next day."""


def full_date(day: date) -> str:
    """Day, month and year: '28 November 2026', '28 novembre 2026'."""
    if current() is ENGLISH:
        return f"{day.day} {day:%B %Y}"
    return _in_pattern(day, f"{_number(day)} MMMM y")


def weekday_and_date(day: date) -> str:
    """Weekday, day and month: 'Saturday 28 November', 'samedi 28 novembre'."""
    if current() is ENGLISH:
        return f"{day:%A} {day.day} {day:%B}"
    return _in_pattern(day, f"EEEE {_number(day)} MMMM")


def weekday(day: date) -> str:
    """'Saturday', 'samedi'."""
    return f"{day:%A}" if current() is ENGLISH else _in_pattern(day, "EEEE")


def short_weekday(day: date) -> str:
    """'Sat', 'sam.'."""
    return f"{day:%a}" if current() is ENGLISH else _in_pattern(day, "EEE")


def _number(day: date) -> str:
    first = FIRST.get(current().code)
    return f"'{first}'" if first and day.day == 1 else "d"


def _in_pattern(day: date, pattern: str) -> str:
    """A day in a pattern of the Unicode locale data."""
    from babel.dates import format_date

    return format_date(day, pattern, locale=current().code)
