"""The demo desserts against docs/demo-library.md: what was worked out on paper."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from entremetry.dessert.batch_sheet import BatchSheet, ComponentBatch
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text

GEOMETRY = 0.005
MASSES = 0.025  # the paper works with rounded densities
PAGE = Path(__file__).parents[3] / "docs" / "demo-library.md"

DOME = "blackcurrant-vanilla-dome"
LOG = "pear-caramel-log"
RING = "coffee-praline-ring"
GLASS = "mango-coconut-lime-glass"
BARS = "raspberry-pistachio-bars"
ALL = (DOME, LOG, RING, GLASS, BARS)

# One cavity in ml, the area under the glaze in cm2, one piece as it leaves the mould in g.
CAVITIES = {
    DOME: (89.8, 76.97, 111.0),
    LOG: (628.3, 364.4, 579.2),
    RING: (1272.3, 537.2, 1116.9),
    GLASS: (248.9, 0.0, 158.9),
}

# Component: volume in one cavity in ml, mass in one cavity in g, g to make, loss in per cent.
COMPONENTS = {
    (DOME, "vanilla-insert"): (16.76, 17.6, 117.3, 10.1),
    (DOME, "blackcurrant-mousse"): (73.04, 56.5, 360.6, 6.0),
    (LOG, "caramel-insert"): (144.5, 158.9, 345.1, 7.9),
    (LOG, "pear-mousse"): (366.2, 286.9, 604.0, 5.0),
    (RING, "praline-insert"): (301.6, 320.9, 338.2, 5.1),
    (RING, "coffee-mousse"): (769.7, 571.6, 662.9, 13.8),
    (RING, "hazelnut-dacquoise"): (201.1, 70.4, 90.3, 22.1),
    (GLASS, "mango-compote"): (46.5, 50.9, 445.8, 8.6),
    (GLASS, "coconut-cream"): (73.0, 56.9, 478.8, 5.0),
    (GLASS, "lime-curd"): (26.5, 29.1, 251.5, 7.4),
    (GLASS, "coconut-crumble"): (12 / 0.45, 12.0, 102.1, 6.0),
    (BARS, "raspberry-jelly"): (960.0, 1058.9, 1091.7, 3.0),
    (BARS, "pistachio-mousse"): (2880.0, 2172.4, 2273.1, 4.4),
    (BARS, "pistachio-sponge"): (960.0, 364.8, 427.4, 14.6),
    (BARS, "raspberry-soak"): (None, 96.0, 100.0, 4.0),
    (BARS, "raspberry-glaze"): (180.0, 225.9, 240.3, 6.0),
}

# Gelatine in what is weighed, in per cent.
GELATINE = {
    (DOME, "blackcurrant-mousse"): 1.11,
    (DOME, "vanilla-insert"): 0.84,
    (DOME, "blackcurrant-glaze"): 1.45,
    (LOG, "pear-mousse"): 1.32,
    (LOG, "caramel-insert"): 1.16,
    (LOG, "caramel-glaze"): 1.57,
    (RING, "coffee-mousse"): 1.04,
    (RING, "praline-insert"): 1.17,
    (RING, "coffee-glaze"): 1.48,
    (GLASS, "coconut-cream"): 0.82,
    (BARS, "raspberry-jelly"): 1.49,
    (BARS, "pistachio-mousse"): 0.99,
}

# Glaze: g that stay on one piece, g ready in the jug at the start.
GLAZES = {
    (DOME, "blackcurrant-glaze"): (19.6, 188.4),
    (LOG, "caramel-glaze"): (88.7, 335.0),
    (RING, "coffee-glaze"): (138.0, 350.0),
}

# Usual shares of gelatine in what is weighed, by kind, in per cent: common practice, widened to
# include creamy and jellied inserts alike.
USUAL_GELATINE = {"mousse": (0.79, 1.6), "insert": (0.7, 1.7), "glaze": (1.3, 1.7)}


@cache
def sheet(name: str) -> BatchSheet:
    return batch_of_text(demo_texts()[name], file=f"{name}.yaml")


def component(name: str, key: str) -> ComponentBatch:
    return next(found for found in sheet(name).components if found.id == key)


def gelatine(found: ComponentBatch) -> float:
    """Share of dry gelatine in everything weighed, soaking water included. [%]"""
    dry = sum(line.mass for line in found.lines if line.id.startswith("gelatine"))
    return 100.0 * dry / found.mass.value


def test_the_library_is_these_five() -> None:
    assert set(demo_texts()) == set(ALL)


@pytest.mark.parametrize("name", CAVITIES)
def test_cavity_area_and_piece_are_those_of_the_paper(name: str) -> None:
    volume, area, mass = CAVITIES[name]
    found = sheet(name)
    assert found.mould.cavity_volume.value * 1e6 == pytest.approx(volume, rel=GEOMETRY)
    assert found.mould.coated_area.value * 1e4 == pytest.approx(area, rel=GEOMETRY)
    assert found.piece_mass.value * 1e3 == pytest.approx(mass, rel=MASSES)


def test_a_bar_is_what_is_left_when_the_frame_is_trimmed() -> None:
    """27 of the 1200 cm² of a slab of 3918 g, and 1 g of pistachio on top."""
    assert sheet(BARS).piece_mass.value * 1e3 == pytest.approx(89.2, rel=MASSES)


@pytest.mark.parametrize(("name", "key"), COMPONENTS)
def test_a_component_is_that_of_the_paper(name: str, key: str) -> None:
    volume, each, make, loss = COMPONENTS[name, key]
    found, cavities = component(name, key), sheet(name).mould.cavities
    per_cavity = found.ready_mass / cavities if name == BARS else found.per_piece.value
    assert per_cavity * 1e3 == pytest.approx(each, rel=MASSES)
    assert found.mass.value * 1e3 == pytest.approx(make, rel=MASSES)
    assert found.loss_fraction * 100 == pytest.approx(loss, abs=0.15)
    if volume is not None:
        assert per_cavity / found.density.value * 1e6 == pytest.approx(volume, rel=GEOMETRY)


@pytest.mark.parametrize(("name", "key"), GELATINE)
def test_gelatine_is_that_of_the_paper_and_usual(name: str, key: str) -> None:
    found = component(name, key)
    assert gelatine(found) == pytest.approx(GELATINE[name, key], abs=0.02)
    low, high = USUAL_GELATINE[found.kind]
    assert low <= gelatine(found) <= high


@pytest.mark.parametrize(("name", "key"), GLAZES)
def test_glaze_is_that_of_the_paper(name: str, key: str) -> None:
    stays, ready = GLAZES[name, key]
    found = component(name, key)
    assert found.per_piece.value * 1e3 == pytest.approx(stays, rel=MASSES)
    assert found.ready_mass * 1e3 == pytest.approx(ready, rel=MASSES)


def test_bases_are_those_of_the_paper() -> None:
    shortcrust, joconde = component(DOME, "hazelnut-shortcrust"), component(LOG, "almond-joconde")
    assert shortcrust.per_piece.value * 1e3 == pytest.approx(15.3, rel=MASSES)
    assert joconde.per_piece.value * 1e3 == pytest.approx(44.7, rel=MASSES)
    assert joconde.ready_mass * 1e3 == pytest.approx(127.7, rel=MASSES)


def test_walls_and_free_height_are_those_of_the_paper() -> None:
    walls = {name: sheet(name).walls[0].thinnest * 1e3 for name in (DOME, LOG, RING)}
    assert walls == {name: pytest.approx(10.0, abs=0.1) for name in (DOME, LOG, RING)}
    levels = [part.high * 1e3 for part in sheet(GLASS).section.parts]
    assert max(levels) == pytest.approx(52.0, abs=0.1)


def test_the_frame_gives_thirty_six_bars() -> None:
    mould = sheet(BARS).mould
    assert (mould.pieces_per_cavity, mould.cavities) == (36, 1)
    assert mould.cavity_volume.value * 1e6 == pytest.approx(4800.0, rel=GEOMETRY)
    assert mould.coated_area.value * 1e4 == pytest.approx(1200.0, rel=GEOMETRY)


@pytest.mark.parametrize("name", ALL)
def test_a_demo_is_complete_and_holds_no_slip(name: str) -> None:
    found = sheet(name)
    assert found.slips == ()
    assert found.about and found.assembly and found.shopping and found.cautions
    assert min(c.factor for c in found.components) >= 0.95
    assert max(c.factor for c in found.components) <= 1.05
    for part in found.components:
        assert part.method or part.kind == "garnish"
        assert part.hands_on > 0 or part.kind == "garnish"


@pytest.mark.parametrize("name", ALL)
def test_mousses_are_neither_heavy_nor_greasy(name: str) -> None:
    """Folded creams weigh 0.5 to 0.8 g/ml; above 30 % fat they taste of butter."""
    for part in sheet(name).components:
        if part.kind == "mousse":
            assert 500 <= part.density.value <= 800
            assert part.constituents.fat / part.constituents.total < 0.30


@pytest.mark.parametrize("name", CAVITIES)
def test_the_paper_says_the_numbers_compared_here(name: str) -> None:
    text = PAGE.read_text(encoding="utf-8")
    for value in (v for v in CAVITIES[name] if v):
        assert f"{value:g}" in text
    for key, gel in GELATINE.items():
        assert f"{gel:g} %" in text, key
