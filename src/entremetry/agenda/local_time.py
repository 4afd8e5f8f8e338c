"""The kitchen's clock and whole minutes, right over the change of daylight saving."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from entremetry.errors import QuantityError
from entremetry.words import quoted, say, say_later, weekday_and_date

WRITTEN = say_later("a local date and time, such as 2026-11-28 19:00")
FIRST_YEAR, LAST_YEAR = 1970, 2999


def local_time(text: str, zone: ZoneInfo) -> datetime:
    """Read '2026-11-28 19:00' as a time in a zone; one written with its offset is taken over.

    Seconds are left off. Of an hour that comes twice in autumn the first is meant; write the
    offset for the second.

    Raises
    ------
    QuantityError
        If it is no such time, too far off, or one that the clocks leave out in spring.
    """
    try:
        found = datetime.fromisoformat(text.strip())
    except ValueError:
        raise QuantityError(quoted(text), say(WRITTEN)) from None
    if len(text.strip()) <= len("2026-11-28"):
        raise QuantityError(say("'{text}', a day without an hour", text=text), say(WRITTEN))
    if not FIRST_YEAR <= found.year <= LAST_YEAR:
        raise QuantityError(
            say("'{text}', in the year {year}", text=text, year=found.year),
            say("a year from {first} to {last}", first=FIRST_YEAR, last=LAST_YEAR),
        )
    found = found.replace(second=0, microsecond=0)
    if found.tzinfo is not None:
        return found.astimezone(zone)
    local = found.replace(tzinfo=zone)
    if not _exists(local):
        raise QuantityError(
            say("'{text}', which the clocks of {zone} leave out", text=text, zone=zone.key),
            say("an hour that exists that day"),
        )
    return local


def _exists(local: datetime) -> bool:
    """Whether a local time comes back unchanged from universal time."""
    utc = local.astimezone(UTC)
    return utc.astimezone(local.tzinfo).replace(tzinfo=None) == local.replace(tzinfo=None)


def elapsed(start: datetime, end: datetime) -> timedelta:
    """The time that passes between two moments.

    The difference of two times of one zone would be that of their clock hands, which daylight
    saving turns.
    """
    return end.astimezone(UTC) - start.astimezone(UTC)


def minutes_between(start: datetime, end: datetime) -> int:
    """Minutes that pass from one moment to another, whatever the clocks are set to meanwhile."""
    return round(elapsed(start, end).total_seconds() / 60.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """Whole minutes from `origin`, a moment with its zone."""

    origin: datetime
    zone: ZoneInfo

    def minute(self, moment: datetime) -> int:
        """Minutes that pass from the origin to a moment, rounded down.

        Raises
        ------
        QuantityError
            If the moment does not tell its zone.
        """
        if moment.tzinfo is None:
            found = say("{moment} without a zone", moment=f"{moment:%Y-%m-%d %H:%M}")
            raise QuantityError(found, say("a time with its zone"))
        return int(elapsed(self.origin, moment).total_seconds() // 60)

    def moment(self, minute: int) -> datetime:
        """The local time at a minute."""
        utc = self.origin.astimezone(UTC) + timedelta(minutes=minute)
        return utc.astimezone(self.zone)

    def at(self, day: date, hour: str) -> int:
        """The minute of a local hour '18:30' or '24:00'; one left out in spring is moved on."""
        hours, minutes = (int(part) for part in hour.split(":"))
        if hours == 24:
            day, hours = day + timedelta(days=1), 0
        return self.minute(datetime.combine(day, time(hours, minutes), self.zone))

    def said(self, minute: int) -> str:
        """A minute as day and hour: 'Saturday 28 November, 19:00'."""
        return said(self.moment(minute))


def said(moment: datetime) -> str:
    """A moment as day and hour in words."""
    return say("{day}, {hour}", day=day(moment), hour=clock(moment))


def day(moment: datetime) -> str:
    """Weekday, day and month in full."""
    return weekday_and_date(moment.date())


def clock(moment: datetime) -> str:
    """Hour and minute: '18:30'."""
    return f"{moment:%H:%M}"
