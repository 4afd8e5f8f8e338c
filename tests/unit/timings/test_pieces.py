"""Freezing and thawing of whole pieces and of inserts."""

from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.errors import FitError
from entremetry.kitchen.mould import Mould
from entremetry.method.waiting import FreezeUntil, ThawUntil
from entremetry.store.shelf import built_in_moulds
from entremetry.timings.freezing import freezing, freezing_insert
from entremetry.timings.mould_wall import MATERIALS, base_under, mould_wall
from entremetry.timings.piece_body import CLOSED_END, OPENING, WALL
from entremetry.timings.piece_run import run_piece
from entremetry.timings.setting import Setting
from entremetry.timings.thawing import thawing
from entremetry.timings.timed_step import find_step
from timed_desserts import KITCHEN, reckoning_of, told

FREEZE = "id: freeze, temperature: -12 °C"
THAW = "id: thaw, temperature: -2 °C, where: fridge, on: glass shelf"
UNDER = ("thickness: 4 mm}", "thickness: 4 mm, sits: under}")


def frozen(*swaps: tuple[str, str], mould: str | None = None) -> Setting:
    reckoning = reckoning_of(*swaps, mould=mould)
    step = find_step(reckoning.dessert, "freeze").step
    assert isinstance(step, FreezeUntil)
    return freezing(reckoning, step, None)


def thawed(*swaps: tuple[str, str], mould: str | None = None) -> Setting:
    reckoning = reckoning_of(*swaps, mould=mould)
    step = find_step(reckoning.dessert, "thaw").step
    assert isinstance(step, ThawUntil)
    return thawing(reckoning, step, None)


def test_each_region_starts_as_its_component_was_left() -> None:
    setting = frozen()
    by_component = {c: setting.start[r] for r, c in setting.piece.components.items()}
    assert by_component["heart"] == pytest.approx(261.15)
    assert by_component["crust"] == pytest.approx(293.15)
    assert 279.0 < by_component["mousse"] < 315.0
    said = next(words for words in setting.assumptions if words.startswith("At the start"))
    assert "as the fold leaves it" in said and "frozen before" in said


def test_the_mould_covers_all_but_the_opening() -> None:
    walls = frozen(mould="cylinder-70").stage.walls
    assert set(walls) == {CLOSED_END, WALL}


def test_an_insert_freezes_in_silicone_alone() -> None:
    reckoning = reckoning_of()
    heart = reckoning.dessert.components[0]
    step = find_step(reckoning.dessert, "freeze-heart").step
    assert isinstance(step, FreezeUntil)
    setting = freezing_insert(reckoning, heart, step, None)
    assert setting.piece.body.volume == pytest.approx(2.0 / 3.0 * math.pi * 0.02**3, rel=3e-3)
    assert setting.start == {"body": pytest.approx(303.15)}


def test_an_insert_stays_the_same_in_another_mould() -> None:
    one = reckoning_of()
    other = reckoning_of(mould="hemisphere-80")
    times = []
    for reckoning in (one, other):
        step = find_step(reckoning.dessert, "freeze-heart").step
        assert isinstance(step, FreezeUntil)
        heart = reckoning.dessert.components[0]
        times.append(freezing_insert(reckoning, heart, step, None).piece.body.volume)
    assert times[0] == times[1]


def test_a_thawing_dome_stands_on_its_opening_and_wears_its_glaze() -> None:
    setting = thawed()
    assert set(setting.stage.walls) == {WALL}
    foot = setting.stage.surroundings[OPENING]
    assert (foot.emissivity, foot.coefficient) == (0.0, 20.0)
    assert setting.start["body"] == pytest.approx(255.15)


def test_a_base_under_the_piece_keeps_heat_from_its_foot() -> None:
    setting = thawed(UNDER)
    assert set(setting.stage.walls) == {WALL, OPENING}
    bare = (
        "  - {component: crust, as: base, cut_out: {kind: disc, diameter: 60 mm}, "
        "thickness: 4 mm}\n",
        "",
    )
    under, without = told("thaw", UNDER), told("thaw", bare, UNUSED)
    assert under.time is not None and without.time is not None
    assert under.time > 1.05 * without.time


def test_between_a_set_piece_and_its_base_there_is_air() -> None:
    setting = thawed(UNDER)
    wall = setting.stage.walls[OPENING]
    assert wall is not None and wall.contact == pytest.approx(0.2e-3 / 0.024)
    assert any("0.2 mm of air" in words for words in setting.assumptions)
    assert not any("of air" in words for words in thawed().assumptions)


ON_ITS_BASE = ("below_rim: 8 mm", "below_rim: 4 mm")


def test_an_insert_on_its_base_has_air_between_and_what_is_poured_has_none() -> None:
    """A disc of 40 mm touches; the mousse around touches both."""
    setting, apart = frozen(ON_ITS_BASE), frozen()
    cells = setting.piece.body.cells
    assert np.sum(0.2e-3 / 0.024 / cells.resistance) == pytest.approx(math.pi * 0.02**2, rel=0.03)
    assert any("lie on each other" in words for words in setting.assumptions)
    assert apart.piece.body.cells.resistance.size == 0
    assert not any("lie on each other" in words for words in apart.assumptions)


UNUSED = (
    """  crust:
    name: Shortcrust
    kind: base
    formula: {plain-flour: 100 g, butter-unsalted: 60 g, caster-sugar: 30 g}
    method:
      - {step: mix, what: [plain-flour, butter-unsalted, caster-sugar]}
      - {step: bake, at: 160 °C, loss: 10 %}
""",
    "",
)


def test_a_base_is_a_poor_conductor_and_has_heat_of_its_own() -> None:
    layer = base_under(reckoning_of(UNDER))
    assert layer is not None
    assert layer.thickness == pytest.approx(0.004)
    assert 0.03 < layer.conductivity < 0.4
    assert 3e5 < layer.heat_capacity < 3e6
    assert base_under(reckoning_of()) is None


@pytest.mark.parametrize("material", MATERIALS)
def test_every_material_of_a_mould_has_a_wall(material: str) -> None:
    shelf = built_in_moulds()["hemisphere-70"]
    fields = {name: getattr(shelf, name) for name in Mould.__slots__}
    mould = Mould(**(fields | {"material": material, "wall": None}))
    assert mould_wall(mould).thickness == MATERIALS[material][0]
    thick = Mould(**(fields | {"material": material, "wall": 0.004}))
    assert mould_wall(thick).thickness == 0.004


def test_a_glass_is_served_in_its_wall_and_stands_on_its_closed_end() -> None:
    setting = thawed(mould="glass-straight")
    assert set(setting.stage.walls) == {CLOSED_END, WALL}
    assert setting.stage.surroundings[CLOSED_END].emissivity == 0.0
    assert setting.stage.surroundings[OPENING].emissivity > 0.0


def test_a_dome_that_hardly_touches_its_shelf_says_so() -> None:
    assert any("hardly touches" in words for words in frozen().assumptions)
    assert not any("hardly touches" in words for words in frozen(mould="cylinder-70").assumptions)


def test_what_the_piece_stands_on_is_named_and_decides_the_time() -> None:
    times = {}
    for support in ("metal shelf", "glass shelf", "board", "box"):
        answer = told("thaw", ("on: glass shelf", f"on: {support}"))
        assert support in answer.because
        times[support] = answer.time or math.nan
    assert times["metal shelf"] < times["glass shelf"] < times["board"] < times["box"]


@pytest.mark.parametrize("celsius", [-18, -25])
def test_no_colder_than_the_freezer(celsius: int) -> None:
    answer = told("freeze", (FREEZE, f"id: freeze, temperature: {celsius} °C"))
    assert (answer.time, answer.low, answer.high, answer.facts) == (None, None, None, ())
    assert answer.reason == "the freezer has -18 °C, and nothing in it gets colder than that"


@pytest.mark.parametrize("celsius", [4, 10])
def test_no_warmer_than_the_fridge(celsius: int) -> None:
    answer = told("thaw", (THAW, f"id: thaw, temperature: {celsius} °C, where: fridge"))
    assert answer.time is None
    assert answer.reason == "the fridge has 4 °C, and nothing in it gets warmer than that"


def test_nothing_thaws_in_a_freezer_and_nothing_freezes_in_a_room() -> None:
    cold = told("thaw", ("where: fridge", "where: freezer"))
    warm = told("freeze", (FREEZE, f"{FREEZE}, where: room"))
    assert cold.time is None and "nothing in it gets warmer" in cold.reason
    assert warm.time is None and "nothing in it gets colder" in warm.reason


def test_close_to_the_air_the_unlucky_end_never_comes() -> None:
    answer = told("freeze", (FREEZE, "id: freeze, temperature: -17.5 °C"))
    assert answer.time is not None and answer.low is not None and answer.high is None
    assert answer.mostly == "the temperature around it"


def test_what_is_there_already_takes_no_time() -> None:
    answer = told("thaw", (THAW, "id: thaw, temperature: -30 °C, where: fridge"))
    assert (answer.time, answer.low, answer.high) == (0.0, 0.0, 0.0)
    assert answer.assumptions[-1] == "It is there already at the start."


def test_a_step_with_a_time_only_is_run_for_that_time() -> None:
    answer = told("freeze", (FREEZE, "id: freeze, time: 90 min"))
    assert (answer.target, answer.time, answer.low, answer.high) == (None, 5400, 5400, 5400)
    assert answer.curves[0].times[-1] == pytest.approx(5400.0)


def test_marks_come_in_the_order_of_time_and_before_the_end() -> None:
    for step in ("freeze", "freeze-heart"):
        answer = told(step)
        times = [mark.time for mark in answer.marks]
        assert len(times) == 2 and times == sorted(times)
        assert answer.time is not None and times[-1] < answer.time


def test_ice_is_gone_before_the_room_has_warmed_the_heart() -> None:
    answer = told("thaw", (THAW, "id: thaw, temperature: 4 °C, where: room"))
    assert [mark.text for mark in answer.marks] == [
        "edge above 5 °C",
        "no ice left in Vanilla mousse",
    ]


def test_pictures_run_from_the_start_to_the_end_and_are_empty_outside() -> None:
    answer = told("freeze", pictures=True)
    field = answer.field
    assert field is not None and answer.time is not None
    assert field.times[0] == 0.0 and field.times[-1] == pytest.approx(answer.time, rel=2e-3)
    assert len(field.times) == len(field.temperatures) == 13
    inside = np.isfinite(field.temperatures[0])
    assert 0.7 < inside.mean() < 0.9  # a quarter circle in its square
    assert field.served_upside_down
    assert told("freeze").field is None


def test_the_heat_balance_closes() -> None:
    for step in ("freeze", "freeze-heart", "thaw"):
        assert told(step).balance_error < 1e-6


def test_a_colder_freezer_on_metal_is_faster() -> None:
    usual, better = told("freeze"), told("freeze", kitchen=KITCHEN)
    assert usual.time is not None and better.time is not None
    assert better.time < usual.time
    assert "in the chest at -20 °C, on a metal shelf" in better.because
    blast = told("freeze", (FREEZE, f"{FREEZE}, where: blast freezer"), kitchen=KITCHEN)
    assert blast.time is not None and blast.time < 0.6 * better.time


def test_a_freezer_at_the_edge_of_what_is_known_still_has_an_interval() -> None:
    cold = "entremetry_kitchen: 1\nname: k\nfreezers: [{name: a, temperature: -38 °C}]\n"
    answer = told("freeze", kitchen=cold)
    assert answer.low is not None and answer.high is not None


@pytest.mark.parametrize("mould", sorted(built_in_moulds()))
def test_every_mould_that_takes_the_dessert_can_be_frozen_and_thawed(mould: str) -> None:
    try:
        settings = (frozen(mould=mould), thawed(mould=mould))
    except FitError:
        return
    for setting in settings:
        history = run_piece(setting.piece, setting.start, setting.stage)
        assert history.reached
        assert np.isfinite(history.values).all()
