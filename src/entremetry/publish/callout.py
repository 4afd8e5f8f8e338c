"""Where the labels of a drawing stand, and how their leader lines run."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from entremetry.publish.anchor import Anchor, anchors
from entremetry.publish.stage import Stage

MOST_LINES = 3
LETTER = 7.4  # width of a letter of a label, on the wide side
LINE = 13.5
GAP = 7.0
FOOT = 34.0

Point: TypeAlias = tuple[Anchor, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Callout:
    """A label: its lines, where the first line stands, and the leader to the part.

    The first `on_picture` points of the leader lie on the picture or at its edge.
    """

    component: str
    lines: tuple[str, ...]
    x: float
    y: float
    leader: tuple[tuple[float, float], ...]
    on_picture: int = 2


def wrapped(words: str, most: int) -> tuple[str, ...]:
    """Words in at most three lines, each no longer than `most` letters."""
    lines = textwrap.wrap(words, most, max_lines=MOST_LINES, placeholder=" …") or ["…"]
    return tuple(lines)


def spread(wishes: Sequence[float], sizes: Sequence[float], low: float, high: float) -> list[float]:
    """Tops of boxes stacked in order, as near to their wishes as they fit from `low` on."""
    tops: list[float] = []
    floor = low
    for wish, size in zip(wishes, sizes, strict=True):
        tops.append(max(wish - size / 2.0, floor))
        floor = tops[-1] + size
    ceiling = max(high, low + sum(sizes))
    for k in range(len(tops) - 1, -1, -1):
        tops[k] = min(tops[k], ceiling - sizes[k])
        ceiling = tops[k]
    return tops


def placed_callouts(
    stage: Stage, scale: float, corner: tuple[float, float], width: float, *, beside: bool
) -> tuple[tuple[Callout, ...], float]:
    """Labels of a picture whose upper left stands at `corner`, and the height they need."""
    points = [
        (
            anchor,
            corner[0] + (anchor.x - stage.left) * scale,
            corner[1] + (anchor.y - stage.top) * scale,
        )
        for anchor in anchors(stage, sideways=beside)
    ]
    right = corner[0] + (stage.right - stage.left) * scale
    bottom = corner[1] + (stage.bottom - stage.top) * scale
    if beside:
        return labels_beside(points, right, corner[1] - 8.0, bottom, width)
    return labels_below(points, bottom, width)


def labels_beside(
    points: Sequence[Point], right: float, top: float, bottom: float, width: float
) -> tuple[tuple[Callout, ...], float]:
    """Labels in a column to the right of the picture, in the order of what they point at."""
    column = right + 16.0
    most = max(8, int((width - column - 2.0) / LETTER))
    ordered = sorted(points, key=lambda point: point[2])
    texts = [wrapped(anchor.words, most) for anchor, _, _ in ordered]
    sizes = [LINE * len(lines) + GAP for lines in texts]
    tops = spread([y for _, _, y in ordered], sizes, top, bottom + 8.0)
    callouts = []
    for (anchor, x, y), lines, high, size in zip(ordered, texts, tops, sizes, strict=True):
        level = high + size / 2.0
        first = high + GAP / 2.0 + 10.5
        leader = ((x, y), (right + 5.0, level), (column - 3.0, level))
        callouts.append(
            Callout(component=anchor.component, lines=lines, x=column, y=first, leader=leader)
        )
    lowest = max([high + size for high, size in zip(tops, sizes, strict=True)] + [bottom + FOOT])
    return tuple(callouts), lowest + 6.0


def labels_below(
    points: Sequence[Point], bottom: float, width: float
) -> tuple[tuple[Callout, ...], float]:
    """Labels in rows under the picture, the rightmost first, so that no leader meets a word."""
    ordered = sorted(points, key=lambda point: -point[1])
    callouts = []
    high, limit = bottom + 12.0, float("inf")
    for anchor, x, y in ordered:
        line = min(x, limit - 9.0)
        limit = line
        lines = wrapped(anchor.words, max(8, int((width - line - 12.0) / LETTER)))
        level = high + LINE / 2.0
        edge = (x, bottom + 2.0)
        bend = ((x, y), edge, (line, bottom + 8.0)) if line < x else ((x, y), edge)
        leader = (*bend, (line, level), (line + 7.0, level))
        callouts.append(
            Callout(
                component=anchor.component,
                lines=lines,
                x=line + 10.0,
                y=high + 10.5,
                leader=leader,
                on_picture=2,
            )
        )
        high += LINE * len(lines) + GAP - 3.0
    return tuple(callouts), high + FOOT - 4.0
