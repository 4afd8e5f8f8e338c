"""Hours, days and steps of a plan as every view of it says them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime

from entremetry.agenda.agenda import Agenda, AgendaSession, AgendaTask, Served
from entremetry.agenda.local_time import clock, day, minutes_between, said
from entremetry.publish import typography
from entremetry.publish.typography import NO_BREAK
from entremetry.words import say, say_as, say_count, short_weekday

VERBS: Mapping[str, Callable[[], str]] = {
    "weigh": lambda: say_as("a step in one word", "Weigh"),
    "soak": lambda: say_as("a step in one word", "Soak"),
    "mix": lambda: say_as("a step in one word", "Mix"),
    "melt": lambda: say_as("a step in one word", "Melt"),
    "simmer": lambda: say_as("a step in one word", "Simmer"),
    "cook-to": lambda: say_as("a step in one word", "Cook"),
    "cool-to": lambda: say_as("a step in one word", "Cool"),
    "strain": lambda: say_as("a step in one word", "Strain"),
    "whip": lambda: say_as("a step in one word", "Whip"),
    "fold": lambda: say_as("a step in one word", "Fold"),
    "roll": lambda: say_as("a step in one word", "Roll"),
    "cut": lambda: say_as("a step in one word", "Cut"),
    "bake": lambda: say_as("a step in one word", "Bake"),
    "pour": lambda: say_as("a step in one word", "Pour"),
    "place": lambda: say_as("a step in one word", "Place"),
    "fill": lambda: say_as("a step in one word", "Fill"),
    "freeze-until": lambda: say_as("a step in one word", "Freeze"),
    "unmould": lambda: say_as("a step in one word", "Unmould"),
    "glaze-at": lambda: say_as("a step in one word", "Glaze"),
    "thaw-until": lambda: say_as("a step in one word", "Thaw"),
    "rest": lambda: say_as("a step in one word", "Rest"),
    "hold": lambda: say_as("a step in one word", "Hold"),
    "serve": lambda: say_as("a step in one word", "Serve"),
}


def clock_from(moment: datetime, seen: datetime) -> str:
    """Hour and minute, after the short weekday where it is another day than `seen`."""
    if moment.date() == seen.date():
        return clock(moment)
    return f"{short_weekday(moment.date())}{NO_BREAK}{clock(moment)}"


def lasting(minutes: int) -> str:
    """Minutes as hours and minutes that stay on one line."""
    return typography.hours(60.0 * minutes).replace(" ", NO_BREAK)


def verb(task: AgendaTask) -> str:
    """What is done, in one word: 'Freeze' of a step that freezes until a temperature."""
    return verb_of(task.kind)


def verb_of(kind: str) -> str:
    """The one word for a kind of step."""
    known = VERBS.get(kind)
    return known() if known else kind.partition("-")[0].capitalize()


def what(task: AgendaTask) -> str:
    """What it is done to: the component, or the dessert where the step is about all of it."""
    name = task.component_name or task.dessert_name
    if task.rounds <= 1:
        return name
    share = say("{number} of {all}", number=task.round, all=task.rounds)
    return f"{name}, {share.replace(' ', NO_BREAK)}"


def title(*tasks: AgendaTask) -> str:
    """A step, or several done in one go, in a few words: 'Freeze · Vanilla mousse'."""
    joint = say_as("between two things", " and ")
    verbs = joint.join(dict.fromkeys(map(verb, tasks)))
    return f"{verbs} · {' + '.join(dict.fromkeys(map(what, tasks)))}"


def listed(texts: Sequence[str]) -> str:
    """Texts in a row: 'a, b and c'."""
    *most, last = texts
    joint = say_as("between two things", " and ")
    return f"{', '.join(most)}{joint}{last}" if most else last


def served(each: Served, seen: datetime | None = None) -> str:
    """A dessert with its pieces and its hour, with the day unless it is that of `seen`."""
    same_day = seen is not None and seen.date() == each.at.date()
    hour = clock(each.at) if same_day else said(each.at)
    return f"{each.name}, {pieces(each.pieces)}, {hour}"


def pieces(number: int) -> str:
    """A number of pieces that stays on one line: '1 piece', '8 pieces'."""
    return say_count("{number} piece", "{number} pieces", number).replace(" ", NO_BREAK)


def goes_on(start: datetime, end: datetime) -> str:
    """How long something goes on by itself, and until when."""
    return say(
        "{time} by itself, to {hour}",
        time=lasting(minutes_between(start, end)),
        hour=clock_from(end, start),
    )


def span(session: AgendaSession) -> str:
    """From when to when: '18:30 to 21:35'."""
    last = clock_from(session.end, session.start)
    return say("{first} to {last}", first=clock(session.start), last=last)


def effort(session: AgendaSession) -> str:
    """Work and time between the work: '2 h 10 min of work, 55 min between'."""
    work = say("{time} of work", time=lasting(session.hands_on))
    if not session.idle:
        return work
    return say("{work}, {time} between", work=work, time=lasting(session.idle))


def menu(agenda: Agenda) -> str:
    """The names of what is served."""
    return listed(tuple(dict.fromkeys(each.name for each in agenda.served)) or (say("nothing"),))


def summary(agenda: Agenda) -> str:
    """The whole plan in sentences, for whoever does not see the drawing."""
    sentences = [
        say(
            "Session on {day}, {hours}: {effort}; {steps}.",
            day=day(session.start),
            hours=span(session),
            effort=effort(session),
            steps="; ".join(_told(agenda, session)),
        )
        for session in agenda.sessions
    ]
    served_ = (say("Served: {what}.", what=served(each)) for each in agenda.served)
    return " ".join([*sentences, *served_])


def _told(agenda: Agenda, session: AgendaSession) -> list[str]:
    named = {task.id: task for task in agenda.tasks}
    return [
        f"{clock_from(named[id_].start, session.start)} {title(named[id_])}"
        for id_ in session.tasks
        if id_ in named
    ]
