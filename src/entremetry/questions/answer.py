"""The answer to a question: what was understood, yes or no, the facts, and what it ends in."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from entremetry.adapt.rebalanced import Change


class Reply(StrEnum):
    """What an answer comes to."""

    YES = "yes"
    NO = "no"
    CHANGED = "with a change"
    DEPENDS = "it depends"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One sentence with its numbers, its reason, and the key of who says so, where there is one."""

    text: str
    because: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a question comes to.

    `kind` is the kind of the question, `question` the question as it was understood, `says` the
    answer in one sentence. `document` is the adapted document, empty if none comes of it;
    `checks` are the ids of the bench checks that decide. `apart` are words that tell the adapted
    dessert from the one before, such as 'without the glaze'.
    """

    kind: str
    question: str
    reply: Reply
    says: str
    facts: tuple[Fact, ...] = ()
    changes: tuple[Change, ...] = ()
    checks: tuple[str, ...] = ()
    document: str = ""
    apart: str = ""
