"""The nearest formula that meets straight demands, found exactly.

The least |x| under G x >= h follows from a least squares problem without negative unknowns
(Lawson and Hanson 1974, least distance programming). It always ends, so it stands behind the
general solver; curved demands are made straight where it arrives, and asked again.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from entremetry.formula._demand import Demand
from entremetry.formula._ice_demand import IceDemand
from entremetry.formula._model import Model, Row
from entremetry.physics.arrays import Floats

ROUNDS = 30
MET = -1e-6  # tolerances
STILL = 1e-8  # relative change
NOTHING = 1e-12


def least_distance(
    built: Model,
    demands: Sequence[Demand],
    ends: Sequence[tuple[float, float | None]],
    begin: Floats,
) -> Floats | None:
    """Relative changes that meet all demands, or None if none were found from this beginning."""
    straight = [row for each in demands for row in each.rows] + _end_rows(ends)
    curved = [each for demand in demands for each in demand.curved]
    near, met = begin, None
    for _ in range(ROUNDS if curved else 1):
        x = _nearest([*straight, *(touching(built, each, near) for each in curved)])
        if x is None:
            break
        if all(each.worst(built, x) >= MET for each in demands):
            met = x
        if float(np.max(np.abs(x - near))) < STILL:
            break
        near = x
    return met


def touching(built: Model, curved: IceDemand, near: Floats) -> Row:
    """A curved demand as straight as it is near a formula."""
    slope = curved.slope(built, near)
    return Row(slope=slope, level=curved.level(built, near) - float(slope @ near))


def _nearest(rows: Sequence[Row]) -> Floats | None:
    """Least changes that meet all rows, or None if there are none."""
    from scipy.optimize import nnls

    sizes = [max(float(np.linalg.norm(row.slope)), NOTHING) for row in rows]
    slopes = np.array([row.slope / size for row, size in zip(rows, sizes, strict=True)])
    floors = [-row.level / size for row, size in zip(rows, sizes, strict=True)]
    whole = np.vstack([slopes.T, floors])
    wanted = np.zeros(len(whole))
    wanted[-1] = 1.0
    try:
        shares, rest = nnls(whole, wanted)
    except RuntimeError:
        return None
    if rest < NOTHING:
        return None
    left = whole @ shares - wanted
    nearest: Floats = -left[:-1] / left[-1]
    return nearest


def _end_rows(ends: Sequence[tuple[float, float | None]]) -> list[Row]:
    """Ends of every line, a pinned one with both."""
    rows = []
    for unit, (low, high) in zip(np.eye(len(ends)), ends, strict=True):
        rows.append(Row(slope=unit, level=-low))
        if high is not None:
            rows.append(Row(slope=-unit, level=high))
    return rows
