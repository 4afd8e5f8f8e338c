"""Cut a text into its numbers and the words behind each."""

from __future__ import annotations

import re
from dataclasses import dataclass

from entremetry.errors import QuantityError
from entremetry.quantities.number import GLYPHS, NUMBER_PATTERN, number
from entremetry.words import quoted, say, say_later

MOST_CHARACTERS = 200
_POWERS = re.compile(r"(?<![A-Za-z])((?:[cdm]?m))([23])(?![0-9A-Za-z])")
_TERM = re.compile(rf"({NUMBER_PATTERN})\s*([^0-9+{GLYPHS}]*)")
_NEGATIVE = re.compile(r"[-−–]\s*[0-9.]")
_RANGE = re.compile(
    rf"(?<![0-9]){NUMBER_PATTERN}\s*(?:[^\W\d_]{{1,6}}\s*)?(?:-|–|—|\bto\b|\bor\b)\s*[0-9.]"
)
_NAMED = re.compile(r"[-+]?\.?(?:nan|inf|infinity|∞)\b.*", re.IGNORECASE)
_NO_TEXT: dict[type, str] = {
    dict: say_later("a mapping"),
    list: say_later("a list"),
    type(None): say_later("nothing"),
}
_SUPERSCRIPT = {"2": "²", "3": "³"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A number and the words behind it."""

    number: float
    words: str


def tidy(text: object, accepted: str) -> str:
    """Return the text with single spaces and raised powers; refuse what is no text."""
    if isinstance(text, int | float) and not isinstance(text, bool):
        found = say("{number} without a unit", number=text)
        raise QuantityError(found, _with_unit(accepted))
    if not isinstance(text, str):
        raise QuantityError(say(_NO_TEXT.get(type(text), say_later("no text"))), accepted)
    if len(text) > MOST_CHARACTERS:
        found = say("a text of {number} characters", number=len(text))
        raise QuantityError(found, accepted)
    spaced = " ".join(text.split())
    return _POWERS.sub(lambda match: match[1] + _SUPERSCRIPT[match[2]], spaced)


def terms(text: object, accepted: str) -> tuple[Term, ...]:
    """Return every number of the text with its words; refuse what is not just that."""
    tidied = tidy(text, accepted)
    _refuse(tidied, accepted)
    found, position = [], 0
    while position < len(tidied):
        match = _TERM.match(tidied, position)
        if match is None:
            raise QuantityError(quoted(tidied), accepted)
        found.append(Term(number=number(match[1]), words=match[2].strip()))
        position = _after_joint(tidied, match.end())
    return tuple(found)


def _after_joint(text: str, position: int) -> int:
    """Step over the plus sign of '1 cup + 2 tbsp', if a number follows it."""
    if text[position : position + 1] == "+" and text[position + 1 :].strip():
        position += 1
        while text[position] == " ":
            position += 1
    return position


def _refuse(text: str, accepted: str) -> None:
    """Refuse by name what is no single positive number with a unit."""
    if not text:
        raise QuantityError(say("an empty text"), accepted)
    if _NAMED.fullmatch(text):
        found = say("'{text}', which is not a finite number", text=text)
        raise QuantityError(found, accepted)
    if _NEGATIVE.match(text):
        raise QuantityError(say("'{text}', which is negative", text=text), accepted)
    if _RANGE.search(text):
        raise a_range(text, accepted)


def without_unit(text: str, accepted: str) -> QuantityError:
    """The refusal of a number that says no unit."""
    return QuantityError(say("'{text}' without a unit", text=text), _with_unit(accepted))


def a_range(text: str, accepted: str) -> QuantityError:
    """The refusal of a range where one number is wanted."""
    found = say("'{text}', a range", text=text)
    return QuantityError(found, say("one number: {accepted}", accepted=accepted))


def _with_unit(accepted: str) -> str:
    return say("{accepted}; say the unit", accepted=accepted)
