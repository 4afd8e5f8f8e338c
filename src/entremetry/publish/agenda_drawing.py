"""The days of a plan as a drawing: time runs down, work is solid, what goes by itself striped."""

from __future__ import annotations

from hashlib import sha256
from typing import TypeAlias

from entremetry.agenda.agenda import Agenda
from entremetry.publish.agenda_marks import Colours, layers, text
from entremetry.publish.agenda_panel import Panel, days, panel
from entremetry.publish.agenda_rows import lane_of
from entremetry.publish.agenda_wording import summary
from entremetry.publish.colour import Colour, hex_colour
from entremetry.publish.drawing import INK, PAPER, PAPER_INK
from entremetry.publish.markup import element, escaped, number
from entremetry.publish.page_words import shown
from entremetry.publish.palette import KIND_COLOURS, apart, flavour
from entremetry.publish.temperature_curves import SANS
from entremetry.words import say

Look: TypeAlias = dict[str, str | float | None]
USUAL_WIDTH = 680.0
NARROWEST, WIDEST = 260.0, 1600.0
COLUMN = 290.0  # a day is never drawn narrower, if there is more than one beside another
BETWEEN = 22.0
EDGE = 2.0
STAND_INS = ("base", "glaze", "insert", "mousse", "crumble")


def agenda_svg(
    agenda: Agenda,
    *,
    title: str,
    width_px: int | None = None,
    standalone: bool = False,
    brief: bool = False,
) -> str:
    """Drawing of a plan, day by day, laid out for a width in pixels.

    Each component has a lane, since it is what lies in one bowl, oven or freezer at a time: solid
    where hands are at it, striped where it goes on by itself. `standalone` makes it a file of its
    own, on paper; a `brief` one fits a page, with words only where a component is begun.
    """
    wide = USUAL_WIDTH if width_px is None else float(width_px)
    wide = min(max(wide, NARROWEST), WIDEST)
    margin = 16.0 if standalone else EDGE
    panels = placed(agenda, wide, margin, brief=brief)
    prefix = "a" + sha256(repr((title, wide, standalone, brief, agenda)).encode()).hexdigest()[:8]
    foot = max((each.bottom for each in panels), default=30.0) + 14.0
    key_, height = key(foot, margin, wide, prefix)
    height += margin
    return element(
        "svg",
        element("title", escaped(shown(title)), id=f"{prefix}-title"),
        element("desc", escaped(shown(summary(agenda))), id=f"{prefix}-desc"),
        element("defs", patterns(prefix)),
        *([element("rect", width=wide, height=height, fill=PAPER)] * standalone),
        *(mark for each in panels for mark in layers(each, lane_colours(agenda), prefix)),
        *key_,
        xmlns="http://www.w3.org/2000/svg" if standalone else None,
        viewBox=f"0 0 {number(wide)} {number(height)}",
        width=None if width_px is None else number(wide),
        height=None if width_px is None else number(height),
        role="img",
        aria_labelledby=f"{prefix}-title {prefix}-desc",
        font_family=SANS,
        font_size=12.0,
        color=PAPER_INK if standalone else None,
    )


def placed(agenda: Agenda, wide: float, margin: float, *, brief: bool = False) -> list[Panel]:
    """Days beside each other as far as they fit, the next below the longest of them."""
    every = days(agenda)
    room = wide - 2.0 * margin
    fitting = max(1, int((room + BETWEEN) / (COLUMN + BETWEEN)))
    abreast = min(fitting, max(len(every), 1))
    width = (room - BETWEEN * (abreast - 1)) / abreast
    panels: list[Panel] = []
    top = margin
    for k, day in enumerate(every):
        if k and k % abreast == 0:
            top = max(each.bottom for each in panels) + BETWEEN
        left = margin + (k % abreast) * (width + BETWEEN)
        panels.append(panel(agenda, day, left=left, top=top, width=width, brief=brief))
    return panels


def lane_colours(agenda: Agenda) -> Colours:
    """Colour of each component by the flavour in its name, each apart from the others."""
    chosen: dict[tuple[str, str], Colour] = {}
    for task in agenda.tasks:
        if lane_of(task) not in chosen:
            stand_in = KIND_COLOURS[STAND_INS[len(chosen) % len(STAND_INS)]]
            own = flavour(task.component_name or task.dessert_name) or stand_in
            chosen[lane_of(task)] = apart(own, list(chosen.values()))
    return chosen


def patterns(prefix: str) -> str:
    """Stripes of a wait, and stars of a night."""
    stripes = element(
        "path", d="M-1 1L1 -1M-1 5L5 -1M3 5L5 3", stroke=INK, stroke_width=1.1, fill="none"
    )
    stars = "".join(
        element("circle", cx=x, cy=y, r=r, fill=INK, fill_opacity=0.4)
        for x, y, r in ((6.0, 5.0, 0.8), (23.0, 14.0, 1.1), (38.0, 4.0, 0.7))
    )
    return element(
        "pattern",
        stripes,
        id=f"{prefix}-stripes",
        width=4.0,
        height=4.0,
        patternUnits="userSpaceOnUse",
    ) + element(
        "pattern",
        stars,
        id=f"{prefix}-stars",
        width=46.0,
        height=20.0,
        patternUnits="userSpaceOnUse",
    )


def key(top: float, left: float, wide: float, prefix: str) -> tuple[list[str], float]:
    """What solid, striped and the wave mean, and how far down that reaches."""
    sample = hex_colour(KIND_COLOURS["insert"])
    block: Look = {"rx": 2.0, "fill": sample, "stroke": INK, "stroke_width": 1.2}
    stripes: Look = {"fill": f"url(#{prefix}-stripes)", "stroke": INK, "stroke_width": 0.8}
    entries = (
        (element("rect", x=0.0, y=0.0, width=12.0, height=12.0, **block), say("hands at work")),
        (
            element("rect", x=3.0, y=0.0, width=6.0, height=12.0, **stripes),
            say("goes on by itself"),
        ),
        (
            element("path", d="M-2 6q4 -5 8 0t8 0", fill="none", stroke=INK, stroke_width=1.3),
            say("time drawn shorter"),
        ),
    )
    layers_, x, y = [], left, top
    for mark, told in entries:
        length = 34.0 + 6.2 * len(told)
        if x > left and x + length > wide:
            x, y = left, y + 18.0
        place = f"translate({number(x)} {number(y)})"
        layers_ += [element("g", mark, text(told, 20.0, 10.5, size=11.0), transform=place)]
        x += length
    return layers_, y + 16.0
