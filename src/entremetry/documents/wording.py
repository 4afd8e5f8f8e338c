"""What a validation error says to a person: found, accepted, nearest."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.documents.tree import shown
from entremetry.errors import EntremetryError, QuantityError, UnknownName, nearest_names
from entremetry.words import one_of, quoted, say, say_as, say_later

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

_QUOTED = re.compile(r"'([^']*)'")
_TYPES = {
    "string_type": say_later("a text"),
    "int_type": say_later("a whole number"),
    "int_parsing": say_later("a whole number"),
    "int_from_float": say_later("a whole number"),
    "float_type": say_later("a number"),
    "float_parsing": say_later("a number"),
    "bool_type": say_later("true or false"),
    "bool_parsing": say_later("true or false"),
    "dict_type": say_later("a mapping, such as {name: ...}"),
    "model_type": say_later("a mapping, such as {name: ...}"),
    "model_attributes_type": say_later("a mapping, such as {name: ...}"),
    "list_type": say_later("a list, such as [a, b]"),
    "tuple_type": say_later("a list, such as [a, b]"),
    "none_required": say_later("nothing"),
}
_BOUNDS = {
    "greater_than_equal": say_later("{ge} or more"),
    "greater_than": say_later("more than {gt}"),
    "less_than_equal": say_later("at most {le}"),
    "less_than": say_later("less than {lt}"),
    "string_too_short": say_later("a text of at least {min_length} characters"),
    "string_too_long": say_later("a text of at most {max_length} characters"),
    "too_short": say_later("{min_length} or more of them"),
    "too_long": say_later("at most {max_length} of them"),
}
_PATTERNS = {
    r"^[a-z0-9]+(-[a-z0-9]+)*$": say_later(
        "lower-case letters and digits, words joined by hyphens, such as pear-log"
    ),
    r"^([01]\d|2[0-3]):[0-5]\d$": say_later("a time of day, such as '08:30'"),
    r"^(([01]\d|2[0-3]):[0-5]\d|24:00)$": say_later("a time of day up to '24:00', such as '18:30'"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """One error in words; `about_type` if it only says what sort of value it is not."""

    found: str
    accepted: str
    nearest: tuple[str, ...] = ()
    about_type: bool = False


def wording(detail: ErrorDetails, known: tuple[str, ...]) -> Wording:
    """Put one error into words; `known` are the keys that could stand in its place."""
    kind = detail["type"]
    context = detail.get("ctx", {})
    if kind in _TYPES:
        return Wording(found=shown(detail["input"]), accepted=say(_TYPES[kind]), about_type=True)
    if kind == "missing":
        return Wording(found=say("nothing"), accepted=say("a value; this field must be given"))
    if kind == "extra_forbidden":
        return _unknown_key(str(detail["loc"][-1]), known)
    if kind in {"literal_error", "enum"}:
        return _choice(detail["input"], str(context.get("expected", "")))
    if kind == "union_tag_invalid":
        return _tag(context)
    if kind in _BOUNDS:
        accepted = say(_BOUNDS[kind], **context)
        return Wording(found=shown(detail["input"]), accepted=accepted)
    if kind == "string_pattern_mismatch":
        accepted = _PATTERNS.get(str(context.get("pattern")), say_later("a text of another form"))
        return Wording(found=shown(detail["input"]), accepted=say(accepted))
    if kind == "union_tag_not_found":
        name = _discriminator(context)
        return Wording(
            found=say("no '{name}'", name=name),
            accepted=say("a mapping with '{name}: ...'", name=name),
        )
    return _other(detail, context.get("error"))


def _unknown_key(key: str, known: tuple[str, ...]) -> Wording:
    """Say which keys are known, and the nearest."""
    return Wording(
        found=say("the unknown key '{key}'", key=key),
        accepted=one_of(known) if known else say("no key of this name"),
        nearest=nearest_names(key, known),
    )


def _choice(value: object, expected: str) -> Wording:
    """Say which of a few words are accepted, and the nearest."""
    words = _QUOTED.findall(expected)
    accepted = ", ".join(words) or expected
    return Wording(
        found=shown(value),
        accepted=one_of(words) if len(words) > 1 else accepted,
        nearest=nearest_names(str(value), words),
    )


def _tag(context: dict[str, object]) -> Wording:
    """Say which kinds of mapping are known, and the nearest."""
    name = _discriminator(context)
    words = _QUOTED.findall(str(context.get("expected_tags", "")))
    return Wording(
        found=say("{key} '{value}'", key=name, value=context.get("tag")),
        accepted=say("{key}: one of {names}", key=name, names=", ".join(words)),
        nearest=nearest_names(str(context.get("tag")), words),
    )


def _discriminator(context: dict[str, object]) -> str:
    """Return the name of the key that decides, as a document writes it: its alias comes last."""
    names = _QUOTED.findall(str(context.get("discriminator", "")))
    return str(names[-1])


def _other(detail: ErrorDetails, error: object) -> Wording:
    """Carry over our own errors, and put the rest in the library's words."""
    if isinstance(error, QuantityError):
        return Wording(
            found=error.found,
            accepted=error.accepted,
            nearest=error.nearest,
            about_type=isinstance(detail["input"], dict | list),
        )
    if isinstance(error, UnknownName):
        return Wording(
            found=quoted(error.name),
            accepted=say("a known {thing}", thing=say_as("known", error.thing)),
            nearest=error.nearest,
        )
    if isinstance(error, (EntremetryError, ValueError, AssertionError)):
        return Wording(found=shown(detail["input"]), accepted=str(error))
    message = detail["msg"]
    said = message.removeprefix("Input should be ").removeprefix("Value error, ")
    return Wording(found=shown(detail["input"]), accepted=said[:1].lower() + said[1:])
