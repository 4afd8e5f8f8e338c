"""What the temperatures of one step are: how long, how sure, where the cold is when."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.shapes import Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """Temperature of one point over time. [s, K]"""

    name: str
    times: Floats
    temperatures: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A moment worth a mark on the time axis [s], such as 'the heart is frozen'."""

    time: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """Temperatures over half the section at some times, for a picture.

    `across` and `levels` are the middles of the cells [m], `temperatures` has the shape (times,
    levels, across) [K] and is NaN outside the piece; level 0 is the closed end of the mould.
    `outline` is the true edge of that half as (across, level), `parts` the edges of what lies
    inside it [m].
    """

    across: Floats
    levels: Floats
    times: Floats
    temperatures: Floats
    served_upside_down: bool
    outline: Floats | None = None
    parts: tuple[Floats, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One more number that the step is about: a film, a load, the temperature of a mix."""

    name: str
    value: float
    unit: str
    because: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepTemperatures:
    """The answer to 'how long does this step take?'. SI units.

    `time` is the best estimate, `low` and `high` bound it; all three are None if the target is
    never reached, and `reason` then says why. `mostly` names what the interval comes from.
    """

    step: str
    name: str
    kind: str
    sentence: str
    target: float | None
    time: float | None
    low: float | None
    high: float | None
    reason: str
    mostly: str
    because: str
    sources: tuple[str, ...]
    assumptions: tuple[str, ...]
    written_time: float | None
    curves: tuple[Curve, ...] = ()
    marks: tuple[Mark, ...] = ()
    field: Field | None = None
    balance_error: float = 0.0
    facts: tuple[Fact, ...] = ()
