"""What a validation error says to a person: found, accepted, nearest."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.documents.tree import shown
from entremetry.errors import EntremetryError, QuantityError, UnknownName, nearest_names

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

_QUOTED = re.compile(r"'([^']*)'")
_TYPES = {
    "string_type": "a text",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "dict_type": "a mapping, such as {name: ...}",
    "model_type": "a mapping, such as {name: ...}",
    "model_attributes_type": "a mapping, such as {name: ...}",
    "list_type": "a list, such as [a, b]",
    "tuple_type": "a list, such as [a, b]",
    "none_required": "nothing",
}
_BOUNDS = {
    "greater_than_equal": "{ge} or more",
    "greater_than": "more than {gt}",
    "less_than_equal": "at most {le}",
    "less_than": "less than {lt}",
    "string_too_short": "a text of at least {min_length} characters",
    "string_too_long": "a text of at most {max_length} characters",
    "too_short": "{min_length} or more of them",
    "too_long": "at most {max_length} of them",
}
_PATTERNS = {
    r"^[a-z0-9]+(-[a-z0-9]+)*$": (
        "lower-case letters and digits, words joined by hyphens, such as pear-log"
    ),
    r"^([01]\d|2[0-3]):[0-5]\d$": "a time of day, such as '08:30'",
    r"^(([01]\d|2[0-3]):[0-5]\d|24:00)$": "a time of day up to '24:00', such as '18:30'",
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
        return Wording(found=shown(detail["input"]), accepted=_TYPES[kind], about_type=True)
    if kind == "missing":
        return Wording(found="nothing", accepted="a value; this field must be given")
    if kind == "extra_forbidden":
        return _unknown_key(str(detail["loc"][-1]), known)
    if kind in {"literal_error", "enum"}:
        return _choice(detail["input"], str(context.get("expected", "")))
    if kind == "union_tag_invalid":
        return _tag(context)
    if kind in _BOUNDS:
        accepted = _BOUNDS[kind].format_map(context)
        return Wording(found=shown(detail["input"]), accepted=accepted)
    if kind == "string_pattern_mismatch":
        accepted = _PATTERNS.get(str(context.get("pattern")), "a text of another form")
        return Wording(found=shown(detail["input"]), accepted=accepted)
    if kind == "union_tag_not_found":
        name = _discriminator(context)
        return Wording(found=f"no '{name}'", accepted=f"a mapping with '{name}: ...'")
    return _other(detail, context.get("error"))


def _unknown_key(key: str, known: tuple[str, ...]) -> Wording:
    """Say which keys are known, and the nearest."""
    return Wording(
        found=f"the unknown key '{key}'",
        accepted=f"one of {', '.join(known)}" if known else "no key of this name",
        nearest=nearest_names(key, known),
    )


def _choice(value: object, expected: str) -> Wording:
    """Say which of a few words are accepted, and the nearest."""
    words = _QUOTED.findall(expected)
    accepted = ", ".join(words) or expected
    return Wording(
        found=shown(value),
        accepted=f"one of {accepted}" if len(words) > 1 else accepted,
        nearest=nearest_names(str(value), words),
    )


def _tag(context: dict[str, object]) -> Wording:
    """Say which kinds of mapping are known, and the nearest."""
    name = _discriminator(context)
    words = _QUOTED.findall(str(context.get("expected_tags", "")))
    return Wording(
        found=f"{name} '{context.get('tag')}'",
        accepted=f"{name}: one of {', '.join(words)}",
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
            found=f"'{error.name}'", accepted=f"a known {error.thing}", nearest=error.nearest
        )
    if isinstance(error, (EntremetryError, ValueError, AssertionError)):
        return Wording(found=shown(detail["input"]), accepted=str(error))
    message = detail["msg"]
    said = message.removeprefix("Input should be ").removeprefix("Value error, ")
    return Wording(found=shown(detail["input"]), accepted=said[:1].lower() + said[1:])
