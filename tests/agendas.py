"""An agenda written by hand: two desserts, two days, two sessions, a night between them."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from entremetry.agenda.agenda import (
    Agenda,
    AgendaSession,
    AgendaTask,
    GoalReached,
    Hands,
    Served,
    State,
    WayOut,
)

PARIS = ZoneInfo("Europe/Paris")
DOME = ("pear-dome", "Pear dome")
BARS = ("hazelnut-bars", "Hazelnut bars")
COOK = "cook"


def at(text: str) -> datetime:
    """A local time of the plan, '27 18:30' in November 2026, or a whole date and time."""
    full = text if len(text) > 8 else f"2026-11-{text}"
    return datetime.fromisoformat(full).replace(tzinfo=PARIS)


def task(
    dessert: tuple[str, str],
    component: tuple[str, str],
    kind: str,
    span: tuple[str, str],
    *hands: tuple[str, int],
    number: int = 1,
    **others: object,
) -> AgendaTask:
    """One task; hands are given as (start, minutes)."""
    start, end = map(at, span)
    stretches = tuple(
        Hands(person=COOK, start=at(begin), end=at(begin) + timedelta(minutes=minutes))
        for begin, minutes in hands
    )
    worked = sum(minutes for _, minutes in hands)
    made = AgendaTask(
        id=f"{dessert[0]}/{component[0]}/{kind}-{number}",
        dessert=dessert[0],
        dessert_name=dessert[1],
        component=component[0],
        component_name=component[1],
        kind=kind,
        text=f"{kind} {component[1]}",
        start=start,
        end=end,
        hands=stretches,
        hands_on=worked,
        waiting=round((end.timestamp() - start.timestamp()) / 60.0) - worked,
    )
    return replace(made, **others)


COMPOTE = ("compote", "Pear compote")
BASE = ("base", "Almond base")
MOUSSE = ("mousse", "Vanilla mousse")
GLAZE = ("glaze", "Caramel glaze")
SABLE = ("sable", "Hazelnut sablé")
CREAM = ("cream", "Hazelnut cream")
WHOLE_DOME = ("", "Pear dome")
WHOLE_BAR = ("", "Hazelnut bars")

TOGETHER = ("hazelnut-bars/sable/mix-1", "pear-dome/base/mix-1")

TASKS = (
    task(
        DOME,
        COMPOTE,
        "cook-to",
        ("27 18:30", "27 18:50"),
        ("27 18:30", 20),
        text="Cook the pear, the sugar and the pectin to 84 °C, stirring.",
        uses=("hob", "small pan"),
        amounts=("260 g pear", "42 g caster sugar", "5.2 g pectin NH"),
        because="hands-on time of 307 g in a small pan",
    ),
    task(
        DOME,
        COMPOTE,
        "fill",
        ("27 18:50", "27 19:00"),
        ("27 18:50", 10),
        text="Fill 8 insert cavities with 36 g each.",
        uses=("half-sphere tray 40 mm",),
        amounts=("288 g pear compote",),
    ),
    task(
        DOME,
        COMPOTE,
        "freeze-until",
        ("27 19:00", "27 21:10"),
        ("27 19:00", 2),
        text="Freeze until the middle is at -15 °C.",
        uses=("chest freezer", "half-sphere tray 40 mm"),
        because="computed: about 1 h 50 min, at most 2 h 8 min; the longer is planned",
    ),
    task(
        DOME,
        BASE,
        "mix",
        ("27 19:05", "27 19:20"),
        ("27 19:05", 15),
        text="Rub the butter into the flour, the almonds and the sugar.",
        uses=("mixer",),
        amounts=("120 g butter", "150 g plain flour", "90 g ground almonds"),
        together=(TOGETHER[0],),
    ),
    task(
        BARS,
        SABLE,
        "mix",
        ("27 19:05", "27 19:20"),
        ("27 19:05", 15),
        text="Rub the butter into the flour and the sugar.",
        uses=("mixer",),
        amounts=("100 g butter", "160 g plain flour", "60 g icing sugar"),
        together=(TOGETHER[1],),
    ),
    task(
        DOME,
        BASE,
        "bake",
        ("27 19:25", "27 19:43"),
        ("27 19:25", 3),
        ("27 19:41", 2),
        text="Bake at 165 °C until golden.",
        uses=("oven", "tray 30 × 40 cm"),
        round=1,
        rounds=2,
    ),
    task(
        DOME,
        BASE,
        "bake",
        ("27 19:45", "27 20:03"),
        ("27 19:45", 3),
        ("27 20:01", 2),
        number=2,
        text="Bake at 165 °C until golden.",
        uses=("oven", "tray 30 × 40 cm"),
        round=2,
        rounds=2,
    ),
    task(
        BARS,
        CREAM,
        "whip",
        ("27 20:10", "27 20:25"),
        ("27 20:10", 15),
        text="Whip the cream to soft peaks.",
        uses=("mixer", "large bowl"),
        amounts=("240 g cream 35 %", "30 g hazelnut paste"),
    ),
    task(
        BARS,
        CREAM,
        "freeze-until",
        ("27 20:30", "28 08:30"),
        ("27 20:30", 8),
        text="Fill the frame and freeze until the middle is at -12 °C.",
        uses=("chest freezer", "frame 20 × 20 cm"),
        amounts=("690 g hazelnut cream",),
    ),
    task(
        DOME,
        MOUSSE,
        "fold",
        ("27 21:00", "27 21:15"),
        ("27 21:00", 15),
        text="Fold the cream into the custard.",
        uses=("large bowl",),
        amounts=("210 g custard", "300 g whipped cream"),
    ),
    task(
        DOME,
        MOUSSE,
        "freeze-until",
        ("27 21:15", "28 09:00"),
        ("27 21:15", 20),
        text="Fill the cavities, set the inserts and the bases, freeze until -15 °C.",
        uses=("chest freezer", "hemisphere tray 70 mm"),
        amounts=("510 g vanilla mousse", "8 inserts", "8 bases"),
    ),
    task(
        DOME,
        GLAZE,
        "cool-to",
        ("28 14:00", "28 14:50"),
        ("28 14:00", 12),
        ("28 14:48", 2),
        text="Melt the glaze to 45 °C and cool it to 32 °C.",
        uses=("hob", "jug"),
        amounts=("400 g caramel glaze",),
    ),
    task(
        DOME,
        GLAZE,
        "glaze-at",
        ("28 14:55", "28 15:20"),
        ("28 14:55", 25),
        text="Unmould and glaze at 32 °C within 3 min of leaving the freezer.",
        uses=("wire rack",),
    ),
    task(
        BARS,
        WHOLE_BAR,
        "cut",
        ("28 15:25", "28 15:40"),
        ("28 15:25", 15),
        text="Cut into 6 bars of 3 × 10 cm.",
        uses=("board",),
    ),
    task(
        DOME,
        WHOLE_DOME,
        "thaw-until",
        ("28 15:40", "28 19:00"),
        ("28 15:40", 5),
        text="Thaw in the fridge until the middle is at 4 °C.",
        uses=("fridge",),
    ),
)

SESSIONS = (
    AgendaSession(
        id="session-1",
        person=COOK,
        start=at("27 18:30"),
        end=at("27 21:35"),
        tasks=tuple(each.id for each in TASKS[:11]),
        hands_on=130,
        idle=55,
    ),
    AgendaSession(
        id="session-2",
        person=COOK,
        start=at("28 14:00"),
        end=at("28 15:45"),
        tasks=tuple(each.id for each in TASKS[11:]),
        hands_on=59,
        idle=46,
    ),
)

SERVED = (
    Served(dessert=DOME[0], name=DOME[1], pieces=8, at=at("28 19:00")),
    Served(dessert=BARS[0], name=BARS[1], pieces=6, at=at("28 19:00")),
)

AGENDA = Agenda(
    zone="Europe/Paris",
    begins=at("27 18:00"),
    served=SERVED,
    feasible=True,
    proved_optimal=True,
    tasks=TASKS,
    sessions=SESSIONS,
    goals=(
        GoalReached(name="sessions", text="2 sessions; fewer are not possible", proved=True),
        GoalReached(name="bench", text="4 h 50 min at the bench; 4 h 40 min may do", proved=False),
    ),
    assumptions=("The freezer takes 12 kg a day.",),
    cautions=("The glaze was timed as is usual, without a source.",),
)

IMPOSSIBLE = Agenda(
    zone="Europe/Paris",
    begins=at("28 14:00"),
    served=SERVED,
    feasible=False,
    proved_optimal=False,
    conflicts=(
        (
            "Pear dome is served on Saturday 28 November, 19:00",
            "freezing the vanilla mousse takes 11 h 45 min",
            "work begins on Saturday 28 November, 14:00 at the earliest",
        ),
    ),
    ways_out=(
        WayOut(
            changes=("serve Pear dome on Sunday 29 November, 19:00 instead of Saturday",),
            tasks=TASKS,
            sessions=SESSIONS,
            served=SERVED,
        ),
    ),
)


def with_a_moment_outside() -> Agenda:
    """The agenda with garnish placed at a moment that lies in no session."""
    garnish = task(
        DOME,
        ("garnish", "Pear crisps"),
        "place",
        ("28 18:50", "28 18:58"),
        ("28 18:50", 8),
        text="Set a crisp on each dome.",
        amounts=("8 pear crisps",),
    )
    return replace(AGENDA, tasks=(*TASKS, garnish))


def begun() -> Agenda:
    """The agenda with a task done, one under way and one moved."""
    first, second, third, *others = TASKS
    return replace(
        AGENDA,
        tasks=(
            replace(first, state=State.DONE),
            replace(second, state=State.UNDER_WAY),
            replace(third, moved=25),
            *others,
        ),
    )
