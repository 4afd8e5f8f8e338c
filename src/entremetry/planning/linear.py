"""The kinds of expressions that models are written in, for type checks only."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typing import TypeAlias

    from ortools.sat.python import cp_model
    from ortools.sat.python.cp_model_helper import Literal

    Truth: TypeAlias = Literal
    Linear: TypeAlias = cp_model.LinearExpr | int
    Interval: TypeAlias = tuple[Linear, Linear, Linear]
    """First minute, length and end, each of one variable at most."""
