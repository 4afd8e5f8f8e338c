"""A closed line with the fewest points that still follow it."""

from __future__ import annotations

import numpy as np

from entremetry.shapes import Floats

FINEST = 0.12  # how far a point may lie off the line that is drawn instead


def simplified(outline: Floats, finest: float = FINEST) -> Floats:
    """Points of a closed line, those left out that lie within `finest` of what is left."""
    far = int(np.argmax(np.hypot(*(outline - outline[0]).T)))
    ring = np.concatenate([outline, outline[:1]])
    kept = {0, far}
    waiting = [(0, far), (far, len(outline))]
    while waiting:
        first, last = waiting.pop()
        if last - first < 2:
            continue
        off = _off(ring[first], ring[last], ring[first + 1 : last])
        if off.max() > finest:
            middle = first + 1 + int(off.argmax())
            kept.add(middle)
            waiting += [(first, middle), (middle, last)]
    return outline[sorted(kept)]


def _off(start: Floats, end: Floats, points: Floats) -> Floats:
    """How far points lie off the straight way between two others."""
    across, down = end - start
    length = float(np.hypot(across, down))
    away = points - start
    if length == 0.0:
        return np.asarray(np.hypot(away[:, 0], away[:, 1]))
    return np.asarray(np.abs(across * away[:, 1] - down * away[:, 0]) / length)
