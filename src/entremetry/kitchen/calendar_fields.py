"""Dates and time zones as fields of a document, refused in words."""

from __future__ import annotations

from datetime import date
from zoneinfo import available_timezones

from entremetry.errors import QuantityError, nearest_names
from entremetry.words import quoted, say


def a_date(text: str) -> str:
    """A date as written by ISO 8601.

    Raises
    ------
    QuantityError
        If there is no such date.
    """
    try:
        date.fromisoformat(text)
    except ValueError:
        raise QuantityError(quoted(text), say("a date such as 2026-11-28")) from None
    return text


def a_time_zone(name: str) -> str:
    """The name of a time zone of the IANA database.

    Raises
    ------
    QuantityError
        With the nearest names, if there is none.
    """
    known = available_timezones()
    if name not in known:
        nearest = nearest_names(name, known)
        raise QuantityError(quoted(name), say("a time zone such as Europe/Paris"), nearest)
    return name
