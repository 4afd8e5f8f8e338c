"""A long curve with fewer points, where leaving them out is seen the least."""

from __future__ import annotations

import heapq

import numpy as np

from entremetry.shapes import Floats


def kept_points(times: Floats, temperatures: Floats, most: int) -> list[int]:
    """Indices of at most `most` points, ends included, that follow a curve best.

    The piece with the largest distance from its chord is divided first.
    """
    count = len(times)
    if count <= most:
        return list(range(count))
    kept = {0, count - 1}
    waiting: list[tuple[float, int, int, int]] = []
    _await(waiting, times, temperatures, 0, count - 1)
    while waiting and len(kept) < most:
        _, first, middle, last = heapq.heappop(waiting)
        kept.add(middle)
        _await(waiting, times, temperatures, first, middle)
        _await(waiting, times, temperatures, middle, last)
    return sorted(kept)


def _await(
    waiting: list[tuple[float, int, int, int]],
    times: Floats,
    temperatures: Floats,
    first: int,
    last: int,
) -> None:
    """Put a piece in the queue with its point farthest from the chord."""
    if last - first < 2:
        return
    inner = slice(first + 1, last)
    ends = [first, last]
    chord = np.interp(times[inner], times[ends], temperatures[ends])
    distance = np.abs(temperatures[inner] - chord)
    middle = int(np.argmax(distance))
    heapq.heappush(waiting, (-float(distance[middle]), first, first + 1 + middle, last))
