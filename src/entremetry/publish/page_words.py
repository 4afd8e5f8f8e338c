"""Messages of a page in the language that is spoken: those it shows, and those of its script."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from entremetry.publish.typography import typeset
from entremetry.words import ENGLISH, current, say, say_as, say_count

if TYPE_CHECKING:
    from markupsafe import Markup


def spoken(message: str, /, **fields: object) -> str:
    """A message as a page shows it: a translation is set with the signs of its language."""
    return shown(say(message, **fields))


def spoken_as(context: str, message: str, /, **fields: object) -> str:
    """The same for a message that means two things."""
    return shown(say_as(context, message, **fields))


def spoken_count(one: str, many: str, number: float, /, **fields: object) -> str:
    """The same for a message for so many of a thing."""
    return shown(say_count(one, many, number, **fields))


def filled(message: str, **fields: Markup) -> Markup:
    """A message with markup in its fields."""
    from markupsafe import Markup, escape

    return Markup(escape(message).format(**fields))


def page_words() -> dict[str, Any]:
    """What the page's script says, with fields in braces, and the signs of its numbers."""
    language = current()
    return {
        "signs": {"decimal": language.decimal, "group": language.group},
        "say": {key: shown(message) for key, message in _messages().items()},
    }


def _messages() -> dict[str, str]:
    """Messages of the script by their keys; those for a number in the forms of one and of more."""
    one, many = (
        say_count("{number} piece", "{number} pieces", number, **{"number": "{number}"})
        for number in (1, 2)
    )
    return {
        "piece": one,
        "pieces": many,
        "powder": say("as gelatine powder of {bloom} Bloom"),
        "in_place": say("as {gelatine}"),
        "from_recipe": say("from this recipe"),
        "holding": say("{shape} of {volume}"),
        "sized": say("{shape}, {sizes}"),
        "cavities": say("{number} × {mould}"),
        "as_published": say("the mould as published"),
        "freezing": say("Freezing {time}"),
        "thawing": say("Thawing {time}"),
        "no_cold": say("nothing to freeze, or as the author wrote"),
        "outside": say(
            "Freezing or thawing in this mould lies outside what was computed; the author’s times "
            "stand."
        ),
        "before": say("{time} before serving"),
        **_refusals(),
    }


def _refusals() -> dict[str, str]:
    """What the script says to a choice that cannot be."""
    return {
        "bad_pieces": say("Pieces: a whole number from 1 to 10 000."),
        "bad_diameter": say("Diameter: from 5 to 1000 mm."),
        "bad_base": say("Base: from 5 to 1000 mm."),
        "bad_length": say("Length: from 5 to 1000 mm."),
        "bad_width": say("Width: from 5 to 1000 mm."),
        "bad_height": say("Height: from 5 to 1000 mm."),
        "bad_volume": say("What it holds: from 1 to 100 000 ml."),
        "bad_cone": say("The closed end of a cone is no wider than its rim."),
        "no_portion": say("Not one portion comes out of this frame."),
        "bad_bloom": say("Strength: from 50 to 350 Bloom."),
    }


def shown(text: str) -> str:
    """A text as it is shown; English is written so, another language is set with its signs."""
    return text if current() is ENGLISH else typeset(text)
