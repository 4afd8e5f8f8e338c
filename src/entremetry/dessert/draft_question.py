"""A question that a draft leaves open."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked about which words; `choices` are (answer, label), `example` a free answer."""

    key: str
    about: str
    text: str
    choices: tuple[tuple[str, str], ...] = ()
    example: str = ""
