"""Make the heat solver ready while the first page is read."""

from __future__ import annotations

from threading import Event

from entremetry.web.temperature_work import Question, Shown, TemperatureWork, shown
from entremetry.web.tidying import search_seldom

FREEZING = "freeze-until"
FIRST_PAGE = 1.0  # s


def begin_warming(work: TemperatureWork) -> None:
    """Let the thread freeze a demo dessert, which compiles the solver; no page waits for it."""
    work.warm_up(_made_ready)


def _made_ready() -> None:
    """Wait until the first page has had the processor to itself, then freeze."""
    Event().wait(FIRST_PAGE)
    frozen_demo()
    search_seldom()


def frozen_demo() -> Shown | None:
    """A demo dessert in the freezer, or nothing if none is frozen."""
    from entremetry.store.demo import demo_texts
    from entremetry.usecases.temperatures import timed_steps_of_text

    for name, text in demo_texts().items():
        for step in timed_steps_of_text(text, file=name):
            if step.kind == FREEZING:
                return shown(Question(text=text, file=name, step=step.id, kitchen_text=None))
    return None
