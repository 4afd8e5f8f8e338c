"""A source: who says so."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Standing(StrEnum):
    """How far a source can be trusted."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice, no source"
    FROM_MEMORY = "from memory, not yet checked"
    OUR_OWN = "computed or measured by us"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One entry of the bibliography; `key` is how the code and the pages cite it."""

    key: str
    text: str
    standing: Standing = Standing.PUBLISHED
