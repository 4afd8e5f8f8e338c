"""A question that a draft leaves open, and the answers given so far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

LONGEST_TEXT = 400  # of a question that a document keeps


def shortened(text: str) -> str:
    """A question as a document can keep it."""
    return text if len(text) <= LONGEST_TEXT else f"{text[: LONGEST_TEXT - 2]} …"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked about which words; `choices` are (answer, label), `example` a free answer.

    `refused` is the answer that was given and cannot be taken.
    """

    key: str
    about: str
    text: str
    choices: tuple[tuple[str, str], ...] = ()
    example: str = ""
    refused: str = ""


@dataclass(frozen=True, slots=True)
class Answers:
    """Answers by the key of their question; remembers which of them were looked at."""

    given: Mapping[str, str]
    used: set[str] = field(default_factory=set)

    def to(self, key: str) -> str | None:
        """The answer to a question, or None."""
        answer = self.given.get(key, "").strip()
        if not answer:
            return None
        self.used.add(key)
        return answer

    @property
    def unused(self) -> tuple[str, ...]:
        """Keys that no question asks for."""
        return tuple(key for key in self.given if key not in self.used)
