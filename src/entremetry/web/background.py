"""Work done one piece after another in a thread of its own."""

from __future__ import annotations

import threading
from collections.abc import Callable
from concurrent.futures import Future
from contextvars import copy_context
from functools import cached_property, partial
from queue import SimpleQueue
from typing import Any, TypeVar

T = TypeVar("T")


class Background:
    """A thread that does one job after another."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._waiting: SimpleQueue[tuple[Future[Any], Callable[[], Any]]] = SimpleQueue()

    def begin(self, job: Callable[[], T]) -> Future[T]:
        """What a job will give, once its turn has come; in the language of whoever began it."""
        future: Future[T] = Future()
        self._waiting.put((future, partial(copy_context().run, job)))
        _ = self._thread
        return future

    @cached_property
    def _thread(self) -> threading.Thread:
        """The thread, begun when first needed; it does not keep the program from ending."""
        thread = threading.Thread(target=self._work, name=self._name, daemon=True)
        thread.start()
        return thread

    def _work(self) -> None:
        while True:
            future, job = self._waiting.get()
            try:
                future.set_result(job())
            except BaseException as error:
                future.set_exception(error)
