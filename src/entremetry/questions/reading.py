"""A question from the fields of a form or the options of a command: one kind, nothing missing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import datetime
from zoneinfo import ZoneInfo

from entremetry.agenda.local_time import local_time
from entremetry.dessert.document import MAX_PIECES
from entremetry.errors import QuantityError
from entremetry.physics.gelatine import BloomRule
from entremetry.quantities import parse_duration
from entremetry.questions.own_mould import shaped
from entremetry.questions.question import (
    Contains,
    Instead,
    OtherMould,
    Question,
    Wait,
    WentWrong,
    Without,
)
from entremetry.words import either, quoted, say, say_as, say_later

Given = Mapping[str, str]
FIELDS: Mapping[str, tuple[str, ...]] = {
    "instead": ("instead", "have", "bloom-rule"),
    "mould": ("mould", "shape", "size", "holds", "like", "cavities", "pieces"),
    "wait": ("wait", "for", "until", "where"),
    "without": ("without",),
    "symptom": ("symptom", "in"),
    "contains": ("contains",),
}
"""The fields of each kind of question; all but those of one kind are left empty."""
ACCEPTED = say_later(
    "one question: --instead LINE --have INGREDIENT, --mould ID, --shape with --size, --holds "
    "WATER, --wait PART, --without NAME, --symptom ID, --contains NAME"
)
MOST_CAVITIES = 500
COUNTS = {
    "pieces": (say_later("{text} pieces"), say_later("1 to {most} pieces")),
    "cavities": (say_later("{text} cavities"), say_later("1 to {most} cavities")),
}
"""Numbers that may be asked for: what was found and what is accepted."""
RULES = {"": BloomRule.LINEAR, "linear": BloomRule.LINEAR, "square-root": BloomRule.SQUARE_ROOT}


def read_question(given: Given, *, now: datetime, zone: ZoneInfo) -> Question:
    """The question that some fields ask; empty fields are not asked.

    Raises
    ------
    QuantityError
        If they ask nothing, or two things at once, or leave out what the question needs.
    """
    told = {name: text.strip() for name, text in given.items() if text.strip()}
    kinds = [kind for kind, names in FIELDS.items() if set(names) & told.keys()]
    if len(kinds) != 1:
        raise QuantityError(_options(told), say(ACCEPTED))
    readers: Mapping[str, Callable[[Given], Question]] = {
        "instead": _instead,
        "mould": _mould,
        "wait": lambda given: _wait(given, now, zone),
        "without": lambda given: Without(name=given["without"]),
        "symptom": _symptom,
        "contains": lambda given: Contains(name=given["contains"]),
    }
    return readers[kinds[0]](told)


def _instead(given: Given) -> Instead:
    _need(given, "instead", "have")
    rule = given.get("bloom-rule", "")
    if rule not in RULES:
        raise QuantityError(quoted(rule), either(("linear", "square-root")))
    return Instead(old=given["instead"], have=given["have"], rule=RULES[rule])


def _mould(given: Given) -> OtherMould:
    ways = [name for name in ("mould", "shape", "holds") if name in given]
    if len(ways) > 1:
        accepted = say("one of them: a mould is known, has a shape, or was weighed")
        raise QuantityError(_options(ways), accepted)
    if "shape" in given or "size" in given:
        _need(given, "shape", "size")
    pieces = _number(given, "pieces", MAX_PIECES)
    cavities = _number(given, "cavities", MOST_CAVITIES)
    if cavities is not None and "mould" in given:
        raise QuantityError(
            _options(("mould", "cavities")), say("--cavities with --shape or --holds")
        )
    if not ways and pieces is None:
        _need(given, "holds", "like")
    if "like" in given and "holds" not in given:
        _need(given, "holds", "like")
    return OtherMould(
        known=given.get("mould", ""),
        own=shaped(given["shape"], given["size"], cavities=cavities) if "shape" in given else None,
        holds=given.get("holds", ""),
        like=given.get("like", ""),
        cavities=cavities,
        pieces=pieces,
    )


def _number(given: Given, name: str, most: int) -> int | None:
    text = given.get(name, "")
    if not text:
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 9 and 1 <= int(text) <= most):
        found, accepted = (say(each, text=text[:40], most=most) for each in COUNTS[name])
        raise QuantityError(found, accepted)
    return int(text)


def _wait(given: Given, now: datetime, zone: ZoneInfo) -> Wait:
    _need(given, "wait")
    if "for" in given and "until" in given:
        raise QuantityError(_options(("for", "until")), say("one of the two"))
    until = local_time(given["until"], zone) if "until" in given else None
    return Wait(
        part=given["wait"],
        where=given.get("where", ""),
        time=parse_duration(given["for"]) if "for" in given else None,
        until=until,
        now=now,
    )


def _symptom(given: Given) -> WentWrong:
    _need(given, "symptom")
    return WentWrong(symptom=given["symptom"], component=given.get("in"))


def _need(given: Given, *names: str) -> None:
    missing = [name for name in names if name not in given]
    if missing:
        there = _options([name for name in names if name in given])
        found = say("{there} without --{missing}", there=there, missing=missing[0])
        raise QuantityError(found, " ".join(f"--{name} …" for name in names))


def _options(names: Iterable[str]) -> str:
    """Options as they are given, or that none is."""
    joint = say_as("between two things", " and ")
    return joint.join(f"--{name}" for name in names) or say("no question")
