"""Parts in a cavity: volumes by hand, and what does not fit is named with its millimetres."""

from __future__ import annotations

import math

import pytest

from dessert_texts import DOME, reckoning_of, sheet_of
from entremetry.errors import FitError

HEMISPHERE = 2.0 / 3.0 * math.pi
FRAME = """
entremetry: 1
id: frame
name: Frame
pieces: 1
mould: frame-400
components:
  sponge: {name: Sponge, kind: base, density: 0.3 g/ml, formula: {plain-flour: 100 g}}
  cream: {name: Cream, kind: mousse, density: 0.5 g/ml, formula: {cream-35: 100 g}}
  jelly: {name: Jelly, kind: insert, density: 1 g/ml, formula: {puree: 100 g}}
placement:
"""


def frame(*placement: str) -> str:
    return FRAME + "\n".join(f"  - {entry}" for entry in placement)


SPONGE = (
    "{component: sponge, as: base, thickness: 10 mm, "
    "cut_out: {kind: rectangle, length: 400 mm, width: 300 mm}}"
)


def filled(text: str) -> dict[str, float]:
    placed = reckoning_of(text).placed
    return {part.component: part.volume for part in placed.filled}


def test_the_filling_takes_what_insert_and_base_leave() -> None:
    by_hand = HEMISPHERE * (0.035**3 - 0.020**3) - math.pi * 0.030**2 * 0.006
    assert filled(DOME)["mousse"] == pytest.approx(by_hand, rel=1e-9)


def test_the_wall_is_the_gap_between_two_spheres_set_off() -> None:
    wall = reckoning_of(DOME).placed.walls[0]
    assert wall.thinnest == pytest.approx(0.035 - 0.006 - 0.020, abs=2e-5)


def test_an_insert_without_depth_sits_in_the_middle_and_says_so() -> None:
    sheet = sheet_of(DOME.replace(", below_rim: 6 mm", ""))
    insert = next(part for part in sheet.section.parts if part.component == "insert")
    assert insert.low == pytest.approx((0.035 - 0.006 - 0.020) / 2.0)
    assert any("sits in the middle" in text for text in sheet.assumptions)


def test_layers_by_height_volume_and_mass_stack_up() -> None:
    volumes = filled(
        frame(
            SPONGE,
            "{component: cream, as: layer, height: 8 mm}",
            "{component: jelly, as: layer, volume: 600 ml}",
            "{component: cream, as: layer, mass: 300 g}",
        )
    )
    assert volumes["jelly"] == pytest.approx(600e-6)
    placed = reckoning_of(
        frame(
            SPONGE,
            "{component: cream, as: layer, height: 8 mm}",
            "{component: jelly, as: layer, volume: 600 ml}",
            "{component: cream, as: layer, mass: 300 g}",
        )
    ).placed
    cream = [part.volume for part in placed.filled if part.component == "cream"]
    assert cream == pytest.approx([0.4 * 0.3 * 0.008, 0.3 / 500.0])
    assert placed.free_height == pytest.approx(0.040 - 0.010 - 0.008 - 0.005 - 0.005)


def test_layers_after_the_filling_are_measured_from_the_rim() -> None:
    placed = reckoning_of(
        frame(
            SPONGE,
            "{component: cream, as: filling}",
            "{component: jelly, as: layer, height: 5 mm}",
        )
    ).placed
    levels = {part.component: (part.low, part.high) for part in placed.filled}
    assert levels["jelly"] == pytest.approx((0.035, 0.040))
    assert levels["cream"] == pytest.approx((0.0, 0.035))


def test_a_layer_around_a_narrow_base_fills_the_gap_beside_it() -> None:
    narrow = SPONGE.replace("length: 400 mm, width: 300 mm", "length: 380 mm, width: 280 mm")
    volume = filled(frame(narrow, "{component: cream, as: layer, height: 8 mm}"))["cream"]
    assert volume == pytest.approx(0.4 * 0.3 * 0.018 - 0.38 * 0.28 * 0.010)


def refusal(text: str) -> FitError:
    with pytest.raises(FitError) as caught:
        reckoning_of(text)
    return caught.value


def test_layers_higher_than_the_mould_name_both_parts_and_the_millimetres() -> None:
    error = refusal(
        frame(
            SPONGE,
            "{component: cream, as: layer, height: 25 mm}",
            "{component: jelly, as: layer, height: 9 mm}",
        )
    )
    assert error.missing == pytest.approx(0.004)
    assert "Jelly" in str(error)
    assert "4.0 mm" in str(error)


def test_too_much_volume_says_the_millilitres() -> None:
    error = refusal(frame(SPONGE, "{component: cream, as: layer, volume: 3700 ml}"))
    assert "100 ml too much" in str(error)


def test_an_insert_wider_than_the_mould_is_refused() -> None:
    error = refusal(DOME.replace("diameter: 40 mm", "diameter: 66 mm"))
    assert set(error.parts) == {"Cream insert", "the mould"}
    assert error.missing > 0.0


def test_an_insert_that_meets_the_base_names_both_and_what_is_missing() -> None:
    error = refusal(DOME.replace("below_rim: 6 mm", "below_rim: 2 mm"))
    assert set(error.parts) == {"Cream insert", "Shortcrust"}
    assert error.missing == pytest.approx(0.004)


def test_a_base_wider_than_the_dome_at_its_level_is_refused() -> None:
    error = refusal(DOME.replace("diameter: 60 mm", "diameter: 70 mm"))
    assert "Shortcrust" in str(error)
    assert error.missing > 0.0


def test_a_base_under_the_piece_takes_no_room() -> None:
    under = DOME.replace("diameter: 60 mm}, thickness", "diameter: 80 mm}, sits: under, thickness")
    assert filled(under)["mousse"] == pytest.approx(HEMISPHERE * (0.035**3 - 0.020**3))


def test_a_filling_with_no_room_left_is_refused() -> None:
    error = refusal(
        frame(
            SPONGE,
            "{component: cream, as: filling}",
            "{component: jelly, as: layer, height: 30 mm}",
        )
    )
    assert str(error).startswith("nothing is left for Cream")
