"""Swaps and sweetness against figures that others printed or reckoned."""

from __future__ import annotations

import math

import pytest

from entremetry.formula.gelatine_swap import in_place_of
from entremetry.formula.measures import MEASURES
from entremetry.formula.rebalancing import rebalanced
from entremetry.formula.sweetness import SWEET_PARTS
from entremetry.larder.ingredient import Ingredient
from entremetry.store.larder_file import open_larder
from unit.formula.formulas import (
    CREAM_30,
    CREAM_35,
    CREAM_48,
    MASCARPONE_45,
    MILK,
    grams,
    keep,
    line,
    problem,
    wish,
)

LARDER = open_larder()


@pytest.mark.parametrize(
    ("swapped", "expected"),
    [
        # Common practice, no source: fat balances of 500 g of cream, within 1 %.
        ((CREAM_48, MILK), (354.0, 146.0)),
        ((CREAM_30, MASCARPONE_45), (333.0, 167.0)),
    ],
    ids=["from 48 % cream and milk of 3.5 %", "from 30 % cream and mascarpone of 45 %"],
)
def test_cream_of_35_per_cent_from_other_creams(
    swapped: tuple[Ingredient, Ingredient], expected: tuple[float, float]
) -> None:
    before = [line(CREAM_35, 500.0)]
    lines = [line(each, 250.0) for each in swapped]
    solution = rebalanced(problem(lines, [keep("fat", before), keep("yield", before)]))
    assert grams(solution) == pytest.approx(expected, rel=0.01)


def test_cream_to_the_gram_when_the_ends_are_narrow() -> None:
    lines = [line(CREAM_48, 250.0), line(MILK, 250.0)]
    wishes = [wish("fat", 0.35, 1e-6), wish("yield", 0.5, 1e-6)]
    cream = 500.0 * (35.0 - 3.5) / (48.0 - 3.5)
    assert grams(rebalanced(problem(lines, wishes))) == pytest.approx(
        [cream, 500.0 - cream], abs=0.01
    )


def test_twelve_grams_of_200_bloom_as_160() -> None:
    """Common practice, no source: 15.0 g by the linear rule, 13.4 g by the root."""
    gold = LARDER.find("gelatine-sheet-gold")
    silver = LARDER.find("gelatine-sheet-silver")
    assert (gold.bloom, silver.bloom) == (200.0, 160.0)
    both = in_place_of(0.012, gold, silver)
    assert both.linear * 1e3 == pytest.approx(15.0, abs=0.05)
    assert both.square_root * 1e3 == pytest.approx(13.4, abs=0.05)


def test_35_g_of_gelatine_mass_of_one_and_six_are_5_g_of_gelatine() -> None:
    """Common practice, no source."""
    mass, powder = LARDER.find("gelatine-mass-200"), LARDER.find("gelatine-powder-200")
    assert in_place_of(0.035, mass, powder).linear * 1e3 == pytest.approx(5.0, abs=0.01)
    assert mass.composition.water * 35.0 - 5.0 * 0.13 == pytest.approx(30.0, abs=0.05)


@pytest.mark.parametrize(
    ("sugar", "printed"),
    [("glucose", 0.74), ("fructose", 1.73), ("lactose", 0.16), ("maltose", 0.33)],
)
def test_relative_sweetness_as_in_bender_2005(sugar: str, printed: float) -> None:
    assert SWEET_PARTS[sugar].usual == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(
    ("sugar", "printed"),
    [
        ("glucose", 0.75),
        ("fructose", 1.70),
        ("lactose", 0.15),
        ("maltose", 0.30),
        ("galactose", 0.30),
    ],
)
def test_the_band_holds_what_gaman_sherrington_1990_print(sugar: str, printed: float) -> None:
    each = SWEET_PARTS[sugar]
    assert each.low - 1e-9 <= printed <= each.high + 1e-9


def test_a_couverture_of_55_for_70_per_cent_keeps_what_a_cook_keeps() -> None:
    """Balance by hand: what the sweeter couverture brings, the sugar gives up."""
    dark, light = (LARDER.find(f"couverture-dark-{cocoa}") for cocoa in (70, 55))
    sugar = LARDER.find("caster-sugar")
    before = [line(dark, 100.0), line(sugar, 60.0), line(CREAM_35, 300.0)]
    lines = [line(light, 100.0), line(sugar, 60.0), line(CREAM_35, 300.0)]
    masses = grams(
        rebalanced(problem(lines, [keep(name, before) for name in ("sweetness", "yield", "fat")]))
    )
    sucrose = [dark.composition.sucrose, light.composition.sucrose]
    lactose = CREAM_35.composition.lactose * 0.16
    sweet_before = 100.0 * sucrose[0] + 60.0 * 0.998 + 300.0 * lactose
    sweet_after = masses[0] * sucrose[1] + masses[1] * 0.998 + masses[2] * lactose
    assert sweet_after == pytest.approx(sweet_before, rel=0.045)
    assert masses[1] < 60.0
    assert math.isclose(sum(masses), 460.0, rel_tol=0.011)
    assert MEASURES["fat"].tolerance(0.3) == pytest.approx(0.006)
