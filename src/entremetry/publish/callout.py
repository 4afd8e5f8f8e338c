"""Where the labels of a drawing stand, and how their leader lines run."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from entremetry.publish.anchor import Anchor, anchors
from entremetry.publish.stage import Stage

MOST_LINES = 3
LETTER = 7.4  # width of a letter of a label, on the wide side
LINE = 13.5
GAP = 7.0
FOOT = 34.0
ASIDE = 16.0
EDGE = 6.0

Place: TypeAlias = tuple[float, float]
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
        return labels_beside(points, right, EDGE, bottom, width)
    return labels_below(points, bottom, width)


def labels_beside(
    points: Sequence[Point], right: float, top: float, bottom: float, width: float
) -> tuple[tuple[Callout, ...], float]:
    """Labels in a column to the right of the picture, in an order in which no leaders cross."""
    ordered = sorted(points, key=lambda point: point[2])
    for _ in range(len(ordered) ** 2 + 1):
        callouts, lowest = column(ordered, right, top, bottom, width)
        crossed = first_crossing(callouts)
        if crossed is None:
            break
        ordered[crossed], ordered[crossed + 1] = ordered[crossed + 1], ordered[crossed]
    return callouts, max(lowest, bottom + FOOT) + 6.0


def beside(words: str, right: float, width: float) -> tuple[str, ...]:
    """Lines of a label between the picture's right edge and the edge of the drawing."""
    return wrapped(words, max(8, int((width - right - ASIDE - 2.0) / LETTER)))


def column_height(stage: Stage, right: float, width: float) -> float:
    """Height that labels beside a picture take, one under the other."""
    return sum(LINE * len(beside(shape.part.name, right, width)) + GAP for shape in stage.shapes)


def column(
    ordered: Sequence[Point], right: float, top: float, bottom: float, width: float
) -> tuple[tuple[Callout, ...], float]:
    """Labels under one another in a given order, and how far down they reach."""
    left = right + ASIDE
    texts = [beside(anchor.words, right, width) for anchor, _, _ in ordered]
    sizes = [LINE * len(lines) + GAP for lines in texts]
    tops = spread([y for _, _, y in ordered], sizes, top, bottom + 8.0)
    callouts = tuple(
        Callout(
            component=anchor.component,
            lines=lines,
            x=left,
            y=high + GAP / 2.0 + 10.5,
            leader=((x, y), (right + 5.0, high + size / 2.0), (left - 3.0, high + size / 2.0)),
        )
        for (anchor, x, y), lines, high, size in zip(ordered, texts, tops, sizes, strict=True)
    )
    return callouts, max((high + size for high, size in zip(tops, sizes, strict=True)), default=0.0)


def first_crossing(callouts: Sequence[Callout]) -> int | None:
    """Index of the first label whose leader crosses that of the next, or None."""
    for k, (one, two) in enumerate(pairwise(callouts)):
        if crossing(*one.leader[:2], *two.leader[:2]):
            return k
    return None


def crossing(a: Place, b: Place, c: Place, d: Place) -> bool:
    """Whether the line from `a` to `b` crosses that from `c` to `d`."""
    return turn(a, b, c) * turn(a, b, d) < 0.0 and turn(c, d, a) * turn(c, d, b) < 0.0


def turn(a: Place, b: Place, c: Place) -> float:
    """Positive if the way from `a` over `b` to `c` turns one way, negative if the other."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


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
