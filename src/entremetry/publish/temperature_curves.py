"""Temperature over time at the points worth watching, with the time the step takes."""

from __future__ import annotations

from hashlib import sha256

from entremetry.publish.callout import spread
from entremetry.publish.drawing import INK, PAPER, PAPER_INK, SERIF
from entremetry.publish.markup import element, escaped, number
from entremetry.publish.page_words import shown
from entremetry.publish.temperature_frame import LANE, SPARE, Frame, finite, framed
from entremetry.publish.temperature_line import line, pen, points, sign
from entremetry.publish.temperature_marks import LETTER, ROW, Flag, fold
from entremetry.publish.temperature_scale import round_times, time_label
from entremetry.publish.temperature_wording import celsius, fahrenheit, point_name, summary
from entremetry.publish.typography import NO_BREAK
from entremetry.timings.step_temperatures import Curve, StepTemperatures
from entremetry.words import say

SANS = "Figtree, Avenir Next, Segoe UI, Helvetica, Arial, sans-serif"
USUAL_WIDTH = 680.0
LINE = 14.0


def curves_svg(
    result: StepTemperatures,
    *,
    title: str,
    width_px: int | None = None,
    standalone: bool = False,
) -> str:
    """Drawing of all watched points over time, laid out for a width in pixels.

    `standalone` makes it a file of its own, on paper.
    """
    frame = framed(result, USUAL_WIDTH if width_px is None else float(width_px))
    prefix = "c" + sha256(repr((title, width_px, standalone, result)).encode()).hexdigest()[:8]
    words = summary(result)
    return element(
        "svg",
        element("title", escaped(shown(title)), id=f"{prefix}-title"),
        element("desc", escaped(shown(words)), id=f"{prefix}-desc"),
        *([element("rect", width=frame.width, height=frame.height, fill=PAPER)] * standalone),
        *drawn(result, frame),
        xmlns="http://www.w3.org/2000/svg" if standalone else None,
        viewBox=f"0 0 {number(frame.width)} {number(frame.height)}",
        width=None if width_px is None else number(frame.width),
        height=None if width_px is None else number(frame.height),
        role="img",
        aria_labelledby=f"{prefix}-title {prefix}-desc",
        font_family=SANS,
        font_size=12.0,
        color=PAPER_INK if standalone else None,
    )


def drawn(result: StepTemperatures, frame: Frame) -> list[str]:
    """All layers from the back to the front."""
    curves = [curve for curve in map(finite, result.curves) if len(curve.times)]
    return [
        *window(result, frame),
        *degrees(frame),
        *hours(frame),
        *(flag_line(frame, flag, result.time) for flag in frame.placed),
        *target_line(result, frame),
        *(line(frame, curve, index) for index, curve in enumerate(curves)),
        *ends(result, frame, curves),
    ]


def window(result: StepTemperatures, frame: Frame) -> list[str]:
    """The interval of the time: shaded in the plot, and as a bar under the axis."""
    if result.time is None or result.low is None:
        return []
    latest = frame.end if result.high is None else result.high
    low, best, high = (frame.x(time) for time in (result.low, result.time, latest))
    y = frame.bottom + LANE / 2.0
    bar = f"M{number(low)} {number(y - 4)}v8M{number(low)} {number(y)}H{number(high)}" + (
        "m0 -4v8" if result.high is not None else "h6l-5 -4m5 4l-5 4"
    )
    lozenge = f"M{number(best)} {number(y - 6)}l5 6l-5 6l-5 -6Z"
    return [
        element(
            "rect",
            x=low,
            y=frame.top,
            width=max(high - low, 1.0),
            height=frame.bottom - frame.top,
            fill=INK,
            fill_opacity=0.07,
        ),
        element("path", d=bar, fill="none", stroke=INK, stroke_width=1.6),
        element("path", d=lozenge, fill=INK),
    ]


def degrees(frame: Frame) -> list[str]:
    """Lines of equal temperature, in degrees Celsius on the left and Fahrenheit on the right."""
    layers = []
    end = frame.width - (30.0 if frame.narrow else 46.0)
    for temperature in frame.degrees:
        y = frame.y(temperature)
        with_unit = not frame.narrow or temperature == frame.degrees[-1]
        left, right = (
            text if with_unit else text[:-1].replace(NO_BREAK, "")
            for text in (celsius(temperature), fahrenheit(temperature))
        )
        layers += [
            ruled(f"M{number(frame.left)} {number(y)}H{number(end)}", 0.16),
            word(left, frame.left - 5.0, y + 4.0, anchor="end"),
            word(right, frame.width - 1.0, y + 4.0, anchor="end"),
        ]
    return layers


def hours(frame: Frame) -> list[str]:
    """The axis of time."""
    y = frame.bottom + LANE + 14.0
    layers = [ruled(f"M{number(frame.left)} {number(frame.bottom)}H{number(frame.right)}", 0.8)]
    apart = 44.0 if frame.narrow else 54.0
    for time in round_times(frame.end, int((frame.right - frame.left) / apart)):
        x = frame.x(time)
        layers += [
            ruled(f"M{number(x)} {number(frame.bottom)}v5", 0.8),
            word(time_label(time), x, y, anchor="middle"),
        ]
    return layers


def flag_line(frame: Frame, flag: Flag, answer: float | None) -> str:
    """Words of a moment and the thin line down to the axis, broken where other words stand.

    The moment that answers the question is written strong.
    """
    strong = answer is not None and abs(flag.x - frame.x(answer)) < 0.01
    base = frame.top - 4.0
    level = base - ROW * flag.row
    pieces = [f"M{number(flag.x)} {number(base)}V{number(frame.bottom)}"]
    pieces += [
        f"M{number(flag.x)} {number(base - ROW * (row + 1))}V{number(base - ROW * row)}"
        for row in range(flag.row + 1)
        if row not in flag.gaps and (row < flag.row or flag.start > flag.x)
    ]
    line_ = element(
        "path", d="".join(pieces), fill="none", stroke=INK, stroke_width=1.0, stroke_opacity=0.55
    )
    weight = "700" if strong else None
    return line_ + word(flag.text, flag.start, level - 3.0, weight=weight)


def target_line(result: StepTemperatures, frame: Frame) -> list[str]:
    """Line of the temperature to be reached."""
    if result.target is None:
        return []
    d = f"M{number(frame.left)} {number(frame.y(result.target))}H{number(frame.right)}"
    return [
        element("path", d=d, fill="none", stroke=INK, stroke_width=1.3, stroke_dasharray="1.5 4")
    ]


def ends(result: StepTemperatures, frame: Frame, curves: list[Curve]) -> list[str]:
    """Names at the ends of the lines and of the target, one under the other."""
    column = frame.width - frame.right - (50.0 if frame.narrow else 72.0)
    labels = [
        (points(frame, curve)[-1], point_name(curve.name), index)
        for index, curve in enumerate(curves)
    ]
    if result.target is not None:
        words = say("target {temperature}", temperature=celsius(result.target))
        labels.append(((frame.right, frame.y(result.target)), words, -1))
    labels.sort(key=lambda label: label[0][1])
    texts = [fold(words, column, LETTER) for _, words, _ in labels]
    sizes = [LINE * len(lines) + 3.0 for lines in texts]
    wishes = [y for (_, y), _, _ in labels]
    tops = spread(wishes, sizes, frame.top - 4.0, frame.bottom + SPARE / 2.0)
    return [
        name_at_end(label, lines, (frame.right + (20.0 if frame.narrow else 22.0), high), size)
        for label, lines, high, size in zip(labels, texts, tops, sizes, strict=True)
    ]


def name_at_end(
    label: tuple[tuple[float, float], str, int],
    lines: list[str],
    corner: tuple[float, float],
    size: float,
) -> str:
    """Name of a line with its sign, and a thread to its end where it had to move."""
    (x, y), _, index = label
    left, high = corner
    level = high + size / 2.0
    thread = ruled(f"M{number(x + 2)} {number(y)}L{number(left - 14)} {number(level)}", 0.35)
    mark = sign(left - 8.0, level, pen(index)) if index >= 0 else ""
    words = "".join(
        word(text, left, high + 11.5 + LINE * row, family=SERIF, style="italic")
        for row, text in enumerate(lines)
    )
    return thread + mark + words


def ruled(d: str, opacity: float) -> str:
    """A thin line."""
    return element("path", d=d, fill="none", stroke=INK, stroke_width=0.9, stroke_opacity=opacity)


def word(
    text: str,
    x: float,
    y: float,
    *,
    anchor: str | None = None,
    family: str | None = None,
    style: str | None = None,
    weight: str | None = None,
) -> str:
    """A text on the drawing."""
    return element(
        "text",
        escaped(shown(text)),
        x=x,
        y=y,
        text_anchor=anchor,
        font_family=family,
        font_style=style,
        font_weight=weight,
        fill=INK,
    )
