"""Run a body through its stages."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from entremetry.errors import OutsideRange, SolverError, UnknownName
from entremetry.physics.arrays import Floats
from entremetry.physics.conduction import march as kernel
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.history import History, Snapshot, StageEnd
from entremetry.physics.conduction.probe import probes
from entremetry.physics.conduction.stage import COLDEST, MEAN, WARMEST, Stage
from entremetry.physics.conduction.state import State, new_state
from entremetry.physics.conduction.surface import COLUMNS
from entremetry.physics.conduction.surroundings import INSULATED
from entremetry.physics.conduction.variation import Variation

ROWS = 512
FORTNIGHT = 14.0 * 86400.0
FIRST_STEP = 0.1  # s


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """How a run is made: `accuracy` is the aim of the step length [K].

    `longest` bounds a stage that waits for its target [s]; `keep` are times at which the
    temperatures of all cells are kept [s]; `variation` is what is off in this run.
    """

    accuracy: float = 0.04
    longest: float = FORTNIGHT
    longest_step: float = 300.0
    keep: Sequence[float] = ()
    variation: Variation = field(default_factory=Variation)

    def __post_init__(self) -> None:
        limits = (self.accuracy, self.longest, self.longest_step)
        if not all(0.0 < limit < np.inf for limit in limits):
            raise OutsideRange("accuracy and longest times of a run are positive")
        if not all(0.0 <= time < np.inf for time in self.keep):
            raise OutsideRange("times to keep are not negative")


def run(
    body: Body,
    start: Mapping[str, float],
    stages: Sequence[Stage],
    points: Mapping[str, Sequence[float]] | None = None,
    course: Course | None = None,
) -> History:
    """Compute the temperatures of a body through one stage after another.

    Parameters
    ----------
    body : Body
        From `round_body`, `plane_body` or `box_body`.
    start : mapping
        Temperature of each region at the beginning; a region not named begins as 'body'. [K]
    stages : sequence of Stage
        What happens to it.
    points : mapping, optional
        Named points to record: (across, level), or (length, width, height) of a box. [m]
    course : Course, optional
        Accuracy, limits, times to keep.

    Returns
    -------
    History
        Curves, ends of stages, heat and its balance. A stage whose target is never met ends the
        run, with the reason.

    Raises
    ------
    OutsideRange, UnknownName
        For temperatures that the materials do not cover and for unknown faces, regions, points.
    SolverError
        If a step does not converge; it says which.
    """
    course = course or Course()
    named = dict(points or {})
    if not stages:
        raise OutsideRange("a run needs one stage or more")
    for stage in stages:
        _check(body, stage, named, course.variation)
    state = new_state(body, start, probes(body, named), course.variation)
    clerk = _Clerk(state, course)
    for stage in stages:
        state.dress(body, stage.walls)
        clerk.begin()
        if not _pass_stage(body, state, clerk, stage, named, course):
            break
    return clerk.history(tuple(named), body)


def _check(
    body: Body, stage: Stage, points: Mapping[str, Sequence[float]], variation: Variation
) -> None:
    for face in (*stage.surroundings, *stage.walls):
        body.face_number(face)
    if stage.until and stage.until.of not in (WARMEST, COLDEST, MEAN, *points):
        raise UnknownName("point", stage.until.of, (WARMEST, COLDEST, MEAN, *points))
    for around in stage.surroundings.values():
        if around.insulated:
            continue
        for material in body.materials:
            material.require(float(around.temperature + variation.air))


class _Clerk:
    """Keeps the record of a run."""

    def __init__(self, state: State, course: Course) -> None:
        self.state = state
        self.rows: list[Floats] = [state.row()[None, :]]
        self.ends: list[StageEnd] = []
        self.keep = sorted(set(course.keep))
        self.snapshots: list[Snapshot] = []
        self.took = 0
        self.snap()

    def begin(self) -> None:
        self.state.clock[kernel.STEP] = FIRST_STEP
        self.state.clock[[kernel.TAKEN, kernel.WAIT]] = 0.0

    def snap(self) -> None:
        while self.keep and self.keep[0] <= self.state.now * (1.0 + 1e-12):
            self.snapshots.append(self.state.snapshot(self.keep.pop(0)))

    def history(self, points: tuple[str, ...], body: Body) -> History:
        table = np.concatenate(self.rows)
        return History(
            times=table[:, 0],
            values=np.delete(table[:, 1:], kernel.GAINED - 1, axis=1),
            heats=table[:, kernel.GAINED],
            points=points,
            ends=tuple(self.ends),
            snapshots=tuple(self.snapshots),
            heat=float(self.state.clock[kernel.HEAT]),
            balance_error=self.state.balance_error(),
            steps=int(self.state.clock[kernel.TRIED]),
            skin=self.state.skin(body),
        )


def _pass_stage(
    body: Body,
    state: State,
    clerk: _Clerk,
    stage: Stage,
    points: Mapping[str, Sequence[float]],
    course: Course,
) -> bool:
    """Go through one stage; whether the next one may begin."""
    begin = state.now
    limit = begin + (stage.duration if stage.duration is not None else course.longest)
    column = _column(stage, points)
    if stage.until is not None:
        early = _foregone(state, clerk, stage, column, course.variation)
        if early is not None and not (early.reason and stage.duration is not None):
            clerk.ends.append(early)
            return early.reached
    boundaries = _boundaries(body, stage, course.variation)
    while True:
        end = min(limit, clerk.keep[0]) if clerk.keep else limit
        answer = _march(state, clerk, boundaries, _goal(stage, column, end, course))
        if answer == kernel.REACHED:
            clerk.snap()
            clerk.ends.append(StageEnd(time=state.now, reached=True))
            return True
        clerk.snap()
        if state.now >= limit * (1.0 - 1e-13):
            break
    return _time_up(state, clerk, stage)


def _time_up(state: State, clerk: _Clerk, stage: Stage) -> bool:
    """A stage that ended by the clock; without a duration it waited in vain."""
    if stage.until is None:
        clerk.ends.append(StageEnd(time=state.now, reached=True))
        return True
    wanted = f"{stage.until.of} did not pass {stage.until.temperature - 273.15:.2f} °C"
    reason = f"{wanted} within {(state.now) / 3600.0:.1f} h of the start"
    clerk.ends.append(StageEnd(time=state.now, reached=False, reason=reason))
    return stage.duration is not None


def _column(stage: Stage, points: Mapping[str, Sequence[float]]) -> int:
    if stage.until is None:
        return 0
    place = (WARMEST, COLDEST, MEAN, *points).index(stage.until.of)
    return 1 + place + (place > 2)


def _goal(stage: Stage, column: int, end: float, course: Course) -> kernel.Goal:
    until = stage.until
    return kernel.Goal(
        end=end,
        column=column,
        level=until.temperature if until else 0.0,
        falling=until.falling if until else True,
        accuracy=course.accuracy,
        longest_step=course.longest_step,
    )


def _foregone(
    state: State, clerk: _Clerk, stage: Stage, column: int, variation: Variation
) -> StageEnd | None:
    """The end of a stage whose target is met at once or cannot be met: no warmer, no colder."""
    assert stage.until is not None
    level, falling = stage.until.temperature, stage.until.falling
    value = float(clerk.rows[-1][-1, column])
    if (value <= level) if falling else (value >= level):
        return StageEnd(time=state.now, reached=True)
    reaches = [around.reach for around in stage.surroundings.values()]
    coldest, warmest = state.extremes()
    low = min([coldest, *(r[0] + variation.air for r in reaches)])
    high = max([warmest, *(r[1] + variation.air for r in reaches)])
    if (level > low) if falling else (level < high):
        return None
    edge, word = (low, "colder") if falling else (high, "warmer")
    return StageEnd(
        time=state.now,
        reached=False,
        reason=(
            f"never: {stage.until.of} cannot pass {level - 273.15:.2f} °C, nothing around or "
            f"inside is {word} than {edge - 273.15:.2f} °C"
        ),
    )


def _boundaries(body: Body, stage: Stage, variation: Variation) -> Floats:
    table = np.zeros((len(body.faces), COLUMNS))
    for number, face in enumerate(body.faces):
        table[number] = stage.surroundings.get(face, INSULATED).row()
    table[:, [0, 4]] += variation.air
    table[:, [1, 7]] *= variation.coefficient
    return table


def _march(state: State, clerk: _Clerk, boundaries: Floats, goal: kernel.Goal) -> int:
    """March to the goal, however many rows it takes."""
    while True:
        record = np.zeros((ROWS, state.columns))
        answer, rows = state.march(boundaries, goal, record)
        if rows > 1:
            clerk.rows.append(record[1:rows])
        if answer == kernel.STUCK:
            raise SolverError(
                f"step {int(state.clock[kernel.TRIED])} at {state.now:.6g} s did not converge "
                f"even at {kernel.SHORTEST:g} s; the materials may be too abrupt for this grid"
            )
        if answer != kernel.FULL:
            return answer
