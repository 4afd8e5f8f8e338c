"""Kitchens drawn at random: tasks, delays, people, sessions, things that are shared."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from hypothesis import strategies as st

from entremetry.planning import (
    Delay,
    Done,
    History,
    Merge,
    Need,
    Part,
    Person,
    Plan,
    Problem,
    Resource,
    Running,
    Service,
    Session,
    Side,
    Span,
    Task,
    Window,
)

DAY = 1440
END = 2 * DAY


def session(random: Random, number: int, start: int, *, offered: bool) -> Session:
    """A session of one or two windows."""
    first = Window(start=start, end=start + random.randint(60, 240))
    windows = [first]
    if random.random() < 0.4:
        later = first.end + random.randint(0, 40)
        windows.append(Window(start=later, end=later + random.randint(30, 90)))
    return Session(id=f"s{number}", windows=tuple(windows), offered=offered)


def person(random: Random, name: str) -> Person:
    """Somebody with two to four sessions in two days, the last perhaps only offered."""
    starts = sorted(random.sample(range(0, END - 400, 400), random.randint(2, 4)))
    sessions = [
        session(random, number, start, offered=number == 3 and random.random() < 0.5)
        for number, start in enumerate(starts)
    ]
    return Person(id=name, sessions=tuple(sessions))


def needs(random: Random, task: Task, resources: list[Resource]) -> tuple[Need, ...]:
    """Some of what a task could need."""
    if random.random() < 0.4 or not task.least:
        return ()
    resource = random.choice(resources)
    parts = [Part.WHOLE, *([Part.WAITING] if task.waiting else [])]
    lasting = random.choice([None, None, None, 120])
    return (
        Need(
            resource=resource.id,
            amount=random.randint(1, resource.capacity),
            part=random.choice(parts),
            state=random.choice(["", "150", "180"]) if resource.changeover else "",
            lasting=lasting,
        ),
    )


def task(random: Random, number: int, resources: list[Resource], people: list[Person]) -> Task:
    """A task of any shape."""
    waiting = random.choice([0, 0, 15, 45, 200])
    elastic = random.random() < 0.4
    drawn = Task(
        id=f"t{number}",
        hands_on=random.choice([0, 5, 12, 25]),
        waiting=waiting,
        waiting_most=waiting + random.randint(1, 600) if elastic else None,
        closing=random.choice([0, 0, 3, 8]),
        by=(random.choice(people).id,) if random.random() < 0.2 else (),
        earliest=random.randint(0, 400) if random.random() < 0.15 else None,
        latest=random.randint(END - 500, END) if random.random() < 0.15 else None,
        freshness=random.choice([0, 0, 1, 3]),
    )
    return replace(drawn, needs=needs(random, drawn, resources))


def delay(random: Random, before: int, after: int) -> Delay:
    """A delay forwards, with or without a longest time."""
    least = random.choice([0, 0, 10, None])
    most = random.choice([None, None, 60, 900])
    sides = list(Side)
    plain = random.random() < 0.7
    return Delay(
        before=f"t{before}",
        after=f"t{after}",
        least=least,
        most=most,
        leaving=Side.END if plain else random.choice(sides),
        reaching=Side.START if plain else random.choice(sides),
        firm=random.random() < 0.1,
    )


def kitchen(seed: int) -> Problem:
    """A kitchen of up to nine tasks, which may or may not have a plan."""
    random = Random(seed)
    resources = [
        Resource(id="mould", capacity=random.randint(1, 3), turnover=random.choice([0, 10])),
        Resource(id="oven", capacity=2, changeover=random.choice([1, 15])),
        Resource(id="freezer", capacity=random.randint(3, 9)),
    ]
    people = [person(random, name) for name in ("ann", "ben")[: random.randint(1, 2)]]
    count = random.randint(2, 9)
    tasks = [task(random, number, resources, people) for number in range(count)]
    pairs = [(i, j) for j in range(count) for i in range(j) if random.random() < 0.25]
    served = random.random() < 0.5
    merge = Merge(tasks=("t0", "t1"), together=Task(id="both", hands_on=20, waiting=10))
    return Problem(
        end=END,
        tasks=tuple(tasks),
        people=tuple(people),
        resources=tuple(resources),
        delays=tuple(delay(random, i, j) for i, j in pairs),
        spans=(Span(id="span", resource="mould", first="t0", last=f"t{count - 1}"),)
        if random.random() < 0.3
        else (),
        services=(Service(task=f"t{count - 1}", at=random.randint(800, END)),) if served else (),
        merges=(merge,) if random.random() < 0.2 else (),
    )


kitchens = st.integers(0, 10**9).map(kitchen)


def history(plan: Plan, now: int) -> History:
    """What has happened by now, if all went by a plan; merged tasks are told of as one."""
    own = [placed for placed in plan.placed if not placed.within]
    return History(
        now=now,
        done=tuple(Done(task=p.task, start=p.start, end=p.end) for p in own if p.end <= now),
        running=tuple(
            Running(task=p.task, start=p.start, person=p.hands[0].person if p.hands else "")
            for p in own
            if p.start < now < p.end
        ),
    )
