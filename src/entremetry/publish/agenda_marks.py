"""What is drawn of one day of a plan, from the back to the front."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from entremetry.agenda.agenda import AgendaSession, State
from entremetry.agenda.local_time import clock
from entremetry.agenda.local_time import day as day_name
from entremetry.publish.agenda_axis import QUIET
from entremetry.publish.agenda_days import Stretch, Wait, Work, order
from entremetry.publish.agenda_panel import CLOCK, SESSION_FOOT, SESSION_HEAD, Panel
from entremetry.publish.agenda_rows import LINE, Lane, Row, lane_of
from entremetry.publish.agenda_wording import effort, span
from entremetry.publish.colour import Colour, hex_colour
from entremetry.publish.drawing import INK, SERIF
from entremetry.publish.markup import element, escaped, number

BAND = 0.5  # width of a wait, as a part of its lane
SHORTEST = 5.0
QUIET_INK = 0.75
MOON = "a6.5 6.5 0 1 0 6 9.2a5.2 5.2 0 0 1 -6 -9.2Z"
CLOCHE = "h17m-1.5 -2.5a7 7 0 0 0 -14 0Zm-7 -7v-2.2"

Colours = Mapping[Lane, Colour]


def layers(panel: Panel, colours: Colours, prefix: str) -> Iterator[str]:
    """All of one day."""
    yield from nights(panel, prefix)
    for session in panel.sessions:
        yield from shaded(panel, session)
    yield heading(panel)
    for wait in panel.waits:
        yield from band(panel, wait, colours, prefix)
    yield from breaks(panel)
    yield from joined(panel)
    for task in panel.past:
        yield block(panel, lane_of(task), task, colours, done=True)
    for work in panel.works:
        yield from blocks(panel, work, colours)
    for row in panel.rows:
        yield from words(panel, row)
    yield from services(panel)


def heading(panel: Panel) -> str:
    """The name of the day."""
    top = panel.axis.heights[0] - 18.0
    if panel.sessions and panel.sessions[0].start == panel.start:
        top -= SESSION_HEAD
    return element(
        "text",
        escaped(day_name(panel.start)),
        x=panel.left,
        y=top,
        font_family=SERIF,
        font_size=19.0,
        fill=INK,
    )


def nights(panel: Panel, prefix: str) -> Iterator[str]:
    """Night: dotted with stars, with a moon."""
    for start, end in panel.nights:
        top, bottom = panel.axis.y(start), panel.axis.y(end)
        box = {"x": panel.left, "y": top, "width": panel.width, "height": bottom - top}
        yield element("rect", **box, fill=INK, fill_opacity=0.13)
        yield element("rect", **box, fill=f"url(#{prefix}-stars)")
        x = panel.left + panel.width - 20.0
        place = f"M{number(x)} {number(min(top + 6.0, bottom - 16.0))}"
        yield element("path", d=place + MOON, fill=INK, fill_opacity=QUIET_INK)


def shaded(panel: Panel, session: AgendaSession) -> Iterator[str]:
    """A session as a sheet behind its steps, with its hours and how much work it is."""
    top = panel.axis.y(session.start) - SESSION_HEAD
    bottom = panel.axis.y(session.end) + SESSION_FOOT
    yield element(
        "rect",
        x=panel.left + 0.5,
        y=top + 0.5,
        width=panel.width - 1.0,
        height=bottom - top - 1.0,
        rx=9.0,
        fill=INK,
        fill_opacity=0.06,
        stroke=INK,
        stroke_opacity=0.45,
        stroke_width=1.0,
    )
    yield text(span(session), panel.left + 10.0, top + 17.0, weight="700", size=13.0)
    yield text(effort(session), panel.left + 10.0, top + 31.0, opacity=QUIET_INK)


def band(panel: Panel, wait: Wait, colours: Colours, prefix: str) -> Iterator[str]:
    """A wait: narrow and striped, left out behind the head of a session."""
    lane = lane_of(wait.task)
    wide = BAND * panel.lane_width
    for top, bottom in beside_heads(panel, panel.axis.y(wait.start), panel.axis.y(wait.end)):
        box = {
            "x": panel.lanes[lane] - wide / 2.0,
            "y": top,
            "width": wide,
            "height": max(bottom - top, 1.0),
        }
        yield element("rect", **box, fill=hex_colour(colours[lane]), fill_opacity=0.55)
        yield element("rect", **box, fill=f"url(#{prefix}-stripes)", stroke=INK, stroke_width=0.8)


def beside_heads(panel: Panel, top: float, bottom: float) -> Iterator[tuple[float, float]]:
    """The pieces of a stretch down the drawing that no head of a session covers."""
    for session in sorted(panel.sessions, key=order):
        foot = panel.axis.y(session.start)
        if top < foot - SESSION_HEAD < bottom:
            yield top, foot - SESSION_HEAD
            top = foot
    if top < bottom:
        yield top, bottom


def blocks(panel: Panel, work: Work, colours: Colours) -> Iterator[str]:
    """Hands at work: broad and solid, pale once done, one block in each lane it is about."""
    done = all(task.state is State.DONE for task in work.tasks)
    for lane in dict.fromkeys(map(lane_of, work.tasks)):
        yield block(panel, lane, work, colours, done=done)


def block(panel: Panel, lane: Lane, stretch: Stretch, colours: Colours, *, done: bool) -> str:
    """One stretch of a lane, broad and solid."""
    top = panel.axis.y(stretch.start)
    wide = panel.lane_width - 2.0
    return element(
        "rect",
        x=panel.lanes[lane] - wide / 2.0,
        y=top,
        width=wide,
        height=max(panel.axis.y(stretch.end) - top, SHORTEST),
        rx=2.0,
        fill=hex_colour(colours[lane]),
        fill_opacity=0.35 if done else None,
        stroke=INK,
        stroke_width=1.2,
    )


def joined(panel: Panel) -> Iterator[str]:
    """A rod through the lanes that are worked on in one go."""
    for work in panel.works:
        across = [panel.lanes[lane_of(task)] for task in work.tasks]
        if max(across) > min(across):
            y = panel.axis.y(work.start) + 2.5
            d = f"M{number(min(across))} {number(y)}H{number(max(across))}"
            yield element("path", d=d, stroke=INK, stroke_width=3.0)


def words(panel: Panel, row: Row) -> Iterator[str]:
    """The hour, a thread from its lane, and the words of a moment."""
    y = panel.axis.y(row.at) + row.down
    if row.lanes:
        start = max(panel.lanes[lane] for lane in row.lanes) + panel.lane_width / 2.0
        level = panel.axis.y(row.at) + (3.0 if row.down else 2.0)
        d = f"M{number(start)} {number(level)}L{number(panel.words_at - 8.0)} {number(y + 7.0)}h5"
        yield element("path", d=d, fill="none", stroke=INK, stroke_width=0.9, stroke_opacity=0.5)
    yield text(clock(row.at), panel.left + 6.0, y + 11.0, weight="700")
    first = element("tspan", escaped(row.strong), font_weight="700")
    names = [
        element(
            "tspan",
            escaped(f" {name}" if k == 0 else name),
            x=panel.words_at if k else None,
            dy=LINE if k else None,
            font_family=SERIF,
            font_style="italic",
            font_size=13.0,
        )
        for k, name in enumerate(row.names)
    ]
    yield element("text", first, *names, x=panel.words_at, y=y + 11.0, fill=INK)
    for k, line in enumerate(row.details):
        yield text(
            line,
            panel.words_at,
            y + 10.0 + LINE * (len(row.names) + k),
            size=11.0,
            opacity=QUIET_INK,
        )


def breaks(panel: Panel) -> Iterator[str]:
    """A wave in the column of hours, with how much time is drawn shorter there."""
    at_the_bench = [order(session) for session in panel.sessions]
    spoken = {row.at.timestamp() for row in panel.rows}
    ends = pairwise(zip(panel.axis.times, panel.axis.heights, strict=True))
    for (start, top), (end, bottom) in ends:
        top += LINE if start in spoken else 0.0
        bottom -= SESSION_HEAD * sum(begin == end for begin, _ in at_the_bench)
        worked = any(begin < end and start < finish for begin, finish in at_the_bench)
        if worked or (end - start) / 60.0 < QUIET or bottom - top < 18.0:
            continue
        x, y = panel.left + CLOCK / 2.0 - 2.0, (top + bottom) / 2.0 + 4.0
        wave = f"M{number(x - 8)} {number(y)}q4 -5 8 0t8 0"
        yield element(
            "path", d=wave, fill="none", stroke=INK, stroke_width=1.3, stroke_opacity=QUIET_INK
        )


def services(panel: Panel) -> Iterator[str]:
    """The hour of service: a strong line with a cover over it."""
    for each in panel.served:
        y = panel.axis.y(each.at) - 3.0
        right = panel.left + panel.width
        d = f"M{number(panel.left)} {number(y)}H{number(right)}"
        yield element("path", d=d, stroke=INK, stroke_width=2.4)
        bell = f"M{number(right - 24.0)} {number(y - 4.0)}{CLOCHE}"
        yield element(
            "path", d=bell, fill="none", stroke=INK, stroke_width=1.6, stroke_linejoin="round"
        )


def text(
    words_: str,
    x: float,
    y: float,
    *,
    size: float | None = None,
    weight: str | None = None,
    opacity: float | None = None,
) -> str:
    """A text on the drawing."""
    return element(
        "text",
        escaped(words_),
        x=x,
        y=y,
        font_size=size,
        font_weight=weight,
        fill=INK,
        fill_opacity=opacity,
    )
