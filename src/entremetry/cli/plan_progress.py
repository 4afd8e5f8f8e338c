"""Planning that tells of itself on standard error and that Ctrl-C ends with the best so far."""

from __future__ import annotations

import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor, wait
from threading import Event
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from entremetry.planning.limits import Limits, Progress

Answer = TypeVar("Answer")

LOOK_EVERY = 0.2
"""Seconds after which Ctrl-C is heard even if another thread was woken by it."""

STOPPING = "Stopping; the best plan so far is kept. Ctrl-C again gives up."


def planned(work: Callable[[Limits], Answer], *, seconds: float | None) -> Answer:
    """Answer of some planning, done beside the thread that hears Ctrl-C.

    The first Ctrl-C cancels the search, which then answers with what it has; the second gives up.
    """
    from entremetry.planning.limits import Limits

    stop = Event()
    limits = Limits(
        seconds=Limits().seconds if seconds is None else seconds,
        progress=tell,
        cancelled=stop.is_set,
    )
    with ThreadPoolExecutor(1) as pool:
        answer = pool.submit(work, limits)
        while not answer.done():
            try:
                wait([answer], timeout=LOOK_EVERY)
            except KeyboardInterrupt:
                if stop.is_set():
                    raise
                stop.set()
                _say(STOPPING, over=True)
        _say("", over=False)
        return answer.result()


def tell(progress: Progress) -> None:
    """Say how far it is: on one line that changes on a terminal, else a line each time."""
    _say(f"{progress.seconds:4.0f} s  {said(progress)}", over=not sys.stderr.isatty())


def said(progress: Progress) -> str:
    """The best so far in words."""
    from entremetry.agenda.goals import best_so_far, goal_name

    if progress.goal is None:
        return "a plan is found"
    return f"{goal_name(progress.goal)}: {best_so_far(progress.goal, progress)}"


def _say(line: str, *, over: bool) -> None:
    """Write a line, in place of the last one on a terminal; `over` ends it."""
    if sys.stderr.isatty():
        line = f"\r\x1b[K{line}"
    sys.stderr.write(line + "\n" * over)
    sys.stderr.flush()
