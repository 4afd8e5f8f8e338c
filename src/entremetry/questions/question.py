"""The questions that can be asked: typed, so that each has one meaning."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from entremetry.physics.gelatine import BloomRule


@dataclass(frozen=True, slots=True, kw_only=True)
class Instead:
    """'I have another ingredient': a line or an ingredient, or 'component/line', and what I have.

    Several with a plus between them, as in 'cream-48+whole-milk'.
    """

    old: str
    have: str
    rule: BloomRule = BloomRule.LINEAR


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherMould:
    """'My mould is another one': a known mould by its id, or one of one's own as written.

    `own` is the mould as a document writes it; with `holds` it was measured with water, and
    `cavities` says how many it has then.
    """

    known: str = ""
    own: Mapping[str, Any] | None = None
    holds: str = ""
    like: str = ""
    cavities: int | None = None
    pieces: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """'Can it wait?': a part, where it lies, and for how long [s] or until when.

    `now` is when the wait begins if an hour is given for its end.
    """

    part: str
    where: str = ""
    time: float | None = None
    until: datetime | None = None
    now: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Without:
    """'Can I leave it out?': a component, a line or an ingredient, or 'component/line'."""

    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WentWrong:
    """'Why did that happen?': a symptom, and the component if it is known."""

    symptom: str
    component: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Contains:
    """'Does it contain that?': an allergen or an ingredient."""

    name: str


Question = Instead | OtherMould | Wait | Without | WentWrong | Contains
