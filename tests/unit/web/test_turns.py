"""Few changes are worked out at the same time, and Python searches seldom meanwhile."""

from __future__ import annotations

import gc
from concurrent.futures import ThreadPoolExecutor
from threading import Barrier, Lock

from entremetry.web.tidying import SELDOM, search_seldom
from entremetry.web.turns import AT_ONCE, in_turn


def test_no_more_are_answered_at_once_than_there_are_turns() -> None:
    meeting, lock = Barrier(AT_ONCE, timeout=10.0), Lock()
    inside = most = 0

    @in_turn
    def answer(number: int) -> int:
        nonlocal inside, most
        with lock:
            inside += 1
            most = max(most, inside)
        meeting.wait()
        with lock:
            inside -= 1
        return number

    asked = range(4 * AT_ONCE)
    with ThreadPoolExecutor(len(asked)) as threads:
        assert list(threads.map(answer, asked)) == list(asked)
    assert most == AT_ONCE


def test_a_turn_is_given_back_after_an_error() -> None:
    @in_turn
    def refused() -> None:
        raise LookupError

    for _ in range(2 * AT_ONCE):
        try:
            refused()
        except LookupError:
            continue


def test_what_is_there_already_is_not_searched_again() -> None:
    before = gc.get_threshold()
    try:
        search_seldom()
        assert gc.get_threshold() == SELDOM
        assert gc.get_freeze_count() > 0
    finally:
        gc.set_threshold(*before)
        gc.unfreeze()
