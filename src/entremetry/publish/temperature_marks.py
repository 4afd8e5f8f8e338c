"""Where the words of moments stand above a time axis, so that none covers another."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from entremetry.timings.step_temperatures import Mark

LETTER = 6.2  # width of a letter of these words, on the wide side
ROW = 15.0
ASIDE = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """Words of one moment: where its line stands, where the words start, how many rows up.

    `gaps` are the rows that its line leaves out because other words stand there.
    """

    text: str
    x: float
    start: float
    row: int
    gaps: tuple[int, ...] = ()

    @property
    def end(self) -> float:
        """Right end of the words."""
        return self.start + LETTER * len(self.text)


def flags(places: Sequence[tuple[float, str]], right: float) -> tuple[Flag, ...]:
    """Words of moments at these places across, none beyond `right`, row 0 the lowest.

    The last moment is set first and lowest, so that lines mostly run beside other words.
    """
    most = max(8, int((right - ASIDE) / LETTER))
    set_: list[Flag] = []
    for x, text in sorted(places, key=lambda place: -place[0]):
        words = textwrap.shorten(text, most, placeholder=" …") or "…"
        start = max(0.0, min(x + ASIDE, right - LETTER * len(words)))
        set_.append(_lowest(Flag(text=words, x=x, start=start, row=0), set_))
    return tuple(_with_gaps(flag, set_) for flag in set_)


def rows(placed: Sequence[Flag]) -> int:
    """How many rows of words there are."""
    return max((flag.row + 1 for flag in placed), default=0)


def moments(marks: Sequence[Mark], end: float) -> tuple[Mark, ...]:
    """Marks within a time; those that share a moment are one, their words joined."""
    joined: dict[float, list[str]] = {}
    for mark in sorted(marks, key=lambda mark: mark.time):
        if 0.0 <= mark.time <= end:
            joined.setdefault(mark.time, []).append(mark.text)
    return tuple(Mark(time=time, text=", ".join(texts)) for time, texts in joined.items())


def _lowest(flag: Flag, others: Sequence[Flag]) -> Flag:
    """The flag in the lowest row where its words are free and meet no line of another."""
    for row in range(len(others) + 1):
        clash = any(
            (other.row == row and _covers(flag, other)) or (other.row >= row and _over(flag, other))
            for other in others
        )
        if not clash:
            return Flag(text=flag.text, x=flag.x, start=flag.start, row=row)
    return Flag(text=flag.text, x=flag.x, start=flag.start, row=len(others))


def _covers(one: Flag, two: Flag) -> bool:
    return one.start < two.end + ASIDE and two.start < one.end + ASIDE


def _over(one: Flag, two: Flag) -> bool:
    """Whether the words of one stand on the line of the other."""
    return one.start - 1.0 < two.x < one.end + 1.0


def _with_gaps(flag: Flag, others: Sequence[Flag]) -> Flag:
    gaps = sorted({o.row for o in others if o.row < flag.row and _over(o, flag)})
    return Flag(text=flag.text, x=flag.x, start=flag.start, row=flag.row, gaps=tuple(gaps))


def fold(text: str, width: float, letter: float = LETTER) -> list[str]:
    """Lines of a text that fit a width."""
    return textwrap.wrap(text, max(6, int(width / letter))) or [""]
