from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics.conduction.box_body import box_body
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.material import constant_material
from entremetry.physics.uncertainty import Spread, interval, monte_carlo

BODY = box_body((0.02, 0.02, 0.02), constant_material("stuff", 0.3, 2e6), spacing=2e-3)
STILL = Surroundings(temperature=255.15, coefficient=8.0)


def stages(celsius: float = -5.0) -> list[Stage]:
    return [
        Stage(
            surroundings={"right": STILL, "top": STILL},
            until=Target(of="mean", temperature=celsius + 273.15),
        )
    ]


def test_the_interval_holds_the_time_and_names_the_airflow() -> None:
    found = interval(BODY, {"body": 285.15}, stages())
    assert found.low < found.time < found.high
    assert found.reason == "mostly the airflow"
    assert sum(found.shares.values()) == pytest.approx(1.0)


def test_a_small_body_in_still_air_follows_its_coefficient() -> None:
    """Bi is small: the time goes with 1/h, so two standard uncertainties of 15 % are 1.35."""
    only = Spread(coefficient=0.15, heat=0.0, conductivity=0.0, size=0.0, air=0.0)
    found = interval(BODY, {"body": 285.15}, stages(), spread=only)
    assert found.high / found.time == pytest.approx(1.30, abs=0.06)
    assert found.time / found.low == pytest.approx(1.30, abs=0.06)


def test_many_runs_agree_with_the_interval() -> None:
    found = interval(BODY, {"body": 285.15}, stages())
    times = monte_carlo(BODY, {"body": 285.15}, stages(), runs=200)
    low, high = np.percentile(times, [2.5, 97.5])
    assert low == pytest.approx(found.low, rel=0.08)
    assert high == pytest.approx(found.high, rel=0.12)


def test_many_runs_repeat_with_their_seed() -> None:
    one, two = (monte_carlo(BODY, {"body": 285.15}, stages(), runs=6, seed=3) for _ in range(2))
    assert np.array_equal(one, two)


def test_a_target_close_to_the_air_may_never_be_met() -> None:
    found = interval(BODY, {"body": 285.15}, stages(-17.5))
    assert found.high == float("inf")
    assert "never met" in found.reason


def test_a_target_that_is_never_met_is_refused_with_its_reason() -> None:
    with pytest.raises(OutsideRange, match="never"):
        interval(BODY, {"body": 285.15}, stages(-19.0))


def test_impossible_spreads_are_refused() -> None:
    with pytest.raises(OutsideRange):
        Spread(heat=-0.1)
    with pytest.raises(OutsideRange):
        monte_carlo(BODY, {"body": 285.15}, stages(), runs=0)
