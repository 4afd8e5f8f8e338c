"""The whole section from its half: mirrored, turned as it is served, without gaps."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from entremetry.publish.temperature_outline import smooth_outlines
from entremetry.shapes import Floats
from entremetry.timings.step_temperatures import Field

ON_AXIS = 1e-6  # mm


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionMap:
    """Places across and down [mm], which of them lie in the piece, its outlines and parts [mm].

    `nearest` tells for each place of the half section which known place lends its temperature.
    """

    across: Floats
    down: Floats
    inside: NDArray[np.bool_]
    outlines: tuple[Floats, ...]
    parts: tuple[Floats, ...]
    nearest: tuple[NDArray[np.intp], NDArray[np.intp]]
    upside_down: bool

    def whole(self, temperatures: Floats) -> Floats:
        """Temperatures of a half section, at every place of the whole one."""
        return _mirrored(self._turned(temperatures[self.nearest]))

    def _turned(self, half: Floats) -> Floats:
        return half if self.upside_down else half[::-1]


def section_map(field: Field) -> SectionMap:
    """Map of a field: cells that are empty at the start are outside the piece."""
    known = np.pad(np.isfinite(field.temperatures[0]), ((1, 1), (0, 1)))
    levels = _prolonged(field.levels, both=True) * 1e3
    across = _prolonged(field.across, both=False) * 1e3
    rows, columns = _nearest(known)
    upside_down = field.served_upside_down
    down = levels if upside_down else (levels[0] + levels[-1]) - levels[::-1]
    turned = known if upside_down else known[::-1]
    whole = np.concatenate([turned[:, ::-1], turned], axis=1)
    places = np.concatenate([-across[::-1], across])
    return SectionMap(
        across=places,
        down=down,
        inside=whole,
        outlines=_edges(field, field.outline) or smooth_outlines(whole, places, down),
        parts=tuple(edge for part in field.parts for edge in _edges(field, part)),
        nearest=(np.clip(rows - 1, 0, len(field.levels) - 1), columns),
        upside_down=upside_down,
    )


def _edges(field: Field, half: Floats | None) -> tuple[Floats, ...]:
    """Edges of the whole section [mm] from that of its half: one through the axis, or two."""
    if half is None:
        return ()
    down = (
        half[:, 1] if field.served_upside_down else field.levels[0] + field.levels[-1] - half[:, 1]
    )
    edge = np.column_stack([half[:, 0], down]) * 1e3
    away = edge[:, 0] > ON_AXIS
    if away.all():
        return edge, edge * (-1.0, 1.0)
    start = int(np.flatnonzero(away & ~np.roll(away, 1))[0])
    turned = np.roll(edge, 1 - start, axis=0)
    side = turned[: int(away.sum()) + 2]
    return (np.concatenate([side, side[-2:0:-1] * (-1.0, 1.0)]),)


def _prolonged(places: Floats, *, both: bool) -> Floats:
    """Places with one more after the last, and one before the first if wanted."""
    after = 2.0 * places[-1] - places[-2]
    before = [2.0 * places[0] - places[1]] if both else []
    return np.concatenate([before, places, [after]])


def _mirrored(half: Floats) -> Floats:
    return np.concatenate([half[:, ::-1], half], axis=1)


def _nearest(known: NDArray[np.bool_]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Row and column of the nearest known place, for every place."""
    found = np.argwhere(known)
    places = np.argwhere(np.ones_like(known))
    apart = ((places[:, np.newaxis, :] - found[np.newaxis, :, :]) ** 2).sum(axis=2)
    nearest = found[apart.argmin(axis=1)].reshape(*known.shape, 2)
    return nearest[..., 0], nearest[..., 1]
