"""How sure a computed time is: batched runs with what is not known exactly."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.arrays import Floats

if TYPE_CHECKING:
    from entremetry.physics.conduction.body import Body
    from entremetry.physics.conduction.run import Course
    from entremetry.physics.conduction.stage import Stage
    from entremetry.physics.conduction.variation import Variation

WORKERS = 2
WORDS = {
    "coefficient": "mostly the airflow",
    "air": "mostly the temperature around it",
    "heat": "mostly the composition (its heat)",
    "conductivity": "mostly the composition (its conductivity)",
    "size": "mostly the fill",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Standard uncertainties: relative ones of four factors, and that of the air [K].

    A coefficient that was guessed is good to 30 %, taken here as two standard uncertainties.
    """

    coefficient: float = 0.15
    heat: float = 0.03
    conductivity: float = 0.08
    size: float = 0.01
    air: float = 1.0

    def __post_init__(self) -> None:
        relative = (self.coefficient, self.heat, self.conductivity, self.size)
        if not all(0.0 <= part < 0.5 for part in relative) or not 0.0 <= self.air < 20.0:
            raise OutsideRange("relative uncertainties lie below 0.5, that of the air below 20 K")


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    """Time with its low and high end [s], shares of the variance, and the chief reason.

    `high` is infinite if the target is not met at the unlucky end of some input; then `reason`
    says so.
    """

    time: float
    low: float
    high: float
    shares: Mapping[str, float]
    reason: str


def interval(
    body: Body,
    start: Mapping[str, float],
    stages: Sequence[Stage],
    points: Mapping[str, Sequence[float]] | None = None,
    course: Course | None = None,
    spread: Spread | None = None,
) -> Interval:
    """Time of a run's last target, with a 95 % interval.

    Parameters
    ----------
    body, start, stages, points, course
        As for `conduction.run`; the last stage has a target.
    spread : Spread, optional
        What is not known exactly.

    Returns
    -------
    Interval
        Each input is moved by one standard uncertainty up and down; the logarithms of the times
        add in squares, and the ends lie two of their roots away.

    Raises
    ------
    OutsideRange
        If the target is not met with the best values; the reason is in the message.
    """
    spread = spread or Spread()
    moves = _moves(spread)
    jobs: list[Mapping[str, float]] = [{}]
    jobs += [move for pair in moves.values() for move in pair]
    times = run_times(body, start, stages, points, course, jobs)
    middle = times[0]
    if not np.isfinite(middle):
        raise OutsideRange(f"no interval: {_why(body, start, stages, points, course)}")
    slopes = {}
    for number, name in enumerate(moves):
        one, two = times[1 + 2 * number], times[2 + 2 * number]
        slopes[name] = (np.log(one / middle), np.log(two / middle))
    down = 2.0 * np.sqrt(sum(min(*pair, 0.0) ** 2 for pair in slopes.values()))
    up = 2.0 * np.sqrt(sum(max(*pair, 0.0) ** 2 for pair in slopes.values()))
    squares = {name: max(abs(a), abs(b)) ** 2 for name, (a, b) in slopes.items()}
    return Interval(
        time=float(middle),
        low=float(middle * np.exp(-down)),
        high=float(middle * np.exp(up)),
        shares=_shares(squares),
        reason=_reason(squares),
    )


def monte_carlo(
    body: Body,
    start: Mapping[str, float],
    stages: Sequence[Stage],
    points: Mapping[str, Sequence[float]] | None = None,
    course: Course | None = None,
    spread: Spread | None = None,
    runs: int = 1000,
    seed: int = 1,
) -> Floats:
    """Times of many runs with inputs drawn at random; infinite where the target is not met. [s]

    The factors are lognormal, the air is normal, the draws follow the seed.
    """
    if runs < 1:
        raise OutsideRange("a batch needs one run or more")
    spread = spread or Spread()
    draws = np.random.default_rng(seed).standard_normal((runs, 5))
    jobs = [
        {
            "coefficient": float(np.exp(spread.coefficient * d[0])),
            "heat": float(np.exp(spread.heat * d[1])),
            "conductivity": float(np.exp(spread.conductivity * d[2])),
            "size": float(np.exp(spread.size * d[3])),
            "air": float(spread.air * d[4]),
        }
        for d in draws
    ]
    return run_times(body, start, stages, points, course, jobs)


def run_times(
    body: Body,
    start: Mapping[str, float],
    stages: Sequence[Stage],
    points: Mapping[str, Sequence[float]] | None,
    course: Course | None,
    jobs: Sequence[Mapping[str, float]],
) -> Floats:
    """End of each varied run, on two threads; infinite where the target was not met. [s]"""
    from entremetry.physics.conduction.run import Course, run

    plain = course or Course()

    def one(job: Mapping[str, float]) -> float:
        varied: Variation = replace(plain.variation, **job)
        history = run(body, start, stages, points, replace(plain, variation=varied))
        return history.end if history.reached else float("inf")

    if len(jobs) == 1:
        return np.array([one(jobs[0])])
    with ThreadPoolExecutor(WORKERS) as pool:
        return np.array(list(pool.map(one, jobs)))


def _moves(spread: Spread) -> Mapping[str, tuple[Mapping[str, float], Mapping[str, float]]]:
    factors = {n: getattr(spread, n) for n in ("coefficient", "heat", "conductivity", "size")}
    moves: dict[str, tuple[Mapping[str, float], Mapping[str, float]]] = {
        name: ({name: float(np.exp(s))}, {name: float(np.exp(-s))}) for name, s in factors.items()
    }
    moves["air"] = ({"air": spread.air}, {"air": -spread.air})
    return moves


def _shares(squares: Mapping[str, float]) -> Mapping[str, float]:
    total = sum(squares.values())
    if not 0.0 < total < np.inf:
        return {name: float(not np.isfinite(square)) for name, square in squares.items()}
    return {name: float(square / total) for name, square in squares.items()}


def _reason(squares: Mapping[str, float]) -> str:
    name = max(squares, key=lambda n: squares[n])
    if not np.isfinite(squares[name]):
        return f"{WORDS[name]}: at its unlucky end the target is never met"
    return WORDS[name]


def _why(
    body: Body,
    start: Mapping[str, float],
    stages: Sequence[Stage],
    points: Mapping[str, Sequence[float]] | None,
    course: Course | None,
) -> str:
    from entremetry.physics.conduction.run import run

    return run(body, start, stages, points, course).ends[-1].reason
