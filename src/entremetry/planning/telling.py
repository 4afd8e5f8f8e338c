"""Facts in plain words, with the names and the clock of whoever asks."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.planning.fact import Change, Conflict, Fact, FactKind
from entremetry.planning.task import Side
from entremetry.words import say, say_as

Namer = Callable[[str], str]
Clock = Callable[[int], str]


def as_is(name: str) -> str:
    """Call a thing by its id."""
    return name


def minute(number: int) -> str:
    """Tell a time as a count of minutes."""
    return say("minute {number}", number=number)


def told_conflict(
    conflict: Conflict, *, name: Namer = as_is, clock: Clock = minute
) -> tuple[str, ...]:
    """Return a sentence for each fact of a conflict, the same sentence once."""
    sentences = (told_fact(fact, name, clock) for fact in conflict.facts)
    return tuple(dict.fromkeys(sentences))


def told_fact(fact: Fact, name: Namer, clock: Clock) -> str:
    """Return one fact as a sentence."""
    named = [name(subject) for subject in fact.subjects]
    first = named[0] if named else ""
    long = duration(fact.minutes)
    hour, until = clock(fact.minutes), clock(fact.until)
    match fact.kind:
        case FactKind.LASTS:
            return say("'{task}' takes at least {time}", task=first, time=long)
        case FactKind.WAIT_MOST:
            return say("the wait in '{task}' may last at most {time}", task=first, time=long)
        case FactKind.AT_LEAST:
            return say("{ends}: at least {time}", ends=ends(fact, named), time=long)
        case FactKind.AT_MOST:
            return say("{ends}: at most {time}", ends=ends(fact, named), time=long)
        case FactKind.SERVICE:
            return say("'{task}' is served at {hour}", task=first, hour=hour)
        case FactKind.EARLIEST:
            return say("'{task}' starts no earlier than {hour}", task=first, hour=hour)
        case FactKind.LATEST:
            return say("'{task}' is over by {hour}", task=first, hour=hour)
        case FactKind.HORIZON:
            return say("all of it lies between {hour} and {until}", hour=hour, until=until)
        case FactKind.ABSENCE:
            return say(
                "{person} has no free hands between {hour} and {until}",
                person=first,
                hour=hour,
                until=until,
            )
        case FactKind.SESSION:
            return say("{person} works until {hour}", person=first, hour=hour)
        case FactKind.OFFERED:
            return say(
                "{person} does not work between {hour} and {until}",
                person=first,
                hour=hour,
                until=until,
            )
        case _:
            return told_share(fact, named, long)


def told_share(fact: Fact, named: list[str], long: str) -> str:
    """Return a fact of what several tasks share: hands, or a thing."""
    first, others = named[0] if named else "", listed(named[1:], quoted=True)
    if fact.kind is FactKind.CAPACITY:
        return say("there is no more of '{thing}' than {number}", thing=first, number=fact.minutes)
    if fact.kind is FactKind.HANDS_WANTED:
        every = listed(named, quoted=True)
        return say("{tasks} need {time} of hands in that time", tasks=every, time=long)
    if fact.kind is FactKind.HANDS_FREE:
        people = listed(named)
        return say("{people} can give {time} of hands in that time", people=people, time=long)
    if fact.kind is FactKind.USE_WANTED:
        return say(
            "{tasks} need '{thing}' for {time} in all in that time",
            tasks=others,
            thing=first,
            time=long,
        )
    return say("'{thing}' is there for {time} in all in that time", thing=first, time=long)


def ends(fact: Fact, named: list[str]) -> str:
    """Say from which end of one task to which end of another."""
    words = {Side.START.value: say("the start"), Side.END.value: say("the end")}
    leaving, reaching = (words[side] for side in fact.sides)
    return say(
        "from {leaving} of '{first}' to {reaching} of '{second}'",
        leaving=leaving,
        first=named[0],
        reaching=reaching,
        second=named[1],
    )


def told_change(change: Change, *, name: Namer = as_is, clock: Clock = minute) -> str:
    """Return a change as advice."""
    fact, by = change.fact, change.by
    named = [name(subject) for subject in fact.subjects]
    first, longer = named[0] if named else "", duration(by)
    was, later, earlier = (clock(fact.minutes + move) for move in (0, by, -by))
    match fact.kind:
        case FactKind.SERVICE:
            return say("serve '{task}' at {hour} instead of {was}", task=first, hour=later, was=was)
        case FactKind.LATEST:
            return say(
                "let '{task}' end by {hour} instead of {was}", task=first, hour=later, was=was
            )
        case FactKind.EARLIEST:
            return say(
                "start '{task}' at {hour} instead of {was}", task=first, hour=earlier, was=was
            )
        case FactKind.SESSION:
            return say(
                "let {person} work {time} longer, until {hour}",
                person=first,
                time=longer,
                hour=later,
            )
        case FactKind.OFFERED:
            until = clock(fact.until)
            return say(
                "let {person} work between {hour} and {until} too",
                person=first,
                hour=was,
                until=until,
            )
        case FactKind.CAPACITY:
            return say(
                "have {more} more of '{thing}': {number}",
                more=by,
                thing=first,
                number=fact.minutes + by,
            )
        case FactKind.WAIT_MOST:
            return say(
                "let the wait in '{task}' last {time} longer than {was}",
                task=first,
                time=longer,
                was=duration(fact.minutes),
            )
        case FactKind.AT_MOST:
            return say(
                "{ends}: {time} more than {was}",
                ends=ends(fact, named),
                time=longer,
                was=duration(fact.minutes),
            )
        case _:
            return say("let everything end {time} later", time=longer)


def duration(minutes: int) -> str:
    """Return minutes as days, hours and minutes."""
    days, rest = divmod(minutes, 1440)
    hours, rest = divmod(rest, 60)
    parts = [(days, say("d")), (hours, "h"), (rest, "min")]
    return " ".join(f"{count} {unit}" for count, unit in parts if count) or "0 min"


def listed(names: list[str], *, quoted: bool = False) -> str:
    """Return names as a list in words."""
    shown = [f"'{name}'" if quoted else name for name in names]
    if len(shown) > 6:
        shown = [*shown[:5], say("{number} more", number=len(shown) - 5)]
    *most, last = shown or [""]
    joint = say_as("between two things", " and ")
    return f"{', '.join(most)}{joint}{last}" if most else last
