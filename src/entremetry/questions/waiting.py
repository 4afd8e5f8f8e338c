"""'Can it wait until then?': the limit of a part, the latest moment, and when it must thaw."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from entremetry.agenda.keeping import Limit
from entremetry.agenda.local_time import minutes_between, said
from entremetry.dessert.dessert import Dessert
from entremetry.errors import QuantityError, UnknownName
from entremetry.questions import said as amounts
from entremetry.questions.answer import Answer, Fact, Reply
from entremetry.questions.keeping import (
    FREEZER,
    FRIDGE,
    PLACES,
    TABLE,
    Kept,
    Waiting,
    waiting_named,
)
from entremetry.questions.question import Wait
from entremetry.words import say, say_as, say_later

KIND = "wait"
IN = {
    FREEZER: say_later("in the freezer"),
    FRIDGE: say_later("in the fridge"),
    TABLE: say_later("on the table"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Thaw:
    """What is still to do once it leaves the freezer, at its longest [s], and how that is known."""

    time: float
    because: str
    sources: tuple[str, ...] = ()


def wait(dessert: Dessert, asked: Wait, thaw: Thaw | None = None) -> Answer:
    """Whether a part may wait so long, or how long it may.

    `thaw` is what has to follow a wait in the freezer before it is served.

    Raises
    ------
    UnknownName
        If there is no such part, or it is not asked of in that place.
    QuantityError
        If the end of the wait is before its beginning.
    """
    part = waiting_named(dessert, asked.part)
    kept = _place(part, asked.where)
    minutes = _minutes(asked)
    after = thaw if kept.where == FREEZER else None
    facts = (*_limit_facts(kept, asked), *_thaw_facts(after, asked))
    reply, says = _reply(kept, minutes)
    return Answer(
        kind=KIND,
        question=_question(part, kept, minutes),
        reply=reply,
        says=says,
        facts=facts,
        checks=kept.checks,
    )


def _place(part: Waiting, where: str) -> Kept:
    known = {each.where: each for each in part.kept}
    if where:
        if where not in PLACES:
            raise UnknownName("place", where, PLACES)
        if where not in known:
            found = say("{part} in '{place}'", part=part.name, place=where)
            raise QuantityError(found, say_as("between two choices", " or ").join(known))
        return known[where]
    return next((each for each in part.kept if each.minutes), part.kept[0])


def _minutes(asked: Wait) -> int | None:
    if asked.time is not None and asked.until is not None:
        raise QuantityError(say("how long and until when"), say("one of the two"))
    if asked.time is not None:
        return round(asked.time / 60.0)
    if asked.until is None or asked.now is None:
        return None
    minutes = minutes_between(asked.now, asked.until)
    if minutes < 0:
        raise QuantityError(
            say("{moment}, which is past", moment=said(asked.until)),
            say("a moment after {now}", now=said(asked.now)),
        )
    return minutes


def _question(part: Waiting, kept: Kept, minutes: int | None) -> str:
    place = say(IN[kept.where])
    if minutes is None:
        return say("How long can it wait {place}: {part}?", place=place, part=part.name)
    return say(
        "Can it wait {time} {place}: {part}?", time=_time(minutes), place=place, part=part.name
    )


def _reply(kept: Kept, minutes: int | None) -> tuple[Reply, str]:
    if kept.minutes is None:
        return Reply.DEPENDS, say("It depends: {because}.", because=kept.because)
    if kept.minutes == 0:
        return Reply.NO, say("No: {because}.", because=kept.because)
    most = _time(kept.minutes)
    if minutes is None:
        return Reply.YES, say("Up to {time}: {because}.", time=most, because=kept.because)
    if minutes <= kept.minutes:
        return Reply.YES, say("Yes: it keeps {time}.", time=most)
    if kept.limit is Limit.HABIT and not kept.stated:
        return Reply.DEPENDS, say(
            "Only if you have tried it: {time} is usual, and no source says more.", time=most
        )
    return Reply.NO, say("No: {time} at most.", time=most)


def _limit_facts(kept: Kept, asked: Wait) -> Iterator[Fact]:
    if kept.minutes is None or kept.minutes == 0:
        yield Fact(text=say("Nothing says how long."), because=kept.because, source=kept.source)
    else:
        yield Fact(
            text=say("It keeps {time} at most.", time=_time(kept.minutes)),
            because=kept.because,
            source=kept.source,
        )
        if asked.now is not None:
            latest = asked.now.astimezone(UTC) + timedelta(minutes=kept.minutes)
            moment = said(latest.astimezone(asked.now.tzinfo))
            yield Fact(text=say("If it begins to wait now, until {moment}.", moment=moment))
    if kept.write:
        yield Fact(text=say("If you know better, write it: {place}.", place=kept.write))
    if kept.limit is Limit.SAFETY:
        yield Fact(
            text=say("Your food rules, your thermometer and your senses decide."),
            because=say("this is about what spoils, not about looks"),
        )


def _thaw_facts(thaw: Thaw | None, asked: Wait) -> Iterator[Fact]:
    if thaw is None:
        return
    time = amounts.time(thaw.time / 60.0)
    source = thaw.sources[0] if thaw.sources else ""
    yield Fact(
        text=say("From the freezer to the table: {time}.", time=time),
        because=thaw.because,
        source=source,
    )
    if asked.until is not None:
        yield Fact(text=_out_by(asked.until, thaw, asked.now))


def _out_by(until: datetime, thaw: Thaw, now: datetime | None) -> str:
    start = (until.astimezone(UTC) - timedelta(seconds=thaw.time)).astimezone(until.tzinfo)
    if now is not None and minutes_between(now, start) < 0:
        return say(
            "It should have left the freezer at {moment}: it is too late.", moment=said(start)
        )
    return say("Take it out of the freezer by {moment}.", moment=said(start))


def _time(minutes: int) -> str:
    return amounts.time(minutes)
