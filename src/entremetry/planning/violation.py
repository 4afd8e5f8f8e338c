"""A law that a plan breaks."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Violation:
    """The law in words, and the tasks, people or resources it is broken by."""

    law: str
    subjects: tuple[str, ...]

    def __str__(self) -> str:
        return f"{self.law}: broken by {', '.join(self.subjects)}"
