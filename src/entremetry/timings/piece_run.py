"""Run a piece until its target and see how sure the time is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from entremetry.physics.conduction.history import History
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.conduction.stage import Stage
from entremetry.physics.conduction.variation import Variation
from entremetry.shapes import Floats
from entremetry.timings.piece_body import PieceBody
from entremetry.timings.step_temperatures import Field

FRAMES = 13
LONGEST = 4.0 * 86400.0  # s
UNCERTAIN = (
    ("the airflow and what it stands on", Variation(coefficient=0.7), Variation(coefficient=1.3)),
    ("the air temperature", Variation(air=1.5), Variation(air=-1.5)),
    ("the composition", Variation(heat=1.05), Variation(heat=0.95)),
    ("the conductivity", Variation(conductivity=0.9), Variation(conductivity=1.1)),
    ("how full it is", Variation(size=1.03), Variation(size=0.97)),
)
"""What is uncertain by how much: coefficients 30 %, air 1.5 K, heat 5 %, conductivity 10 %,
lengths 3 %; our_own estimates, the first from coefficients recovered from cooling curves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Best time and its bounds [s]; None where the target is not reached."""

    best: float | None
    low: float | None
    high: float | None
    mostly: str
    reason: str = ""


def run_piece(
    piece: PieceBody, start: Mapping[str, float], stage: Stage, *, frames: bool = False
) -> History:
    """Temperatures of a piece through one stage, with pictures at even times if wanted."""
    history = run(piece.body, start, (stage,), piece.points, Course(longest=LONGEST))
    if not frames:
        return history
    keep = tuple(float(time) for time in np.linspace(0.0, history.end, FRAMES)[1:])
    return run(piece.body, start, (stage,), piece.points, Course(longest=LONGEST, keep=keep))


def band(piece: PieceBody, start: Mapping[str, float], stage: Stage, best: History) -> Band:
    """Interval of the time from each uncertain input in turn, added in quadrature.

    Each input is set to both ends of its range; the logarithms of the times are combined, so
    that a time is as likely to be so many times longer as so many times shorter.
    """
    if not best.reached:
        return Band(best=None, low=None, high=None, mostly="", reason=best.ends[-1].reason)
    slower, faster, widest, mostly = 0.0, 0.0, 0.0, ""
    endless = False
    for name, *ends in UNCERTAIN:
        times = [_time(piece, start, stage, variation) for variation in ends]
        found = [math.log(time / best.end) for time in times if time]
        endless = endless or None in times
        slower += max([0.0, *found]) ** 2
        faster += min([0.0, *found]) ** 2
        spread = max(found, default=0.0) - min(found, default=0.0)
        if None in times or spread > widest:
            widest, mostly = (math.inf if None in times else spread), name
    return Band(
        best=best.end,
        low=best.end * math.exp(-math.sqrt(faster)),
        high=None if endless else best.end * math.exp(math.sqrt(slower)),
        mostly=mostly,
    )


def _time(
    piece: PieceBody, start: Mapping[str, float], stage: Stage, variation: Variation
) -> float | None:
    course = Course(longest=LONGEST, variation=variation)
    history = run(piece.body, start, (replace(stage),), {}, course)
    return history.end if history.reached and history.end > 0.0 else None


def field(piece: PieceBody, history: History, *, served_upside_down: bool) -> Field:
    """Pictures of half the section, NaN outside the piece."""
    body = piece.body
    _, rows, columns = body.cells.shape
    outside = (body.volumes.sum(axis=0) <= 0.0).reshape(rows, columns)
    shots = [np.where(outside, np.nan, s.temperatures[0]) for s in history.snapshots]
    return Field(
        across=_middles(body.origin[2], body.spacing[2], columns),
        levels=_middles(body.origin[1], body.spacing[1], rows),
        times=np.array([s.time for s in history.snapshots]),
        temperatures=np.array(shots),
        served_upside_down=served_upside_down,
    )


def _middles(origin: float, spacing: float, count: int) -> Floats:
    return np.asarray(origin + (np.arange(count) + 0.5) * spacing, dtype=np.float64)
