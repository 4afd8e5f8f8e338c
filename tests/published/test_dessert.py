"""Whole desserts against arithmetic done outside the program.

Every expected number is computed by hand from the closed form that stands beside it, with
pi = 3.14159, and carries the digits that were written down.
"""

from __future__ import annotations

import pytest

from dessert_texts import reckoning_of, sheet_of
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.needs import total
from entremetry.dessert.placement import CoatingPlacement
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import poured

HEADER = """
entremetry: 1
id: case
name: Case
pieces: {pieces}
mould: {mould}
components:
  mousse: {{name: Mousse, kind: mousse, density: {density}, formula: {{puree: 1 kg}},
    method: [{{step: pour, left_behind: 0 %}}]}}
  insert: {{name: Insert, kind: insert, density: 1.05 g/ml, formula: {{cream-35: 1 kg}},
    method: [{{step: pour, left_behind: 0 %}}]}}
  base: {{name: Base, kind: base, density: 1 g/ml, formula: {{plain-flour: 1 kg}}}}
  glaze: {{name: Glaze, kind: glaze, density: 1.25 g/ml, formula: {{puree: 1 kg}},
    method: [{{step: pour, left_behind: 0 %}}]}}
placement:
"""
FILLING = "  - {component: mousse, as: filling}\n"


def case(*placed: str, mould: str, pieces: int = 1, density: str = "0.62 g/ml") -> str:
    """A document with these placements."""
    header = HEADER.format(pieces=pieces, mould=mould, density=density)
    return header + FILLING + "".join(f"  - {entry}\n" for entry in placed)


def millilitres(reckoning: Reckoning, component: str) -> float:
    """Volume of a component in one cavity."""
    return total(reckoning.needs, component).volume * 1e6


def made(sheet: BatchSheet, component: str) -> float:
    """Grams of a component that are made."""
    (found,) = [each for each in sheet.components if each.id == component]
    return found.mass.value * 1e3


def dome(insert: str, gap: str = "") -> Reckoning:
    """Dome of 7 cm on a disc of 6 cm × 6 mm, with a half-sphere inside."""
    half_sphere = f"{{kind: hemisphere, diameter: {insert}}}"
    return reckoning_of(
        case(
            f"{{component: insert, as: insert, shape: {half_sphere}{gap}}}",
            "{component: base, as: base, cut_out: {kind: disc, diameter: 60 mm}, thickness: 6 mm}",
            mould="hemisphere-70",
        )
    )


def test_dome_with_insert_on_a_disc() -> None:
    # closed form, computed by hand: half-sphere (2/3) pi r^3, disc pi r^2 t
    # 2/3 pi 3.5^3 = 89.797; pi 3.0^2 0.6 = 16.965; 2/3 pi 2.0^3 = 16.755; the rest 56.077 ml
    reckoning = dome("40 mm")
    assert reckoning.dessert.mould.solid.volume * 1e6 == pytest.approx(89.80, abs=0.005)
    assert millilitres(reckoning, "base") == pytest.approx(16.96, abs=0.006)
    assert millilitres(reckoning, "insert") == pytest.approx(16.76, abs=0.006)
    assert millilitres(reckoning, "mousse") == pytest.approx(56.08, abs=0.006)


@pytest.mark.parametrize(("insert", "radius", "wall"), [("40 mm", 20.0, 9.0), ("50 mm", 25.0, 4.0)])
def test_wall_around_an_insert_that_lies_on_the_disc(
    insert: str, radius: float, wall: float
) -> None:
    # closed form, computed by hand: an insert standing on the disc has its centre 6 mm below the
    # rim, and the dome its own at the rim; they are nearest on the axis: 35 - 6 - r
    (found,) = dome(insert, ", below_rim: 6 mm").placed.walls
    assert 35.0 - 6.0 - radius == wall
    assert found.thinnest * 1e3 == pytest.approx(wall, abs=0.05)


WEIGHED = (
    "{id: flower, name: Flower, shape: {kind: measured, holds: 1130 g, "
    "like: {kind: cylinder, diameter: 180 mm, height: 45 mm}}}"
)


def test_mould_weighed_with_water() -> None:
    # closed form, computed by hand: 1130 g / 0.9982 g/ml = 1132.0 ml; disc pi 7.5^2 0.8 = 141.4;
    # insert 300 g / 1.05 g/ml = 285.7 ml; the rest 704.9 ml, at 0.62 g/ml 437.1 g.
    # (With water taken at 1 g/ml, as a cook does: 1130 - 141.4 - 285.7 = 703 ml, 436 g.)
    # An insert disc of 150 mm holds 285.7 ml at 285.714 / (pi 7.5^2) = 16.168 mm.
    reckoning = reckoning_of(
        case(
            "{component: insert, as: insert, shape: {kind: cylinder, diameter: 150 mm, "
            "height: 16.168 mm}}",
            "{component: base, as: base, cut_out: {kind: disc, diameter: 150 mm}, thickness: 8 mm}",
            mould=WEIGHED,
        )
    )
    assert total(reckoning.needs, "insert").mass * 1e3 == pytest.approx(300.0, abs=0.1)
    assert millilitres(reckoning, "mousse") == pytest.approx(704.9, abs=0.1)
    assert millilitres(reckoning, "mousse") == pytest.approx(703.0, rel=0.03)
    assert total(reckoning.needs, "mousse").mass * 1e3 == pytest.approx(437.1, abs=0.1)


def test_what_stays_in_bowl_and_bag_is_made_as_well() -> None:
    # closed form, computed by hand: 437.1 g / (1 - 0.06) = 465.0 g to make
    text = case(
        "{component: insert, as: insert, shape: {kind: cylinder, diameter: 150 mm, "
        "height: 16.168 mm}}",
        "{component: base, as: base, cut_out: {kind: disc, diameter: 150 mm}, thickness: 8 mm}",
        mould=WEIGHED,
    ).replace("left_behind: 0 %", "left_behind: 6 %", 1)
    assert made(sheet_of(text), "mousse") == pytest.approx(465.0, abs=0.1)
    assert made(sheet_of(text), "mousse") == pytest.approx(464.0, rel=0.03)


HALF_SPHERE = (
    "{id: half, name: Half, cavities: 8, shape: {kind: measured, holds: 68 ml, "
    "like: {kind: hemisphere, diameter: 64 mm}}}"
)
COATED = "{component: glaze, as: coating, film: 2 mm}"


def coated(mould: str, pieces: int, disc: str) -> BatchSheet:
    """A glazed dessert whose base stands under it."""
    return sheet_of(
        case(
            COATED,
            f"{{component: base, as: base, cut_out: {{kind: disc, diameter: {disc}}}, "
            "thickness: 5 mm, sits: under}",
            mould=mould,
            pieces=pieces,
        )
    )


@pytest.mark.parametrize(("disc", "base_ratio"), [("200 mm", 1.23), ("180 mm", 0.99)])
def test_small_domes_against_one_ring(disc: str, base_ratio: float) -> None:
    # closed form, computed by hand: a half-sphere of 68 ml has r = (68 / (2/3 pi))^(1/3) = 3.190 cm
    # filling: pi 10^2 4.5 = 1413.7 ml against 8 × 68 = 544 ml: × 2.60
    # base: pi 10^2 = 314.2 cm2 (× 1.23) or pi 9^2 = 254.5 cm2 (× 0.995) against 8 pi 3.19^2 = 255.8
    # glaze: pi 10^2 + 2 pi 10 4.5 = 596.9 cm2 against 8 × 2 pi 3.190^2 = 511.5: × 1.17
    small, ring = coated(HALF_SPHERE, 8, "63.8 mm"), coated("ring-200", 1, disc)
    assert made(ring, "mousse") / made(small, "mousse") == pytest.approx(2.60, abs=0.005)
    assert made(ring, "base") / made(small, "base") == pytest.approx(base_ratio, abs=0.006)
    assert made(ring, "glaze") / made(small, "glaze") == pytest.approx(1.17, abs=0.005)


@pytest.mark.parametrize(
    ("length", "width", "height"), [("40 cm", "30 cm", 42.5), ("38 cm", "28 cm", 47.9)]
)
def test_a_frame_for_thirty_four_portions(length: str, width: str, height: float) -> None:
    # closed form, computed by hand: 34 × 150 ml = 5100 ml over 40 × 30 = 1200 cm2: 4.25 cm;
    # over 38 × 28 = 1064 cm2, with a centimetre trimmed all round: 4.79 cm
    shape = f"{{kind: box, length: {length}, width: {width}, height: 6 cm}}"
    text = case(mould=f"{{id: f, name: Frame, fills: upright, shape: {shape}}}").replace(
        FILLING, "  - {component: mousse, as: layer, volume: 5.1 l}\n"
    )
    (layer,) = reckoning_of(text).placed.filled
    assert (layer.high - layer.low) * 1e3 == pytest.approx(height, abs=0.05)


def test_six_rings_glazed_one_after_another() -> None:
    # closed form, computed by hand: each ring keeps 150 g of a pour of 600 g; of the 450 g that run
    # off 85 % are caught, 67.5 g lost: 600 + 5 × (150 + 67.5) = 1687.5 g, not 6 × 680 = 4080 g.
    # A ring of 18 × 5 cm has pi 9^2 + pi 18 5 = 537.2 cm2 to coat; 150 g are 0.27922 g/cm2.
    glaze = "{component: glaze, as: coating, per_area: 0.27922 g/cm2, pour: 600 g, caught: 85 %}"
    sheet = sheet_of(case(glaze, mould="ring-180", pieces=6))
    assert made(sheet, "glaze") == pytest.approx(1687.5, abs=0.5)


def test_shells_lining_twelve_rings() -> None:
    # closed form, computed by hand: ring of 8 × 2 cm, floor pi 4^2 = 50.27 and side pi 8 2 = 50.27
    # cm2, lined 2.5 mm thick: 25.1 ml, at 1.25 g/ml 31.4 g; twelve of them 377 g
    lining = "{component: glaze, as: coating, film: 2.5 mm}"
    shape = "{kind: cylinder, diameter: 80 mm, height: 20 mm}"
    ring = f"{{id: r, name: Ring, shape: {shape}, cavities: 12}}"
    sheet = sheet_of(case(lining, mould=ring, pieces=12))
    (shell,) = [each for each in sheet.components if each.id == "glaze"]
    assert shell.per_piece.value / shell.density.value * 1e6 == pytest.approx(25.1, abs=0.05)
    assert shell.per_piece.value * 1e3 == pytest.approx(31.4, abs=0.05)
    assert made(sheet, "glaze") == pytest.approx(377.0, abs=0.5)


def test_a_ring_that_catches_nothing_takes_every_pour_in_full() -> None:
    # closed form, computed by hand: 600 + 5 × 600 = 3600 g
    placement = CoatingPlacement(
        component="glaze", role="coating", film="2 mm", pour="600 g", caught="0 %"
    )
    assert poured(placement, 0.150, 6) * 1e3 == pytest.approx(3600.0)
