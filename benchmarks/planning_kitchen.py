"""Invented kitchens of any size: several desserts over three days, one cook, few moulds."""

from __future__ import annotations

from random import Random

from entremetry.planning import (
    Delay,
    Need,
    Part,
    Person,
    Problem,
    Resource,
    Service,
    Session,
    Side,
    Span,
    Task,
    Window,
)

DAY = 1440
END = 2 * DAY + 19 * 60
EVENINGS = ((16, 22), (32, 37), (38, 44), (55, 67))
"""Hours at the bench, counted from the first midnight: an evening, two halves of a day, a day."""
FRAGMENTS = tuple((hour, hour + 0.75) for hour in (*range(14, 22), *range(33, 45), *range(56, 66)))


def cook(*, fragmented: bool = False) -> Person:
    """The one cook; in fragments, each free hour is cut by a break."""
    hours = FRAGMENTS if fragmented else EVENINGS
    windows = [Window(start=int(60 * a), end=int(60 * b)) for a, b in hours]
    if not fragmented:
        named = [Session(id=f"s{i}", windows=(window,)) for i, window in enumerate(windows)]
        return Person(id="cook", sessions=tuple(named))
    days = [[w for w in windows if w.start // DAY == day] for day in range(3)]
    return Person(
        id="cook",
        sessions=tuple(Session(id=f"d{i}", windows=tuple(day)) for i, day in enumerate(days)),
    )


def dessert(name: str, random: Random, extras: int) -> tuple[list[Task], list[Delay], list[Span]]:
    """One dessert: insert, base, mousse, filling, glaze, and the way to the table."""
    draw = random.randint
    mixer = Need(resource="mixer", part=Part.OPENING)
    oven = Need(resource="oven", part=Part.WAITING, state=random.choice(("160", "180")))
    litres = draw(20, 60)
    cold = Need(resource="freezer", part=Part.WAITING, amount=litres)
    tasks = [
        Task(id="weigh", hands_on=draw(8, 15)),
        Task(id="puree", hands_on=draw(8, 14)),
        Task(id="insert", hands_on=draw(10, 18), waiting=180, waiting_most=2 * DAY, needs=(cold,)),
        Task(id="dough", hands_on=draw(8, 15), waiting=60, waiting_most=2 * DAY),
        Task(id="roll", hands_on=draw(6, 10), waiting=30, waiting_most=DAY),
        Task(id="bake", hands_on=3, waiting=draw(12, 25), closing=2, needs=(oven,)),
        Task(id="cut", hands_on=draw(3, 6)),
        Task(id="bloom", hands_on=2, waiting=10, waiting_most=60),
        Task(id="custard", hands_on=draw(10, 16), waiting=15, waiting_most=40),
        Task(id="whip", hands_on=draw(5, 8), needs=(mixer,)),
        Task(id="fold", hands_on=draw(5, 8)),
        Task(id="fill", hands_on=draw(8, 15), waiting=360, waiting_most=2 * DAY, needs=(cold,)),
        Task(id="unmould", hands_on=draw(4, 8)),
        Task(id="glaze-made", hands_on=draw(10, 15), waiting=120, waiting_most=2 * DAY),
        Task(id="rewarm", hands_on=5, waiting=10, waiting_most=40),
        Task(id="coat", hands_on=draw(4, 8), freshness=1),
        Task(id="decorate", hands_on=draw(4, 8), freshness=1),
        Task(id="thaw", waiting=240, waiting_most=600),
        Task(id="serve"),
    ]
    chain = (
        ("weigh", "puree", None), ("weigh", "dough", None), ("puree", "insert", 30),
        ("dough", "roll", None), ("roll", "bake", None), ("bake", "cut", 10),
        ("bloom", "custard", None), ("custard", "fold", 30), ("whip", "fold", 20),
        ("fold", "fill", 5), ("insert", "fill", None), ("cut", "fill", None),
        ("fill", "unmould", None), ("glaze-made", "rewarm", None), ("rewarm", "coat", 30),
        ("unmould", "coat", 3), ("coat", "decorate", 15), ("decorate", "thaw", 5),
        ("thaw", "serve", 0),
    )  # fmt: skip
    delays = [Delay(before=a, after=b, most=most) for a, b, most in chain]
    spans = [
        Span(id="mould", resource="mould", first="fill", last="unmould"),
        Span(id="insert-mould", resource="insert mould", first="insert", last="fill",
             reaching=Side.START),
    ]  # fmt: skip
    for number in range(extras):
        garnish(f"garnish{number}", random, tasks, delays)
    return prefixed(name, tasks, delays, spans)


def garnish(name: str, random: Random, tasks: list[Task], delays: list[Delay]) -> None:
    """Add a small component: weighed, cooked, left to cool, and put on at the end."""
    tasks += [
        Task(id=f"{name}-weigh", hands_on=random.randint(3, 8)),
        Task(id=f"{name}-cook", hands_on=random.randint(6, 12), waiting=random.randint(0, 30)),
        Task(id=f"{name}-cool", waiting=60, waiting_most=DAY),
        Task(id=f"{name}-cut", hands_on=random.randint(3, 8)),
    ]
    chain = ("weigh", 30), ("cook", 15), ("cool", None)
    names = ("weigh", "cook", "cool", "cut")
    for (before, most), after in zip(chain, names[1:], strict=True):
        delays.append(Delay(before=f"{name}-{before}", after=f"{name}-{after}", most=most))
    delays.append(Delay(before=f"{name}-cut", after="decorate"))


def prefixed(
    name: str, tasks: list[Task], delays: list[Delay], spans: list[Span]
) -> tuple[list[Task], list[Delay], list[Span]]:
    """Give all ids of one dessert its name."""
    from dataclasses import replace

    return (
        [replace(task, id=f"{name}/{task.id}") for task in tasks],
        [replace(d, before=f"{name}/{d.before}", after=f"{name}/{d.after}") for d in delays],
        [
            replace(s, id=f"{name}/{s.id}", first=f"{name}/{s.first}", last=f"{name}/{s.last}")
            for s in spans
        ],
    )


def kitchen(desserts: int, *, extras: int = 0, seed: int = 1, fragmented: bool = False) -> Problem:
    """A menu of desserts of 19 tasks and some garnishes of 4 each, served on the third day."""
    random = Random(seed)
    parts = [dessert(f"d{number}", random, extras) for number in range(desserts)]
    return Problem(
        end=END,
        people=(cook(fragmented=fragmented),),
        resources=(
            Resource(id="oven", capacity=2, changeover=10),
            Resource(id="mixer", turnover=5),
            Resource(id="freezer", capacity=60 * (desserts + 1)),
            Resource(id="mould", capacity=desserts),
            Resource(id="insert mould", capacity=max(2, desserts - 1)),
        ),
        tasks=tuple(task for tasks, _, _ in parts for task in tasks),
        delays=tuple(delay for _, delays, _ in parts for delay in delays),
        spans=tuple(span for _, _, spans in parts for span in spans),
        services=tuple(Service(task=f"d{i}/serve", at=END) for i in range(desserts)),
    )
