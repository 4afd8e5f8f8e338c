"""March one stage: steps of changing length until the time or the target is reached."""

from __future__ import annotations

import math
from typing import NamedTuple

from entremetry.physics.arrays import Floats, Integers
from entremetry.physics.conduction.cells import Cells, Fields, Patches, Surface, Tables
from entremetry.physics.conduction.compiled import compiled
from entremetry.physics.conduction.step import advance, take_back
from entremetry.physics.conduction.surface import prepare, settle

# What `march` answers
TIME_UP, REACHED, FULL, STUCK = range(4)
# Places in the array of the clock
NOW, STEP, EARLIER_STEP, TAKEN, WAIT, HEAT, TRIED, CALM = range(8)
CLOCK = 8
# Places in a row of the record, before the probes
TIME, WARMEST, COLDEST, MEAN, GAINED = range(5)
EASY = 4  # first steps of a stage, fully implicit
SHORTEST = 1e-4  # s
GROWTH = 2.0
BACK = 0.1  # K against its course, or beyond all around: then some steps go fully implicit
LEAP = 2.0  # K that the target's own value should move in a step
NEAR = 2e-3  # K: close enough to a target
LANDINGS = 5  # shortened steps in a row that try to meet it


class Probes(NamedTuple):
    """Points whose temperature is recorded: four or eight cells and their weights each."""

    cell: Integers  # shape (points, cells)
    weight: Floats  # shape (points, cells)


class Goal(NamedTuple):
    """When a stage ends, and how finely it is stepped."""

    end: float  # s
    column: int  # of the record; 0: no target
    level: float  # K
    falling: bool
    accuracy: float  # K
    longest_step: float  # s


@compiled
def march(
    cells: Cells,
    tables: Tables,
    patches: Patches,
    fields: Fields,
    surface: Surface,
    boundaries: Floats,
    probes: Probes,
    goal: Goal,
    clock: Floats,
    record: Floats,
) -> tuple[int, int]:
    """Step until the goal; what ended the stage, and rows of the record that were filled.

    The first row is the state at the beginning.
    """
    mismatch = min(0.1, 10.0 * goal.accuracy)
    tries = 0
    observe(cells, fields, probes, record[0])
    record[0, TIME] = clock[NOW]
    record[0, GAINED] = clock[HEAT]
    rows = 1
    while clock[NOW] < goal.end * (1.0 - 1e-14):
        if rows == record.shape[0]:
            return FULL, rows
        rest = goal.end - clock[NOW]
        wanted = min(clock[STEP], goal.longest_step)
        step = min(wanted, rest)
        if tries == 0 and 0.0 < rest - step < 0.3 * step:
            step = 0.5 * rest
        theta = 1.0 if clock[TAKEN] < EASY or clock[CALM] > 0.0 else 0.5
        prepare(cells, patches, boundaries, fields, surface, step)
        clock[TRIED] += 1.0
        if advance(cells, tables, patches, fields, surface, step, theta, mismatch) == 0:
            take_back(cells, fields, tables)
            clock[STEP] = 0.4 * step
            clock[WAIT] = 8.0
            tries = 0
            if clock[STEP] < SHORTEST:
                return STUCK, rows
            continue
        observe(cells, fields, probes, record[rows])
        record[rows, TIME] = clock[NOW] + step
        if step > 1.0 and beyond(cells, fields, patches, surface, record, rows):
            take_back(cells, fields, tables)
            clock[STEP] = 0.5 * step
            clock[CALM] = EASY
            tries = 0
            continue
        leap = 0.0
        if goal.column > 0:
            leap = abs(record[rows, goal.column] - record[rows - 1, goal.column])
            if tries == 0 and step > 1.0 and theta < 1.0 and astray(record, rows, goal):
                take_back(cells, fields, tables)
                clock[STEP] = 0.5 * step
                clock[CALM] = EASY
                continue
        if leap > 2.0 * LEAP and tries == 0 and step > 1.0:
            take_back(cells, fields, tables)
            clock[STEP] = step * max(LEAP / leap, 0.2)
            continue
        reached = goal.column > 0 and passed(record[rows, goal.column], goal)
        near = goal.column > 0 and abs(record[rows, goal.column] - goal.level) < NEAR
        if reached and not near and tries < LANDINGS:
            part = crossing(record, rows, goal, clock[NOW], step)
            if part < 0.999:
                take_back(cells, fields, tables)
                clock[STEP] = max(part * step, SHORTEST)
                tries += 1
                continue
        clock[HEAT] += settle(patches, surface, step)
        clock[NOW] += step
        record[rows, GAINED] = clock[HEAT]
        rows += 1
        if reached or (tries > 0 and near):
            return REACHED, rows
        tries = 0
        choose_step(cells, fields, goal, clock, step)
        if step < wanted and step == rest:
            clock[STEP] = max(clock[STEP], wanted)
        if leap > 0.0:
            clock[STEP] = min(clock[STEP], step * max(LEAP / leap, 0.2))
        fields.earlier_temperature[:] = fields.old_temperature
        clock[EARLIER_STEP] = step
        clock[TAKEN] += 1.0
        clock[CALM] = max(clock[CALM] - 1.0, 0.0)
    return TIME_UP, rows


@compiled
def beyond(
    cells: Cells, fields: Fields, patches: Patches, surface: Surface, record: Floats, row: int
) -> bool:
    """Tell whether a place became warmer or colder than all that was inside and around."""
    hot, cold = record[row, WARMEST], record[row, COLDEST]
    if hot <= record[row - 1, WARMEST] + BACK and cold >= record[row - 1, COLDEST] - BACK:
        return False
    low, high = math.inf, -math.inf
    for c in range(cells.volume.size):
        if cells.volume[c] > 0.0:
            low = min(low, fields.old_temperature[c])
            high = max(high, fields.old_temperature[c])
    for p in range(patches.cell.size):
        if surface.outside[p] > 0.0:
            low = min(low, surface.air[p])
            high = max(high, surface.air[p])
        if patches.heat[p] > 0.0:
            low = min(low, surface.wall_temperature[p])
            high = max(high, surface.wall_temperature[p])
    return bool(hot > high + BACK or cold < low - BACK)


@compiled
def astray(record: Floats, row: int, goal: Goal) -> bool:
    """Tell whether the target's curve turns back: the trapezium rule rings where ice ends."""
    move = record[row, goal.column] - record[row - 1, goal.column]
    return bool((move if goal.falling else -move) > BACK)


@compiled
def passed(value: float, goal: Goal) -> bool:
    """Tell whether the watched value is at or beyond the level."""
    return value <= goal.level if goal.falling else value >= goal.level


@compiled
def crossing(record: Floats, row: int, goal: Goal, now: float, step: float) -> float:
    """Part of the step after which the level is met, by a parabola through three points."""
    after = record[row, goal.column] - goal.level
    before = record[row - 1, goal.column] - goal.level
    if before * after >= 0.0:
        return 1.0
    straight: float = before / (before - after)
    if row < 2:
        return straight
    first = record[row - 2, goal.column] - goal.level
    back = (record[row - 2, TIME] - now) / step
    if back > -0.05:
        return straight
    left = (before - first) / -back
    right = after - before
    bend = (right - left) / (1.0 - back)
    slope = right - bend
    part: float = straight
    for _ in range(20):
        steep = slope + 2.0 * bend * part
        if steep == 0.0:
            return straight
        part -= (before + slope * part + bend * part * part) / steep
    if not 0.0 < part < 1.0:
        return straight
    return part


@compiled
def choose_step(cells: Cells, fields: Fields, goal: Goal, clock: Floats, step: float) -> None:
    """Aim the volume-mean distance to the extrapolated step at the accuracy."""
    if clock[TAKEN] < 1.0:
        return
    ratio = step / clock[EARLIER_STEP]
    first = cells.pad
    last = cells.volume.size - first
    t, old = fields.temperature[first:last], fields.old_temperature[first:last]
    earlier, volume = fields.earlier_temperature[first:last], cells.volume[first:last]
    total = 0.0
    weight = 0.0
    for c in range(t.size):
        foreseen = old[c] + ratio * (old[c] - earlier[c])
        total += volume[c] * abs(t[c] - foreseen)
    for c in range(t.size):
        weight += volume[c]
    distance = max(total / weight, 1e-12)
    factor = math.sqrt(goal.accuracy / distance)
    if clock[WAIT] > 0.0:
        clock[WAIT] -= 1.0
        factor = min(factor, 1.0)
    clock[STEP] = step * min(max(factor, 0.4), GROWTH)


@compiled
def observe(cells: Cells, fields: Fields, probes: Probes, row: Floats) -> None:
    """Write warmest, coldest, mean and the probes."""
    warmest = -math.inf
    coldest = math.inf
    total = 0.0
    weight = 0.0
    first = cells.pad
    last = cells.volume.size - first
    t, watched = fields.temperature[first:last], cells.watched[first:last]
    for c in range(t.size):
        total += t[c] * watched[c]
    for c in range(t.size):
        weight += watched[c]
    for c in range(t.size):
        if watched[c] > 0.0:
            warmest = t[c] if t[c] > warmest else warmest
            coldest = t[c] if t[c] < coldest else coldest
    row[WARMEST] = warmest
    row[COLDEST] = coldest
    row[MEAN] = total / weight
    for p in range(probes.cell.shape[0]):
        value = 0.0
        for q in range(probes.cell.shape[1]):
            value += probes.weight[p, q] * fields.temperature[probes.cell[p, q]]
        row[GAINED + 1 + p] = value
