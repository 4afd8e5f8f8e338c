"""What the bench says: its page brings the messages along, for it goes on without the workbench."""

from __future__ import annotations

import json
from collections.abc import Iterator

from entremetry.publish.page_words import shown
from entremetry.words import say, say_count, say_count_later

COUNTS = {
    "entries": say_count_later(
        "{number} entry waits on this device.", "{number} entries wait on this device."
    ),
    "days": say_count_later("{number} day", "{number} days"),
}
"""Messages for so many of a thing."""


def bench_words() -> str:
    """Messages by their keys, with their fields in braces, as JSON.

    One for a number is there in the forms of one and of more.
    """
    plain = {key: shown(message) for key, message in _messages().items()}
    return json.dumps({**plain, **_counts()}, ensure_ascii=False)


def _counts() -> dict[str, list[str]]:
    return {key: list(_forms(*forms)) for key, forms in COUNTS.items()}


def _forms(one: str, many: str) -> Iterator[str]:
    for number in (1, 2):
        yield shown(say_count(one, many, number, **{"number": "{number}"}))


def _messages() -> dict[str, str]:
    return {**_state(), **_told(), **_now(), **_waits()}


def _state() -> dict[str, str]:
    """The line on top: what is kept where, sound and screen."""
    return {
        "connected": say("Connected."),
        "cut_off": say("No connection: the bench goes on without it."),
        "all_kept": say("Everything is kept."),
        "never_opened": say(
            "The plan was never opened on this device: open it once while the workbench runs."
        ),
        "refused": say("The workbench refused an entry: refused ({status})."),
        "not_kept": say(
            "This device cannot keep entries: leave the page open until they are sent."
        ),
        "made_anew": say("The plan was made anew."),
        "sound_on": say("Sound is on"),
        "sound_off": say("Sound is off"),
        "screen_on": say("The screen stays on while you are here."),
        "screen_off": say("This browser cannot keep the screen on: set the device to stay on."),
    }


def _told() -> dict[str, str]:
    """What was told."""
    return {
        "told_begun": say("begun"),
        "told_left": say("waits by itself"),
        "told_done": say("done"),
        "told_again": say("to be made again"),
        "told_takes": say("takes longer"),
        "told_last": say("{hour} {steps}: {state}"),
        "told_now": say("{steps}: {state}."),
        "timer_over": say("Timer over: {steps}."),
        "you_later": say("You begin {time} later."),
        "taken_back": say("Taken back: {steps}."),
    }


def _now() -> dict[str, str]:
    """The step now."""
    return {
        "round": say("{name}, round {number} of {all}"),
        "rest_waits": say("Nothing for your hands now. The rest waits."),
        "nothing_to_do": say("There is nothing to do in this plan."),
        "all_done": say("All done. Served: {plates}."),
        "plate": say("{name} at {hour}"),
        "takes_up": say("Takes up: {uses}"),
        "for_dessert": say("For {dessert}."),
        "one_go": say("In one go with {step}, {dessert}"),
        "again": say("Again: it failed before"),
        "over_since": say("Now: its wait is over since {hour}"),
        "under_way": say("Now: under way since {hour}, {time} in all"),
        "begin_again": say("You begin again at {hour}"),
        "free": say("Free until {hour}, in {time}"),
        "planned": say("Now: planned for {hour}"),
        "planned_hands": say("Now: planned for {hour}, {time} hands-on"),
        "begin": say("Begin"),
        "leave": say("Hands off: it waits"),
        "done": say("Done"),
        "later": say("I begin later"),
        "longer": say("It takes longer"),
    }


def _waits() -> dict[str, str]:
    """What waits."""
    return {
        "bar": say("{step}: how much of the wait is over"),
        "was_over": say("It was over at {hour}"),
        "ready": say("Ready at {hour}"),
        "heard": say("Heard"),
        "more": say("+{minutes} min"),
        "knob": say("{does}: {step}"),
        "over": say("Over"),
    }
