"""Messages in the language that is spoken."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from gettext import GNUTranslations

from entremetry.words.language import ENGLISH, current


def say(message: str, /, **fields: object) -> str:
    """A message with its fields filled in, in the language that is spoken.

    The message is a constant of the code: it is the key of the catalogues. Fields are anything,
    an author's text too; they are never looked up.
    """
    spoken = current()
    known = message if spoken is ENGLISH else spoken.messages.gettext(message)
    return known.format(**fields) if fields else known


def say_as(context: str, message: str, /, **fields: object) -> str:
    """The same for a message that means two things: the context tells which is meant."""
    spoken = current()
    known = message if spoken is ENGLISH else spoken.messages.pgettext(context, message)
    return known.format(**fields) if fields else known


def is_said_as(context: str, message: str, /) -> bool:
    """Whether the spoken language has a message of this context; English has them all."""
    spoken = current()
    key = GNUTranslations.CONTEXT % (context, message)
    return spoken is ENGLISH or spoken.messages.gettext(key) != key


def say_count(one: str, many: str, number: float, /, **fields: object) -> str:
    """A message for so many of a thing; `{number}` may stand in it.

    A language has its own rule for which form a number takes: 1.5 is one in French.
    """
    spoken = current()
    if spoken is ENGLISH:
        known = one if number == 1 else many
    else:
        known = spoken.messages.ngettext(one, many, int(number))
    return known.format(**{"number": number, **fields})


def say_later(message: str) -> str:
    """A constant that is said later: it goes into the catalogues and stays as it is."""
    return message


def say_as_later(context: str, message: str) -> str:
    """The same for a constant that means two things: `say_as(context, CONSTANT)`."""
    del context
    return message


def say_count_later(one: str, many: str) -> tuple[str, str]:
    """Both forms of a message that is said later: `say_count(*FORMS, number)`."""
    return one, many


def quoted(text: object) -> str:
    """What somebody wrote, between the quotation marks of the spoken language."""
    return say("'{text}'", text=text)


def one_of(names: Iterable[object]) -> str:
    """What may be chosen of: 'one of a, b, c'."""
    return say("one of {names}", names=", ".join(str(name) for name in names))


def either(names: Sequence[str]) -> str:
    """Names of which one is meant: 'a', 'a or b', 'a, b or c'."""
    *most, last = names
    return say("{names} or {last}", names=", ".join(most), last=last) if most else last
