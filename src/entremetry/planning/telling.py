"""Facts in plain words, with the names and the clock of whoever asks."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.planning.fact import Change, Conflict, Fact, FactKind
from entremetry.planning.task import Side

Namer = Callable[[str], str]
Clock = Callable[[int], str]


def as_is(name: str) -> str:
    """Call a thing by its id."""
    return name


def minute(number: int) -> str:
    """Tell a time as a count of minutes."""
    return f"minute {number}"


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
    between = f"between {clock(fact.minutes)} and {clock(fact.until)}"
    match fact.kind:
        case FactKind.LASTS:
            return f"'{first}' takes at least {long}"
        case FactKind.WAIT_MOST:
            return f"the wait in '{first}' may last at most {long}"
        case FactKind.AT_LEAST:
            return f"{ends(fact, named)}: at least {long}"
        case FactKind.AT_MOST:
            return f"{ends(fact, named)}: at most {long}"
        case FactKind.SERVICE:
            return f"'{first}' is served at {clock(fact.minutes)}"
        case FactKind.EARLIEST:
            return f"'{first}' starts no earlier than {clock(fact.minutes)}"
        case FactKind.LATEST:
            return f"'{first}' is over by {clock(fact.minutes)}"
        case FactKind.HORIZON:
            return f"all of it lies {between}"
        case FactKind.ABSENCE:
            return f"{first} has no free hands {between}"
        case FactKind.SESSION:
            return f"{first} works until {clock(fact.minutes)}"
        case FactKind.OFFERED:
            return f"{first} does not work {between}"
        case FactKind.CAPACITY:
            return f"there is no more of '{first}' than {fact.minutes}"
        case FactKind.HANDS_WANTED:
            return f"{listed(named, quoted=True)} need {long} of hands in that time"
        case FactKind.HANDS_FREE:
            return f"{listed(named)} can give {long} of hands in that time"
        case FactKind.USE_WANTED:
            return f"{listed(named[1:], quoted=True)} need '{first}' for {long} in all in that time"
        case FactKind.USE_FREE:
            return f"'{first}' is there for {long} in all in that time"


def ends(fact: Fact, named: list[str]) -> str:
    """Say from which end of one task to which end of another."""
    words = {Side.START.value: "the start", Side.END.value: "the end"}
    leaving, reaching = (words[side] for side in fact.sides)
    return f"from {leaving} of '{named[0]}' to {reaching} of '{named[1]}'"


def told_change(change: Change, *, name: Namer = as_is, clock: Clock = minute) -> str:
    """Return a change as advice."""
    fact = change.fact
    named = [name(subject) for subject in fact.subjects]
    first = named[0] if named else ""
    by = duration(change.by)
    match fact.kind:
        case FactKind.SERVICE:
            now = fact.minutes + change.by
            return f"serve '{first}' at {clock(now)} instead of {clock(fact.minutes)}"
        case FactKind.LATEST:
            now = fact.minutes + change.by
            return f"let '{first}' end by {clock(now)} instead of {clock(fact.minutes)}"
        case FactKind.EARLIEST:
            now = fact.minutes - change.by
            return f"start '{first}' at {clock(now)} instead of {clock(fact.minutes)}"
        case FactKind.SESSION:
            return f"let {first} work {by} longer, until {clock(fact.minutes + change.by)}"
        case FactKind.OFFERED:
            return f"let {first} work between {clock(fact.minutes)} and {clock(fact.until)} too"
        case FactKind.CAPACITY:
            return f"have {change.by} more of '{first}': {fact.minutes + change.by}"
        case FactKind.WAIT_MOST:
            return f"let the wait in '{first}' last {by} longer than {duration(fact.minutes)}"
        case FactKind.AT_MOST:
            return f"{ends(fact, named)}: {by} more than {duration(fact.minutes)}"
        case _:
            return f"let everything end {by} later"


def duration(minutes: int) -> str:
    """Return minutes as days, hours and minutes."""
    days, rest = divmod(minutes, 1440)
    hours, rest = divmod(rest, 60)
    parts = [(days, "d"), (hours, "h"), (rest, "min")]
    return " ".join(f"{count} {unit}" for count, unit in parts if count) or "0 min"


def listed(names: list[str], *, quoted: bool = False) -> str:
    """Return names as a list in words."""
    shown = [f"'{name}'" if quoted else name for name in names]
    if len(shown) > 6:
        shown = [*shown[:5], f"{len(shown) - 5} more"]
    *most, last = shown or [""]
    return f"{', '.join(most)} and {last}" if most else last
