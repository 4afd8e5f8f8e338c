"""A bar of a round length under the drawing."""

from __future__ import annotations

from entremetry.publish.markup import element, number
from entremetry.publish.stage import Stage
from entremetry.publish.typography import NO_BREAK
from entremetry.words import decimal, say

LENGTHS = (5.0, 10.0, 20.0, 50.0, 100.0, 200.0)


def bar_length(scale: float, *, most: float) -> float:
    """Longest round length [mm] that is drawn no longer than `most` units."""
    fitting = [length for length in LENGTHS if length * scale <= most]
    return fitting[-1] if fitting else LENGTHS[0]


def ruler(scene: Stage, scale: float, *, x: float, y: float) -> str:
    """Bar with ticks and its length, and a note where the drawing is shortened."""
    length = bar_length(scale, most=90.0)
    end = x + length * scale
    half = (x + end) / 2.0
    line = (
        f"M{number(x)} {number(y - 3)}v6M{number(x)} {number(y)}H{number(end)}"
        f"M{number(half)} {number(y - 1.5)}v3M{number(end)} {number(y - 3)}v6"
    )
    words = centimetres(length)
    if scene.hidden:
        whole = centimetres(round(scene.width))
        words += " · " + say("shortened; {length} long", length=whole)
    return element("path", d=line, fill="none", stroke="currentColor", stroke_width=1.0) + element(
        "text", words, x=end + 6.0, y=y + 4.0, font_size=11.0, fill="currentColor"
    )


def centimetres(length: float) -> str:
    """Length in mm, said in mm below a centimetre and in cm above."""
    if length < 10.0:
        return f"{decimal(number(length))}{NO_BREAK}mm"
    return f"{decimal(number(length / 10.0))}{NO_BREAK}cm"
