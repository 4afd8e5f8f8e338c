"""The frame of a drawing of temperature over time: what stands where on it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from entremetry.publish.temperature_marks import ROW, Flag, flags, moments, rows
from entremetry.publish.temperature_scale import round_temperatures
from entremetry.publish.temperature_wording import celsius, roughly
from entremetry.timings.step_temperatures import Curve, Mark, StepTemperatures
from entremetry.words import say

NARROWEST, WIDEST = 260.0, 960.0
NARROW = 480.0  # below this a drawing is made for a telephone
BEYOND = 1.15  # how far past the latest end the drawing goes on
LANE = 16.0  # height of the lane of the interval under the axis
SPARE = 10.0
POURED = "glaze-at"  # its temperature is the one it begins with


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Edges of the plot on the drawing, and the times [s] and temperatures [K] it spans."""

    width: float
    height: float
    left: float
    right: float
    top: float
    bottom: float
    end: float
    degrees: tuple[float, ...]
    placed: tuple[Flag, ...]

    @property
    def narrow(self) -> bool:
        """Whether the drawing is made for a telephone."""
        return self.width < NARROW

    def x(self, time: float) -> float:
        """Place across of a time."""
        return self.left + (self.right - self.left) * min(time / self.end, 1.0)

    def y(self, temperature: float) -> float:
        """Height of a temperature."""
        low, high = self.degrees[0], self.degrees[-1]
        return self.bottom - (self.bottom - self.top) * (temperature - low) / (high - low)


def framed(result: StepTemperatures, width: float) -> Frame:
    """Frame for a result on a drawing of this width."""
    width = min(max(width, NARROWEST), WIDEST)
    narrow = width < NARROW
    left, column = (37.0, 98.0) if narrow else (52.0, 178.0)
    end, right = shown_time(result), width - column
    places = [
        (left + (right - left) * mark.time / end, mark.text)
        for mark in moments((*result.marks, *own_marks(result)), end)
    ]
    placed = flags(places, width)
    top = 8.0 + ROW * rows(placed) + (4.0 if placed else 0.0)
    bottom = top + min(max(0.42 * width, 190.0), 330.0)
    return Frame(
        width=width,
        height=bottom + LANE + 24.0,
        left=left,
        right=right,
        top=top,
        bottom=bottom,
        end=end,
        degrees=round_temperatures(*span(result), most=6 if narrow else 8),
        placed=placed,
    )


def own_marks(result: StepTemperatures) -> tuple[Mark, ...]:
    """The end of the step, and the time that the document writes, as moments of their own."""
    marks = []
    if result.time is not None:
        reached = result.target is not None and result.kind != POURED
        time = roughly(result.time)
        text = (
            say("{target} after about {time}", target=celsius(result.target), time=time)
            if reached and result.target is not None
            else say("done after about {time}", time=time)
        )
        marks.append(Mark(time=result.time, text=text))
    if result.written_time is not None:
        words = say("as written: {time}", time=roughly(result.written_time))
        marks.append(Mark(time=result.written_time, text=words))
    return tuple(marks)


def shown_time(result: StepTemperatures) -> float:
    """Time that the drawing spans: all of the interval and a little more, or all there is."""
    known = max((float(curve.times[-1]) for curve in result.curves if len(curve.times)), default=0)
    if result.time is None or result.low is None:
        return known or 3600.0
    latest = result.high or 2.0 * result.time
    wanted = [BEYOND * latest, *(mark.time for mark in result.marks)]
    if result.written_time is not None:
        wanted.append(1.05 * result.written_time)
    return max(min(max(wanted), known), 1.05 * latest)


def span(result: StepTemperatures) -> tuple[float, float]:
    """Lowest and highest temperature to show."""
    ends = [] if result.target is None else [result.target]
    for curve in result.curves:
        known = finite(curve).temperatures
        ends += [float(known.min()), float(known.max())] if len(known) else []
    return (min(ends), max(ends)) if ends else (273.15, 293.15)


def finite(curve: Curve) -> Curve:
    """Curve without the points that are no numbers."""
    known = np.isfinite(curve.temperatures) & np.isfinite(curve.times)
    return Curve(name=curve.name, times=curve.times[known], temperatures=curve.temperatures[known])
