"""What may go wrong with a dessert, and what may lie behind it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Toward(StrEnum):
    """On which side of its band a quantity brings a cause about."""

    LOW = "low"
    HIGH = "high"
    EITHER = "either"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One thing that may lie behind a symptom.

    `rule` is the bench check that tells how near this dessert is to it, empty if none does;
    `weight` how often it is that, 0 to 1, by practice of the trade; `measure` what would confirm
    it, `advice` what helps.
    """

    name: str
    measure: str
    advice: str
    rule: str = ""
    toward: Toward = Toward.EITHER
    weight: float = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Symptom:
    """Something a cook sees, by an id, in words, with its causes."""

    id: str
    name: str
    causes: tuple[Cause, ...]
