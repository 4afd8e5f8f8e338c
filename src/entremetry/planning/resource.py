"""Who and what there is to work with."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Resource:
    """Something used and given back: an oven, a mixer, moulds of a kind, litres of a freezer.

    After each use the amount stays taken for `turnover` minutes (washing, setting up). Uses that
    name different states never overlap, and `changeover` minutes lie between them. `spare` more
    could be had (borrowed, bought) in a plan that bends.
    """

    id: str
    capacity: int = 1
    turnover: int = 0
    changeover: int = 0
    spare: int = 1
    weight: int = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Free minutes, from `start` up to and without `end`."""

    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """A stretch of work at the bench, with breaks between its windows.

    An `offered` session is not planned, but could be opened in a plan that bends; `overtime` is
    how much longer the session could last then.
    """

    id: str
    windows: tuple[Window, ...]
    offered: bool = False
    overtime: int = 60
    weight: int = 1

    @property
    def start(self) -> int:
        """First free minute."""
        return self.windows[0].start

    @property
    def end(self) -> int:
        """End of the last window."""
        return self.windows[-1].end

    @property
    def minutes(self) -> int:
        """Free minutes in all."""
        return self.free(self.start, self.end)

    def free(self, start: int, end: int) -> int:
        """Free minutes between two minutes."""
        return sum(max(0, min(end, w.end) - max(start, w.start)) for w in self.windows)


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Somebody with two hands, who does one thing at a time, within the sessions."""

    id: str
    sessions: tuple[Session, ...]

    @property
    def planned(self) -> tuple[Session, ...]:
        """Sessions that are not merely offered."""
        return tuple(session for session in self.sessions if not session.offered)
