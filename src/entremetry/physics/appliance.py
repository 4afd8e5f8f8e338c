"""A freezer that is not infinite: its air warms under the load, and so does what is in it."""

from __future__ import annotations

from bisect import bisect
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.sources.range import Range

if TYPE_CHECKING:
    from entremetry.physics.conduction.body import Body
    from entremetry.physics.conduction.history import History
    from entremetry.physics.conduction.surroundings import Surroundings

DAY = 86400.0
PACKAGE_HEAT = 340e3
"""Heat of a kilogram of test package from 25 to -18 °C [J/kg]; from_memory, after IEC 62552."""
WINDOW = 900.0  # s
ROUNDS = 12
CLOSE = 0.02  # K
LOOK = Range("time to look at a load", 1.0, 14.0 * DAY, "s", "our_own")
CONTENTS = Range("warmest contents", 200.0, 330.0, "K", "our_own")


@dataclass(frozen=True, slots=True, kw_only=True)
class Freezer:
    """Set point [K], greatest cooling power at it [W], heat leak [W/K] from the room [K].

    `contents` is the heat capacity of what is already in it [J/K], which meets the air with
    `exchange` [W/K].
    """

    set_point: float
    power: float
    leak: float
    room: float
    contents: float
    exchange: float

    def __post_init__(self) -> None:
        sizes = (self.power, self.contents, self.exchange)
        if not all(0.0 < size < np.inf for size in sizes) or not 0.0 <= self.leak < np.inf:
            raise OutsideRange("power, contents and exchange of a freezer are positive")
        if not 220.0 < self.set_point < self.room < 330.0:
            raise OutsideRange("a freezer's set point lies below the room")
        if self.power <= self.idle:
            raise OutsideRange("never: the freezer's power does not even meet its own leak")

    @property
    def idle(self) -> float:
        """Power that holds the set point without a load. [W]"""
        return self.leak * (self.room - self.set_point)


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """Air and contents over time [K, s] with a load, and the time of one piece in it."""

    times: Floats
    air: Floats
    contents: Floats
    piece: History

    @property
    def warmest_contents(self) -> float:
        """Warmest that the old contents get. [K]"""
        return float(self.contents.max())


def power_for(kilograms_per_day: float, idle: float, heat: float = PACKAGE_HEAT) -> float:
    """Cooling power of a freezer that is rated in kilograms a day. [W]

    Parameters
    ----------
    kilograms_per_day : float
        Freezing capacity as rated. [kg per 24 h]
    idle : float
        Power that its own leak takes at the same time. [W]
    heat : float
        Heat taken from each kilogram of the test load. [J/kg]
    """
    if not 0.0 < kilograms_per_day < np.inf:
        raise OutsideRange("a freezing capacity is positive")
    if not (0.0 <= idle < np.inf and 0.0 < heat < np.inf):
        raise OutsideRange("a leak takes some power or none, and a test load gives heat")
    return idle + kilograms_per_day * heat / DAY


def load(
    freezer: Freezer,
    body: Body,
    start: Mapping[str, float],
    air: Mapping[str, Surroundings],
    pieces: int,
    duration: float,
    crowding: float = 1.0,
) -> Load:
    """Put pieces into a freezer and follow air, contents and one of the pieces.

    Parameters
    ----------
    freezer : Freezer
        The appliance; its air begins at the set point.
    body, start
        One piece and its starting temperatures, as for `conduction.run`.
    air : mapping
        Surroundings of each face; their temperatures are replaced by that of the air.
    pieces : int
        How many.
    duration : float
        How long to look. [s]
    crowding : float
        Factor on the coefficients where trays stand close, above 0 and up to 1.

    Returns
    -------
    Load
        Curves on windows of 15 minutes.

    Raises
    ------
    OutsideRange
        If a number is not positive, or air and pieces do not agree after twelve rounds.

    Notes
    -----
    The air holds no heat. In each window the heat of pieces, leak and contents equals the cooling
    power, which is full while the air is above the set point. Pieces and air are solved in turn
    until the air moves less than 0.02 K.
    """
    if pieces < 1 or not 0.0 < crowding <= 1.0:
        raise OutsideRange("pieces and crowding are positive, crowding at most 1")
    LOOK.require(duration)
    curve = _cold(freezer, duration)
    first = _piece(body, start, air, curve, crowding, duration / curve.size)
    return _settled(freezer, body, start, air, pieces, duration, crowding, first)


def _cold(freezer: Freezer, duration: float) -> Floats:
    """Air that stays at the set point, window by window."""
    count = max(1, int(np.ceil(duration / WINDOW)))
    return np.full(count, freezer.set_point, dtype=np.float64)


def _settled(
    freezer: Freezer,
    body: Body,
    start: Mapping[str, float],
    air: Mapping[str, Surroundings],
    pieces: int,
    duration: float,
    crowding: float,
    first: History,
) -> Load:
    """A load whose pieces and air agree; `first` is a piece in air that stays cold."""
    curve, history = _cold(freezer, duration), first
    count = curve.size
    for turn in range(ROUNDS):
        if turn:
            history = _piece(body, start, air, curve, crowding, duration / count)
        heat, conductance = _release(history, curve, duration / count)
        fresh, contents = _balance(freezer, pieces * heat, pieces * conductance, curve, duration)
        moved = float(np.max(np.abs(fresh - curve)))
        curve = fresh
        if moved < CLOSE:
            times = np.arange(1, count + 1) * duration / count
            return Load(times=times, air=curve, contents=contents, piece=history)
    raise OutsideRange(
        f"the freezer's air still moves by {moved:.2f} K after {ROUNDS} rounds; it carries far "
        "too much load"
    )


def greatest_load(
    freezer: Freezer,
    body: Body,
    start: Mapping[str, float],
    air: Mapping[str, Surroundings],
    duration: float,
    warmest_contents: float,
    most: int = 64,
) -> int:
    """Pieces that the freezer takes before its old contents pass a temperature [K]; maybe 0.

    Searched around what the first round of `load` says, which is nearly right.
    """

    LOOK.require(duration)
    CONTENTS.require(warmest_contents)
    for material in body.materials:
        material.require(np.array(list(start.values())))

    curve = _cold(freezer, duration)
    first = _piece(body, start, air, curve, 1.0, duration / curve.size)
    heat, conductance = _release(first, curve, duration / curve.size)

    def seems_harmless(pieces: int) -> bool:
        balanced = _balance(freezer, pieces * heat, pieces * conductance, curve, duration)
        return float(balanced[1].max()) <= warmest_contents

    def harmless(pieces: int) -> bool:
        try:
            found = _settled(freezer, body, start, air, pieces, duration, 1.0, first)
        except OutsideRange:
            return False
        return found.warmest_contents <= warmest_contents

    seeming = bisect(range(1, most + 1), False, key=lambda pieces: not seems_harmless(pieces))
    return _last(harmless, most, seeming)


def _last(holds: Callable[[int], bool], most: int, guess: int) -> int:
    """Last number from 1 to `most` for which something holds, that holds for all below; maybe 0."""
    low, high, step = 0, most + 1, 1
    probe = min(max(guess, 1), most)
    while high - low > 1:
        if holds(probe):
            low, wish = probe, probe + step
        else:
            high, wish = probe, probe - step
        step *= 2
        probe = wish if low < wish < high else (low + high) // 2
    return low


def _piece(
    body: Body,
    start: Mapping[str, float],
    air: Mapping[str, Surroundings],
    curve: Floats,
    crowding: float,
    window: float,
) -> History:
    """One piece in air that changes from window to window."""
    from entremetry.physics import conduction as heat

    stages = [
        heat.Stage(
            surroundings={
                face: replace(
                    s, temperature=float(t), radiant=None, coefficient=s.coefficient * crowding
                )
                for face, s in air.items()
            },
            duration=window,
        )
        for t in curve
    ]
    return heat.run(body, start, stages, None, heat.Course(accuracy=0.03))


def _release(history: History, curve: Floats, window: float) -> tuple[Floats, Floats]:
    """Heat that one piece gives in each window [W], and how it falls as the air warms [W/K]."""
    edges = np.arange(curve.size + 1) * window
    gained = np.interp(edges, history.times, history.heats)
    heat = -np.diff(gained) / window
    mean = np.interp(edges[1:] - 0.5 * window, history.times, history.curve("mean"))
    span = np.maximum(np.abs(mean - curve), 0.5)
    return heat, np.abs(heat) / span


def _balance(
    freezer: Freezer, heat: Floats, conductance: Floats, curve: Floats, duration: float
) -> tuple[Floats, Floats]:
    """Air and contents in each window; the pieces' heat is taken to fall as the air warms."""
    window = duration / curve.size
    stored = freezer.set_point
    air, contents = np.zeros(curve.size), np.zeros(curve.size)
    for i in range(curve.size):
        keep = freezer.contents / window
        tie = freezer.exchange * keep / (freezer.exchange + keep)  # contents, end of the window
        pull = heat[i] + conductance[i] * curve[i] + freezer.leak * freezer.room + tie * stored
        warm = (pull - freezer.power) / (conductance[i] + freezer.leak + tie)
        air[i] = max(warm, freezer.set_point)
        stored = (keep * stored + freezer.exchange * air[i]) / (keep + freezer.exchange)
        contents[i] = stored
    return air, contents
