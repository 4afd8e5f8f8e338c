"""Hand-made temperatures of steps: a dome that freezes, one that never does, a bowl, a glaze."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from entremetry.shapes import Floats
from entremetry.timings.step_temperatures import Curve, Fact, Field, Mark, StepTemperatures

HOUR = 3600.0
ZERO = 273.15
RADIUS = 0.035


def falling(times: Floats, depth: float) -> Floats:
    """Smooth course from 22 °C to -20 °C, later where it is deeper, with a halt at -3 °C."""
    slow = 0.2 * HOUR + 1.2 * HOUR * np.clip(depth, 0.0, 1.0)
    gone = ZERO + 22.0 - 25.0 * (1.0 - np.exp(-times / slow))
    after = 0.6 * HOUR + 2.6 * HOUR * depth
    late = np.maximum(times - after, 0.0)
    return gone - 17.0 * (1.0 - np.exp(-late / (0.9 * HOUR)))


def dome_field(count: int = 13, cells: int = 35) -> Field:
    """Field over half a dome, closed end at level 0, that cools from outside."""
    step = RADIUS / cells
    across = step * (np.arange(cells) + 0.5)
    levels = step * (np.arange(cells) + 0.5)
    times = np.linspace(0.0, 8.0 * HOUR, count)
    grid_x, grid_z = np.meshgrid(across, levels)
    outward = np.hypot(grid_x, grid_z - RADIUS)
    depth = np.minimum((RADIUS - outward) / RADIUS, (RADIUS - grid_z) / RADIUS * 1.4)
    fields = [
        np.where(outward <= RADIUS, falling(np.full_like(depth, t), depth), np.nan) for t in times
    ]
    return Field(
        across=across,
        levels=levels,
        times=times,
        temperatures=np.array(fields),
        served_upside_down=True,
    )


def freezing_dome() -> StepTemperatures:
    """A dome in the freezer: 5 h 10 min, between 4 h and 6 h 40 min."""
    times = np.linspace(0.0, 10.0 * HOUR, 1201)
    curves = (("heart", 1.0), ("vanilla-insert", 0.85), ("edge", 0.1))
    return StepTemperatures(
        step="assembly-2",
        name="Blackcurrant and vanilla dome",
        kind="freeze-until",
        sentence="Freeze until the heart has -18 °C.",
        target=ZERO - 18.0,
        time=5 * HOUR + 600.0,
        low=4 * HOUR,
        high=6 * HOUR + 2400.0,
        reason="",
        mostly="the airflow",
        because="Heat leaves through the mould into air of -20 °C and the metal shelf below.",
        sources=("our_own",),
        assumptions=("The air of the freezer has -20 °C.", "The mould stands on a metal shelf."),
        curves=tuple(
            Curve(name=name, times=times, temperatures=falling(times, depth))
            for name, depth in curves
        ),
        marks=(
            Mark(time=0.9 * HOUR, text="the mousse is set"),
            Mark(time=3.2 * HOUR, text="the heart starts to freeze"),
        ),
        field=dome_field(),
        balance_error=3.0e-15,
        written_time=6 * HOUR,
    )


def never_frozen() -> StepTemperatures:
    """The same dome in a freezer that is not cold enough."""
    return replace(
        freezing_dome(),
        time=None,
        low=None,
        high=None,
        reason="The air of the freezer has -12 °C, which is warmer than the target of -18 °C.",
        marks=(),
        written_time=None,
    )


def cooling_bowl() -> StepTemperatures:
    """A custard in a bowl, which has no section."""
    times = np.linspace(0.0, 40 * 60.0, 81)
    return replace(
        freezing_dome(),
        step="vanilla-insert-7",
        name="Vanilla cream insert",
        kind="cool-to",
        sentence="Cool to 30 °C.",
        target=ZERO + 30.0,
        time=17 * 60.0,
        low=12 * 60.0,
        high=26 * 60.0,
        mostly="how often it is stirred",
        because="A bowl gives its heat to the air around it and by what evaporates.",
        curves=(
            Curve(
                name="custard", times=times, temperatures=ZERO + 22.0 + 60.0 * np.exp(-times / 509)
            ),
        ),
        marks=(),
        field=None,
        written_time=20 * 60.0,
    )


def poured_glaze() -> StepTemperatures:
    """A glaze on a frozen dome, which takes seconds."""
    times = np.linspace(0.0, 180.0, 91)
    return replace(
        cooling_bowl(),
        step="assembly-4",
        kind="glaze-at",
        sentence="Glaze at 32 °C.",
        target=None,
        time=34.0,
        low=20.0,
        high=55.0,
        mostly="the thickness of the film",
        curves=(
            Curve(name="film", times=times, temperatures=ZERO + 4 + 28 * np.exp(-times / 20)),
            Curve(name="surface", times=times, temperatures=ZERO - 2 - 16 * np.exp(-times / 15)),
        ),
        written_time=None,
        facts=(
            Fact(name="film on top", value=1.54, unit="mm"),
            Fact(name="where they touch", value=-0.4, unit="°C", because="it sets where it lies"),
        ),
    )


def folded_mousse() -> StepTemperatures:
    """A fold, which is about a temperature and not about a time."""
    return replace(
        never_frozen(),
        step="mousse-5",
        kind="fold",
        sentence="Fold in the cream.",
        target=None,
        reason="A matter of a minute; what counts is where the temperature lands.",
        curves=(),
        field=None,
        facts=(Fact(name="temperature of the mix", value=24.3, unit="°C", because="as weighed"),),
    )


RESULTS = {
    "freezing dome": freezing_dome,
    "never frozen": never_frozen,
    "cooling bowl": cooling_bowl,
    "poured glaze": poured_glaze,
    "folded mousse": folded_mousse,
}
