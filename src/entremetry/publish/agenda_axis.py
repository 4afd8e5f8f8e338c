"""Time running down a drawing: true to the minute at the bench, shortened where nobody works."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise

PER_MINUTE = 2.2
QUIET = 40  # minutes without hands or words from which on a stretch is drawn shorter
SHORTENED = (24.0, 5.0)  # height of such a stretch, and what each hour adds to it


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """Heights of moments; `times` are seconds since the epoch, both grow from end to end.

    `foot` is the room that the last moment needs below it.
    """

    times: tuple[float, ...]
    heights: tuple[float, ...]
    foot: float = 0.0

    def y(self, moment: datetime) -> float:
        """Height of a moment; of one beyond an end, that of the end."""
        time = min(max(moment.timestamp(), self.times[0]), self.times[-1])
        k = min(bisect_right(self.times, time), len(self.times) - 1)
        before, after = self.times[k - 1], self.times[k]
        share = (time - before) / (after - before)
        return self.heights[k - 1] + share * (self.heights[k] - self.heights[k - 1])

    @property
    def bottom(self) -> float:
        """Height of the last moment, and what must stay free below it."""
        return self.heights[-1] + self.foot


def axis(
    knots: Iterable[datetime],
    *,
    top: float,
    below: Mapping[float, float],
    above: Mapping[float, float],
    busy: Iterable[tuple[float, float]],
) -> Axis:
    """Axis through moments.

    `below` and `above` hold the room that must stay free under and over a moment, `busy` the
    stretches that are never shortened, all in seconds since the epoch.
    """
    times = sorted({knot.timestamp() for knot in knots})
    stretches = tuple(busy)
    heights = [top + above.get(times[0], 0.0)]
    for start, end in pairwise(times):
        worked = any(begin < end and start < finish for begin, finish in stretches)
        wish = length((end - start) / 60.0, worked=worked)
        heights.append(heights[-1] + max(wish, below.get(start, 0.0)) + above.get(end, 0.0))
    foot = below.get(times[-1], 0.0)
    return Axis(times=tuple(times), heights=tuple(heights), foot=foot)


def length(minutes: float, *, worked: bool) -> float:
    """How long a stretch is drawn."""
    true = PER_MINUTE * minutes
    if worked or minutes < QUIET:
        return true
    least, hourly = SHORTENED
    return min(true, least + hourly * minutes / 60.0)
