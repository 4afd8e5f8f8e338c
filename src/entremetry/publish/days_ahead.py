"""How far ahead each part may be made: from keeping times and the times of what follows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from entremetry.agenda.assembly_flow import entering_step
from entremetry.agenda.component_flow import last_step
from entremetry.agenda.draft import KEPT_FROZEN
from entremetry.agenda.keeping import DAY, keeps, keeps_ready
from entremetry.dessert.dessert import Component
from entremetry.dessert.reckoning import Reckoning
from entremetry.method.step import AnyStep
from entremetry.publish.markup import element
from entremetry.quantities import format_duration
from entremetry.words import decimal, say, say_as

STOPS = (0.0, 0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 7.0, 14.0, 28.0)
"""Days before serving that are as far apart in the drawing as the next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """A part and when it may be ready: from so many minutes before serving, to so many.

    `frozen` is how much earlier still if the filled mould then waits in the freezer. [min]
    """

    name: str
    earliest: float
    latest: float
    frozen: float = 0.0

    @property
    def words(self) -> str:
        """The span in words."""
        far = _span(self.earliest)
        near = _span(self.latest)
        if self.frozen:
            frozen = _span(self.earliest + self.frozen)
            return say("up to {far} ahead, at the latest {near} before", far=frozen, near=near)
        if self.earliest - self.latest < 60.0:
            if self.latest < 1.0:
                return say("just before serving")
            return say("{time} before serving", time=near)
        return say("{far} to {near} before serving", far=far, near=near)


def days_ahead(reckoning: Reckoning) -> tuple[Ahead, ...]:
    """Every component in its order, then the filled mould and the finished piece."""
    return (*_components(reckoning), *_wholes(reckoning))


def _components(reckoning: Reckoning) -> Iterator[Ahead]:
    dessert = reckoning.dessert
    assembly = dessert.document.assembly
    used = {line.component for c in dessert.components for line in c.lines if line.component}
    for component in dessert.components:
        if component.id in used or not assembly:
            continue
        enters = entering_step(dessert.document, assembly, component.id)
        kept = _kept(component)
        latest = _minutes(reckoning, enters)
        frozen = any(step.step == "freeze-until" for step in assembly[enters:])
        yield Ahead(
            name=component.name,
            earliest=latest + kept,
            latest=latest,
            frozen=KEPT_FROZEN if frozen else 0.0,
        )


def _kept(component: Component) -> float:
    """How long before it is taken up a component may be begun at its longest rest. [min]

    It waits once it is finished, or at an earlier step with the rest of its work to come.
    """
    if not component.steps:
        return keeps_ready(None, component.kind).minutes
    last = last_step(component)[0]
    ready = keeps_ready(component.steps[last], component.kind).minutes
    waits = [
        keeps(step, component.kind).minutes + _work(component.steps[number + 1 :])
        for number, step in enumerate(component.steps[:last])
    ]
    return max(ready, *waits) if waits else ready


def _work(steps: Sequence[AnyStep]) -> float:
    """Time that steps state. [min]"""
    return sum(step.time or step.hands_on or 0.0 for step in steps) / 60.0


def _wholes(reckoning: Reckoning) -> Iterator[Ahead]:
    assembly = reckoning.dessert.document.assembly
    for number, step in enumerate(assembly):
        after = _minutes(reckoning, number + 1)
        if step.step == "freeze-until":
            yield Ahead(
                name=say("In the freezer, filled"),
                earliest=after + keeps(step, "").minutes,
                latest=after,
            )
        if step.step == "thaw-until":
            yield Ahead(name=say("Thawed"), earliest=after + keeps(step, "").minutes, latest=after)


def _minutes(reckoning: Reckoning, start: int) -> float:
    """Time that the steps of the assembly state from one of them on. [min]"""
    return _work(reckoning.dessert.document.assembly[start:])


def _span(minutes: float) -> str:
    if minutes < 60.0:
        return format_duration(60.0 * round(minutes))
    if minutes < 2 * DAY:
        return format_duration(3600.0 * round(minutes / 60.0))
    return say("{number} days", number=round(minutes / DAY))


WIDTH, HEIGHT, MARGIN = 400.0, 22.0, 14.0


def scale_svg() -> str:
    """The days before serving over the bars, serving at the right."""
    words = (
        element(
            "text",
            _day(days),
            x=_place(days * DAY),
            y=15.0,
            font_size=11.0,
            text_anchor="middle",
            fill="currentColor",
        )
        for days in STOPS
        if days == 0.0 or days >= 1.0 or days == 0.5
    )
    return _drawing("".join(words))


def bar_svg(row: Ahead) -> str:
    """When a part may be ready; hatched where the filled mould then waits in the freezer."""
    grid = "".join(
        element(
            "path",
            d=f"M{_place(days * DAY):.1f} 0V{HEIGHT:g}",
            stroke="currentColor",
            stroke_opacity=0.18,
            fill="none",
        )
        for days in STOPS
    )
    return _drawing(grid + _frozen(row) + _bar(row.earliest, row.latest, fill="currentColor"))


def _frozen(row: Ahead) -> str:
    if not row.frozen:
        return ""
    return _bar(
        row.earliest + row.frozen,
        row.earliest,
        fill="none",
        stroke="currentColor",
        stroke_width=1.5,
        stroke_dasharray="3 2",
    )


def _bar(start: float, end: float, **paint: str | float) -> str:
    left, right = _place(start), _place(end)
    width = max(right - left, 4.0)
    return element("rect", x=right - width, y=6.0, width=width, height=10.0, rx=3.0, **paint)


def _drawing(inside: str) -> str:
    return element(
        "svg", inside, viewBox=f"0 0 {WIDTH:g} {HEIGHT:g}", aria_hidden="true", focusable="false"
    )


def _day(days: float) -> str:
    if days == 0.0:
        return say_as("on the scale of days", "served")
    if days < 1.0:
        return say("{number} h", number=decimal(f"{days * 24:g}"))
    return say("{number} d", number=decimal(f"{days:g}"))


def _place(minutes: float) -> float:
    """How far from the left a time before serving is."""
    days = min(max(minutes / DAY, 0.0), STOPS[-1])
    right, room = WIDTH - 2.0 * MARGIN, WIDTH - 3.0 * MARGIN
    after = next(n for n, stop in enumerate(STOPS) if days <= stop)
    if after == 0:
        return right
    low, high = STOPS[after - 1], STOPS[after]
    return right - room * (after - 1 + (days - low) / (high - low)) / (len(STOPS) - 1)
