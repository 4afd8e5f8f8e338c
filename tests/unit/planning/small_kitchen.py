"""A small kitchen that plans are tried on: one cook, two evenings and a morning, one mould."""

from __future__ import annotations

from entremetry.planning import (
    Delay,
    Limits,
    Need,
    Part,
    Person,
    Problem,
    Resource,
    Service,
    Session,
    Task,
    Window,
)

HOUR = 60
DAY = 24 * HOUR
SERVED = DAY + 19 * HOUR
QUICK = Limits(seconds=10.0, explaining=3.0, workers=1)


def session(name: str, start: int, end: int, *, offered: bool = False) -> Session:
    """A session of one window, in hours of the first day."""
    window = Window(start=start * HOUR, end=end * HOUR)
    return Session(id=name, windows=(window,), offered=offered)


COOK = Person(
    id="cook",
    sessions=(session("friday", 17, 22), session("morning", 33, 37), session("evening", 41, 45)),
)


def task(name: str, hands_on: int = 0, waiting: int = 0, **more: object) -> Task:
    """A task, its ways to need things left to the caller."""
    return Task(id=name, hands_on=hands_on, waiting=waiting, **more)  # type: ignore[arg-type]


def dome() -> Problem:
    """A dome: insert, mousse, filling, glazing, thawing and service, and two things to bake."""
    mould = (Need(resource="mould"),)
    return Problem(
        end=SERVED,
        people=(COOK,),
        resources=(Resource(id="mould", turnover=10), Resource(id="oven", capacity=2)),
        tasks=(
            task("insert", 20, 180, waiting_most=3000, closing=5, needs=mould),
            task("mousse", 30),
            task("fill", 15, 360, waiting_most=2000, closing=10, needs=mould, freshness=1),
            task("sponge", 5, 15, closing=2, needs=(hot("180"),)),
            task("crumble", 5, 25, closing=2, needs=(hot("150"),)),
            task("glaze", 10),
            task("thaw", 0, 240, waiting_most=600),
            task("serve"),
        ),
        delays=(
            Delay(before="insert", after="fill"),
            Delay(before="mousse", after="fill", most=5),
            Delay(before="fill", after="glaze", most=3),
            Delay(before="glaze", after="thaw", most=1),
            Delay(before="thaw", after="serve", most=0),
        ),
        services=(Service(task="serve", at=SERVED),),
    )


def hot(state: str) -> Need:
    """The oven while something bakes."""
    return Need(resource="oven", part=Part.WAITING, state=state)


def alone(*tasks: Task, end: int = DAY, **more: object) -> Problem:
    """Tasks and whatever else, with one cook who is free all day."""
    free = Person(id="cook", sessions=(session("day", 0, 24),))
    return Problem(**{"end": end, "tasks": tasks, "people": (free,), **more})  # type: ignore[arg-type]
