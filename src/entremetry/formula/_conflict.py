"""The smallest set of demands that cannot be met together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import combinations


def smallest_conflict(count: int, can_meet: Callable[[Sequence[int]], bool]) -> tuple[int, ...]:
    """Indices of the fewest demands that cannot be met together, if all of them cannot.

    Every set that can be met is grown until nothing fits in any more; what it lacks must be hit
    by each conflict. The fewest indices that hit all such gaps are tried next; the first that
    cannot be met are the answer, and no smaller set is one.
    """
    gaps: list[frozenset[int]] = []
    while True:
        tried = _fewest_hitting(count, gaps)
        if not can_meet(tried):
            return tried
        gaps.append(_gap(count, tried, can_meet))


def _gap(
    count: int, met: Sequence[int], can_meet: Callable[[Sequence[int]], bool]
) -> frozenset[int]:
    grown = list(met)
    for index in range(count):
        if index not in grown and can_meet([*grown, index]):
            grown.append(index)
    return frozenset(range(count)) - frozenset(grown)


def _fewest_hitting(count: int, gaps: Sequence[frozenset[int]]) -> tuple[int, ...]:
    for size in range(count + 1):
        for chosen in combinations(range(count), size):
            if all(gap & set(chosen) for gap in gaps):
                return chosen
    return tuple(range(count))
