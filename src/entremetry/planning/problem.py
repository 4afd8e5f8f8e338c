"""Everything a plan has to respect, checked at construction."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.planning.faults import require_sound
from entremetry.planning.problem_data import ProblemData


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem(ProblemData):
    """Tasks, how they follow one another, who and what there is, between two minutes.

    Raises
    ------
    ProblemError
        At construction, with every fault there is.
    """

    def __post_init__(self) -> None:
        require_sound(self)
