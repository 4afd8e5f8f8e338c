from __future__ import annotations

import numpy as np
import pytest

from entremetry.errors import OutsideRange
from entremetry.physics import appliance
from entremetry.physics.appliance import Freezer, greatest_load, load, power_for
from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.outline import arc, outline
from entremetry.physics.conduction.section_body import round_body
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.material import material

ZERO = 273.15
AIR = Surroundings(temperature=255.15, coefficient=6.0, emissivity=0.95)
FACES = {"base": AIR, "skin": AIR}


def dome() -> Body:
    def ice(t: np.ndarray) -> np.ndarray:
        return 1.0 - -3.0 / np.minimum(t - ZERO, -3.0)

    made = material(
        "mousse",
        lambda t: 600 * (3100 * (t - ZERO) - 0.534 * ice(t) * (2130 * (t - ZERO) + 333600)),
        lambda t: 0.23 + 0.30 * ice(t),
        freezing_point=ZERO - 3.0,
    )
    edge = outline(
        ("base", [(0, 0), (0.035, 0)]),
        ("skin", arc((0, 0), 0.035, 0, np.pi / 2, 60)),
        ("axis", [(0, 0.035), (0, 0)]),
    )
    return round_body(edge, made, spacing=3.5e-3)


def freezer(power: float = 60.0) -> Freezer:
    return Freezer(
        set_point=255.15, power=power, leak=0.8, room=295.15, contents=2.0e4, exchange=4.0
    )


def test_power_of_a_rated_freezer() -> None:
    """4 kg a day at 340 kJ/kg is 15.7 W above its own leak."""
    assert power_for(4.0, 30.0) == pytest.approx(45.74, abs=0.01)


def test_a_strong_freezer_keeps_its_air() -> None:
    found = load(freezer(2000.0), dome(), {"body": 285.15}, FACES, 2, 4 * 3600.0)
    assert float(found.air.max()) == pytest.approx(255.15, abs=0.02)
    assert found.warmest_contents == pytest.approx(255.15, abs=0.02)


def test_more_pieces_warm_the_air_and_freeze_later() -> None:
    few, many = (load(freezer(), dome(), {"body": 285.15}, FACES, n, 8 * 3600.0) for n in (4, 24))
    assert float(many.air.max()) > float(few.air.max()) + 1.0
    assert many.warmest_contents > few.warmest_contents
    later = many.piece.at("warmest", 3 * 3600.0) - few.piece.at("warmest", 3 * 3600.0)
    assert later > 0.5


def test_heat_is_kept_over_the_load() -> None:
    """What pieces, leak and contents give is what the machine takes, within the windows' grain."""
    machine, hours = freezer(), 8
    found = load(machine, dome(), {"body": 285.15}, FACES, 16, hours * 3600.0)
    given = -16 * found.piece.heat
    leaked = float(np.sum(machine.leak * (machine.room - found.air))) * 900.0
    stored = machine.contents * float(found.contents[-1] - machine.set_point)
    taken = given + leaked - stored
    assert taken <= machine.power * hours * 3600.0 * 1.01
    busy = found.air > machine.set_point + 0.01
    assert taken >= machine.power * 900.0 * busy.sum() * 0.97


def test_crowded_trays_freeze_later() -> None:
    free, crowded = (
        load(freezer(), dome(), {"body": 285.15}, FACES, 4, 4 * 3600.0, crowding=c)
        for c in (1.0, 0.6)
    )
    assert crowded.piece.at("mean", 2 * 3600.0) > free.piece.at("mean", 2 * 3600.0)


def test_greatest_load_is_where_harm_begins() -> None:
    limit = 257.15
    most = greatest_load(freezer(), dome(), {"body": 285.15}, FACES, 6 * 3600.0, limit, 64)
    assert 0 < most < 64
    harmless = load(freezer(), dome(), {"body": 285.15}, FACES, most, 6 * 3600.0)
    assert harmless.warmest_contents <= limit
    harmed = load(freezer(), dome(), {"body": 285.15}, FACES, most + 1, 6 * 3600.0)
    assert harmed.warmest_contents > limit


def test_the_last_number_is_found_wherever_the_search_begins() -> None:
    for most in (1, 7):
        for last in range(most + 1):
            for guess in range(most + 2):
                tried: list[int] = []
                found = last_that_holds(tried, last, most, guess)
                assert found == last
                assert all(1 <= number <= most for number in tried)
                assert len(tried) == len(set(tried))


def last_that_holds(tried: list[int], last: int, most: int, guess: int) -> int:
    def holds(number: int) -> bool:
        tried.append(number)
        return number <= last

    return appliance._last(holds, most, guess)


def test_a_freezer_too_weak_for_its_own_leak_is_refused() -> None:
    with pytest.raises(OutsideRange, match="never"):
        freezer(20.0)


def test_impossible_loads_are_refused() -> None:
    with pytest.raises(OutsideRange):
        load(freezer(), dome(), {"body": 285.15}, FACES, 0, 3600.0)
    with pytest.raises(OutsideRange):
        load(freezer(), dome(), {"body": 285.15}, FACES, 1, 3600.0, crowding=0.0)
