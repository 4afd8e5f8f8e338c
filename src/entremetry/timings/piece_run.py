"""Run a piece until its target and see how sure the time is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from entremetry.physics.conduction.history import History
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.conduction.stage import Stage
from entremetry.physics.uncertainty import interval
from entremetry.shapes import Floats
from entremetry.timings.cause import chief_cause
from entremetry.timings.piece_body import PieceBody
from entremetry.timings.step_temperatures import Field

FRAMES = 13
LAST = 0.999  # of the run: a run with other steps may end a moment earlier
LONGEST = 4.0 * 86400.0  # s


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Best time and its bounds [s]; None where the target is not reached."""

    best: float | None
    low: float | None
    high: float | None
    mostly: str


def run_piece(
    piece: PieceBody, start: Mapping[str, float], stage: Stage, *, frames: bool = False
) -> History:
    """Temperatures of a piece through one stage, with pictures at even times if wanted."""
    history = run(piece.body, start, (stage,), piece.points, Course(longest=LONGEST))
    if not frames:
        return history
    keep = tuple(float(time) for time in np.linspace(0.0, LAST * history.end, FRAMES))
    return run(piece.body, start, (stage,), piece.points, Course(longest=LONGEST, keep=keep))


def band(piece: PieceBody, start: Mapping[str, float], stage: Stage, best: History) -> Band:
    """Interval of the time that a run took, from what is not known exactly.

    `piece` may be of coarser cells than the run's: only the ratios of the times are taken from it.
    """
    if not best.reached:
        return Band(best=None, low=None, high=None, mostly="")
    if stage.until is None or best.end <= 0.0:
        return Band(best=best.end, low=best.end, high=best.end, mostly="")
    found = interval(piece.body, start, (stage,), None, Course(longest=2.0 * LONGEST))
    scale = best.end / found.time
    return Band(
        best=best.end,
        low=found.low * scale,
        high=found.high * scale if math.isfinite(found.high) else None,
        mostly=chief_cause(found.shares),
    )


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
        outline=piece.outline,
        parts=piece.parts,
    )


def _middles(origin: float, spacing: float, count: int) -> Floats:
    return np.asarray(origin + (np.arange(count) + 0.5) * spacing, dtype=np.float64)
