from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange, UnknownName
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.box_body import box_body
from entremetry.physics.conduction.outline import arc, outline
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.conduction.section_body import round_body
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surroundings import INSULATED, Surroundings, Wall
from entremetry.physics.conduction.variation import Variation
from entremetry.physics.material import Material, constant_material, material

ZERO = 273.15
FREEZER = Surroundings(temperature=255.15, coefficient=12.0)
FRIDGE = Surroundings(temperature=277.15, coefficient=10.0)


def mousse() -> Material:
    def ice(t: np.ndarray) -> np.ndarray:
        return 1.0 - -3.5 / np.minimum(t - ZERO, -3.5)

    return material(
        "mousse",
        lambda t: 600 * (3100 * (t - ZERO) - 0.534 * ice(t) * (2130 * (t - ZERO) + 333600)),
        lambda t: 0.23 + 0.30 * ice(t),
        freezing_point=ZERO - 3.5,
    )


def dome(spacing: float = 2e-3) -> Body:
    edge = outline(
        ("base", [(0, 0), (0.035, 0)]),
        ("skin", arc((0, 0), 0.035, 0, np.pi / 2)),
        ("axis", [(0, 0.035), (0, 0)]),
    )
    return round_body(edge, mousse(), spacing=spacing)


def around(air: Surroundings) -> dict[str, Surroundings]:
    return {"base": air, "skin": air}


def reach(celsius: float, air: Surroundings, falling: bool = True) -> Stage:
    target = Target(temperature=celsius + ZERO, falling=falling, of="heart")
    return Stage(surroundings=around(air), until=target)


HEART = {"heart": (0.0, 0.012)}


def test_a_schedule_keeps_its_heat_balance() -> None:
    """Freezer in the mould, out of it, fridge, room."""
    stages = [
        Stage(
            surroundings=around(FREEZER),
            duration=8 * 3600.0,
            walls={"skin": Wall(thickness=1.5e-3, conductivity=0.24, heat_capacity=1.5e6)},
        ),
        Stage(surroundings=around(FRIDGE), duration=12 * 3600.0, walls={"skin": None}),
        Stage(
            surroundings=around(
                Surroundings(temperature=293.15, coefficient=5.0, emissivity=0.95, humidity=0.5)
            ),
            duration=3600.0,
        ),
    ]
    history = run(dome(), {"body": 285.15}, stages, HEART)
    assert history.end == pytest.approx(21 * 3600.0)
    assert history.balance_error < 1e-12
    assert history.at("heart", 8 * 3600.0) == pytest.approx(255.15, abs=0.2)
    assert history.at("warmest", 20 * 3600.0) == pytest.approx(277.15, abs=0.3)
    assert np.all(np.isfinite(history.values))


def test_the_time_is_met_on_the_target() -> None:
    history = run(dome(), {"body": 285.15}, [reach(-12.0, FREEZER)], HEART)
    assert history.reached
    assert float(history.curve("heart")[-1]) - ZERO == pytest.approx(-12.0, abs=0.01)


def test_times_to_keep_do_not_shift_the_answer() -> None:
    plain = run(dome(), {"body": 285.15}, [reach(-12.0, FREEZER)], HEART)
    course = Course(keep=tuple(np.arange(0.0, 9000.0, 600.0)))
    kept = run(dome(), {"body": 285.15}, [reach(-12.0, FREEZER)], HEART, course)
    assert kept.end == pytest.approx(plain.end, rel=2e-3)
    assert [s.time for s in kept.snapshots] == [t for t in course.keep if t <= kept.end]


def test_large_steps_do_not_jump_over_the_latent_heat() -> None:
    fine = run(dome(), {"body": 285.15}, [reach(-12.0, FREEZER)], HEART, Course(accuracy=0.002))
    coarse = run(dome(), {"body": 285.15}, [reach(-12.0, FREEZER)], HEART, Course(accuracy=1.0))
    assert coarse.end == pytest.approx(fine.end, rel=0.03)
    assert coarse.balance_error < 1e-12


@pytest.mark.parametrize(
    ("celsius", "air", "falling", "word"),
    [
        (-18.5, FREEZER, True, "colder"),
        (-18.0, FREEZER, True, "colder"),
        (30.0, FREEZER, False, "warmer"),
        (-1.0, INSULATED, True, "colder"),
    ],
)
def test_what_can_never_be_reached_is_answered_never(
    celsius: float, air: Surroundings, falling: bool, word: str
) -> None:
    history = run(dome(), {"body": 285.15}, [reach(celsius, air, falling)], HEART)
    assert not history.reached
    assert "never" in history.ends[0].reason
    assert word in history.ends[0].reason


def test_waiting_is_bounded() -> None:
    """A target a hundredth of a degree above the air, four hours at the longest."""
    course = Course(longest=4 * 3600.0)
    history = run(dome(5e-3), {"body": 285.15}, [reach(-17.9999999, FREEZER)], HEART, course)
    assert not history.reached
    assert "within 4.0 h" in history.ends[0].reason


def test_a_target_already_met_takes_no_time() -> None:
    history = run(dome(), {"body": 250.15}, [reach(-12.0, FREEZER)], HEART)
    assert history.reached
    assert history.end == 0.0


def test_a_failed_target_ends_the_run() -> None:
    stages = [reach(-30.0, FREEZER), Stage(surroundings=around(FRIDGE), duration=60.0)]
    history = run(dome(), {"body": 285.15}, stages, HEART)
    assert len(history.ends) == 1


def test_radiation_speeds_freezing() -> None:
    still = Surroundings(temperature=255.15, coefficient=5.0)
    bright = Surroundings(temperature=255.15, coefficient=5.0, emissivity=0.95)
    times = [run(dome(), {"body": 285.15}, [reach(-12, air)], HEART).end for air in (still, bright)]
    assert times[0] > 1.6 * times[1]


def test_condensation_speeds_thawing() -> None:
    dry = Surroundings(temperature=293.15, coefficient=5.0, emissivity=0.95)
    moist = Surroundings(temperature=293.15, coefficient=5.0, emissivity=0.95, humidity=0.6)
    times = [
        run(dome(), {"body": 255.15}, [reach(2.0, air, falling=False)], HEART).end
        for air in (dry, moist)
    ]
    assert 1.08 * times[1] < times[0] < 1.8 * times[1]


def test_card_under_a_piece_slows_it() -> None:
    metal = Surroundings(temperature=277.15, coefficient=100.0)
    board = Surroundings(temperature=277.15, coefficient=100.0, contact=0.05)
    times = []
    for base in (metal, board):
        target = Target(temperature=275.15, falling=False, of="heart")
        stage = Stage(surroundings={"base": base, "skin": FRIDGE}, until=target)
        times.append(run(dome(), {"body": 255.15}, [stage], HEART).end)
    assert times[1] > 1.2 * times[0]


def test_a_warm_film_brings_its_heat() -> None:
    """Glaze as a film at 32 °C on an insulated frozen piece: the heat goes into the piece."""
    glaze = Wall(thickness=2e-3, conductivity=0.4, heat_capacity=3.5e6, temperature=305.15)
    stage = Stage(surroundings={}, duration=7200.0, walls={"skin": glaze})
    body = dome()
    history = run(body, {"body": 255.15}, [stage], HEART)
    assert history.heat == pytest.approx(0.0, abs=1e-9)
    assert history.balance_error < 1e-12
    assert float(history.curve("mean")[-1]) > 257.0


def test_the_wall_as_nodes_agrees_with_the_wall_on_the_grid() -> None:
    """Silicone of 6 mm around a block: one node against fine cells, a few parts in a hundred."""
    silicone = constant_material("silicone", 0.24, 1.5e6)
    food = mousse()
    inner = box_body((0.03, 0.002, 0.002), food, spacing=1e-3)
    wall = Wall(thickness=2e-3, conductivity=0.24, heat_capacity=1.5e6)
    target = Target(temperature=261.15)
    stage = Stage(surroundings={"right": FREEZER}, until=target, walls={"right": wall})
    nodes = run(inner, {"body": 285.15}, [stage])
    from entremetry.physics.conduction.box_body import Block

    block = Block(name="food", material=food, low=(0, 0, 0), high=(0.03, 0.002, 0.002))
    outer = box_body((0.032, 0.002, 0.002), silicone, (block,), 1e-3)
    grid = run(
        outer,
        {"body": 285.15, "food": 285.15},
        [Stage(surroundings={"right": FREEZER}, until=Target(temperature=261.15))],
    )
    assert nodes.end == pytest.approx(grid.end, rel=5e-3)


def test_lengths_scale_times_by_their_square_when_the_film_scales_too() -> None:
    """Similarity: sizes by 1.1, coefficient by 1/1.1, times by 1.21."""
    one = run(dome(), {"body": 285.15}, [reach(-12, FREEZER)], HEART, Course(accuracy=0.003))
    varied = Variation(size=1.1, coefficient=1.0 / 1.1)
    course = Course(accuracy=0.003, variation=varied)
    two = run(dome(), {"body": 285.15}, [reach(-12, FREEZER)], HEART, course)
    assert two.end == pytest.approx(1.21 * one.end, rel=2e-3)


def test_heat_content_scales_time() -> None:
    one = run(dome(), {"body": 285.15}, [reach(-12, FREEZER)], HEART, Course(accuracy=0.003))
    course = Course(accuracy=0.003, variation=Variation(heat=1.3))
    two = run(dome(), {"body": 285.15}, [reach(-12, FREEZER)], HEART, course)
    assert two.end == pytest.approx(1.3 * one.end, rel=2e-3)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -5.0])
def test_impossible_surroundings_are_refused(value: float) -> None:
    with pytest.raises(OutsideRange):
        Surroundings(temperature=value, coefficient=10.0)
    with pytest.raises(OutsideRange):
        Surroundings(temperature=280.0, coefficient=-abs(value))


def test_a_stage_needs_an_end() -> None:
    with pytest.raises(OutsideRange):
        Stage(surroundings={})
    with pytest.raises(OutsideRange):
        Stage(surroundings={}, duration=0.0)


def test_unknown_names_are_met_with_the_nearest() -> None:
    stage = Stage(surroundings={"skn": FREEZER}, duration=60.0)
    with pytest.raises(UnknownName, match="skin"):
        run(dome(), {"body": 285.15}, [stage])
    with pytest.raises(UnknownName, match="heart"):
        target = Target(of="hart", temperature=260.0)
        run(
            dome(),
            {"body": 285.15},
            [Stage(surroundings=around(FREEZER), until=target)],
            HEART,
        )
    with pytest.raises(UnknownName, match="body"):
        run(dome(), {"bodi": 285.15, "body": 285.15}, [reach(-12, FREEZER)], HEART)


def test_air_that_the_material_does_not_cover_is_refused() -> None:
    cold = Surroundings(temperature=213.15, coefficient=30.0)
    with pytest.raises(OutsideRange, match="mousse"):
        run(dome(), {"body": 285.15}, [reach(-12, cold)], HEART)


def test_a_point_outside_the_body_is_refused() -> None:
    with pytest.raises(OutsideRange, match="far"):
        run(dome(), {"body": 285.15}, [reach(-12, FREEZER)], {**HEART, "far": (0.2, 0.0)})
