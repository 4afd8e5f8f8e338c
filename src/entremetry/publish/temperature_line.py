"""One line of a drawing of temperature over time: its colour, its dashes, its sign."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.publish.colour import hex_colour
from entremetry.publish.markup import element, number, path_data
from entremetry.publish.temperature_frame import Frame, finite
from entremetry.publish.temperature_palette import LINES
from entremetry.publish.temperature_thinning import kept_points
from entremetry.timings.step_temperatures import Curve

MOST_POINTS = 120
DASHES = ("", "9 4", "2 3.5", "11 3.5 2 3.5")
SIGN_SIZE = 4.2
SIGNS_ON_A_LINE = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """How one line is told from the others: by any one of colour, dashes and sign."""

    colour: str
    dashes: str | None
    sign: int


def pen(index: int) -> Pen:
    """Pen of the line with this number."""
    return Pen(
        colour=hex_colour(LINES[index % len(LINES)]),
        dashes=DASHES[(index + index // len(LINES)) % len(DASHES)] or None,
        sign=index,
    )


def line(frame: Frame, curve: Curve, index: int) -> str:
    """Line of a curve with its signs along it."""
    shown = points(frame, curve)
    drawn = pen(index)
    path = element(
        "path",
        d=path_data(shown, closed=False),
        fill="none",
        stroke=drawn.colour,
        stroke_width=2.4,
        stroke_dasharray=drawn.dashes,
        stroke_linejoin="round",
        stroke_linecap="round" if drawn.dashes is None else None,
    )
    across, down = np.array(shown).T
    shares = (np.arange(SIGNS_ON_A_LINE) + 0.35 + 0.18 * (index % 4)) / SIGNS_ON_A_LINE
    places = frame.left + (across[-1] - frame.left) * shares
    signs = [sign(float(x), float(np.interp(x, across, down)), drawn) for x in places]
    return path + "".join(signs)


def points(frame: Frame, curve: Curve) -> list[tuple[float, float]]:
    """Points of a curve on the drawing, up to the end of its frame."""
    known = finite(curve)
    inside = known.times <= frame.end
    times = np.append(known.times[inside], min(frame.end, float(known.times[-1])))
    values = np.interp(times, known.times, known.temperatures)
    kept = kept_points(times, values, MOST_POINTS)
    return [(frame.x(float(times[k])), frame.y(float(values[k]))) for k in kept]


def sign(x: float, y: float, drawn: Pen) -> str:
    """Filled sign of a line: disc, square, triangle, lozenge, and so on in turn."""
    size = SIGN_SIZE
    if drawn.sign % 4 == 0:
        return element("circle", cx=x, cy=y, r=0.9 * size, fill=drawn.colour)
    corners = (
        "",
        f"M{number(x - 0.8 * size)} {number(y - 0.8 * size)}h{number(1.6 * size)}"
        f"v{number(1.6 * size)}h{number(-1.6 * size)}Z",
        f"M{number(x)} {number(y - 1.1 * size)}l{number(size)} {number(1.8 * size)}"
        f"h{number(-2 * size)}Z",
        f"M{number(x)} {number(y - 1.25 * size)}l{number(size)} {number(1.25 * size)}"
        f"l{number(-size)} {number(1.25 * size)}l{number(-size)} {number(-1.25 * size)}Z",
    )
    return element("path", d=corners[drawn.sign % 4], fill=drawn.colour)
