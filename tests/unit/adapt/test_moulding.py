"""Demo desserts in other moulds and vessels, reasoned by hand."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest

from entremetry.adapt.swap import read_swap
from entremetry.checks import check
from entremetry.checks.band import Outcome
from entremetry.documents import read_tree
from entremetry.errors import FitError, QuantityError, UnknownName
from entremetry.quantities.parsing import parse_duration
from entremetry.store.demo import demo_texts
from entremetry.usecases.adapting import Adaptation, adapt_of_text
from entremetry.usecases.batch import batch_of_text, reckoned, surroundings
from unit.adapt.moulded import BARS, DOME, GLASS, LOG, RING, data, moulded, placed, sheet, steps


def test_in_a_glass_nothing_is_frozen_unmoulded_glazed_or_thawed() -> None:
    adapted = moulded(DOME, vessel="glass-straight")
    kinds = steps(adapted)
    assert {"freeze-until", "unmould", "glaze-at", "thaw-until"}.isdisjoint(kinds)
    methods = [c.get("method", []) for c in data(adapted)["components"].values()]
    assert all(step["step"] != "freeze-until" for method in methods for step in method)
    assert kinds == ["fill", "rest", "fill", "rest", "fill", "rest", "place", "serve"]


def test_layers_in_a_glass_have_the_shares_they_had_in_the_dome() -> None:
    """A half-sphere of 40 mm in one of 70 mm is (40/70)^3 = 18.7 % of it."""
    adapted = moulded(DOME, vessel="glass-straight")
    insert = float(placed(adapted, "vanilla-insert")["height"].removesuffix(" mm"))
    mousse = float(placed(adapted, "blackcurrant-mousse")["height"].removesuffix(" mm"))
    assert insert / (insert + mousse) == pytest.approx((40 / 70) ** 3, abs=0.5 / (insert + mousse))


def test_a_glass_is_filled_to_60_percent_if_the_portion_is_small() -> None:
    """90 ml in a glass of 33.2 cm2 are 27 mm, 36 % of 75 mm: it is raised to 45 mm."""
    free = batch_of_text(moulded(DOME, vessel="glass-straight").text).fill_steps[-1].below_rim
    assert free == pytest.approx(0.030, abs=0.0006)


def test_a_crisp_base_is_strewn_on_top_of_a_glass_and_a_cake_lies_at_its_bottom() -> None:
    dome = data(moulded(DOME, vessel="glass-straight"))
    assert dome["components"]["hazelnut-shortcrust"]["kind"] == "crumble"
    kinds = [step["step"] for step in dome["components"]["hazelnut-shortcrust"]["method"]]
    assert "roll" not in kinds and "cut" not in kinds and "bake" in kinds
    assert [entry["component"] for entry in dome["placement"]][3] == "hazelnut-shortcrust"
    log = data(moulded(LOG, vessel="glass-straight"))["placement"]
    assert log[0]["component"] == "almond-joconde"
    assert log[0]["cut_out"] == {"kind": "disc", "diameter": "62 mm"}


def test_a_glaze_on_a_mousse_that_is_not_frozen_is_poured_cooler() -> None:
    glaze = data(moulded(DOME, vessel="glass-straight"))["components"]["blackcurrant-glaze"]
    assert glaze["method"][-1]["temperature"] == "30 °C"
    assert placed(moulded(DOME, vessel="glass-straight"), "blackcurrant-glaze")["as"] == "layer"


def test_a_glaze_of_fat_is_left_out_of_a_glass() -> None:
    text = demo_texts()[DOME]
    start, end = text.index("  blackcurrant-glaze:"), text.index("  roasted-hazelnuts:")
    spray = "  blackcurrant-glaze:\n    name: Spray\n    kind: glaze\n    formula:\n"
    spray += "      cocoa-butter: 50 g\n      couverture-dark-70: 50 g\n\n"
    asked = Adaptation(vessel="glass-straight")
    adapted = adapt_of_text(text[:start] + spray + text[end:], asked)
    assert "blackcurrant-glaze" not in data(adapted)["components"]
    assert any(
        c.component == "blackcurrant-glaze" and c.text == "left out" for c in adapted.changes
    )


def test_a_large_ring_gets_its_own_insert_with_ten_millimetres_of_wall() -> None:
    """The disc is 20 mm narrower than the ring and holds the same 18.7 % of it, 238 ml."""
    adapted = moulded(DOME, mould="ring-180")
    shape = placed(adapted, "vanilla-insert")["shape"]
    assert shape["kind"] == "cylinder" and shape["diameter"] == "160 mm"
    height = float(shape["height"].removesuffix(" mm"))
    volume = math.pi / 4 * 160**2 * height / 1e3
    assert volume == pytest.approx((40 / 70) ** 3 * math.pi / 4 * 180**2 * 50 / 1e3, rel=0.05)
    walls = sheet(DOME, mould="ring-180").walls
    assert all(wall.thinnest >= 0.0098 for wall in walls)


def test_a_base_under_the_piece_stays_as_much_wider_than_it() -> None:
    """78 mm under 70 mm is 4 mm on every side, so 188 mm under 180 mm."""
    cut = placed(moulded(DOME, mould="ring-180"), "hazelnut-shortcrust")["cut_out"]
    assert cut == {"kind": "disc", "diameter": "188 mm"}


def test_the_pour_follows_the_coated_area() -> None:
    """A dome has 2 pi 35^2 = 77 cm2, the ring pi 90^2 + pi 180 50 = 537 cm2; 60 g become 420 g."""
    glaze = placed(moulded(DOME, mould="ring-180"), "blackcurrant-glaze")
    area = math.pi * 90**2 + math.pi * 180 * 50
    assert float(glaze["pour"].removesuffix(" g")) == pytest.approx(
        60 * area / (2 * math.pi * 35**2), abs=5
    )


def test_a_ring_freezes_longer_than_a_dome_and_says_by_what_it_is_computed() -> None:
    adapted = moulded(DOME, mould="ring-180")
    freeze = next(s for s in data(adapted)["assembly"] if s["step"] == "freeze-until")
    before = next(s for s in data_of(DOME)["assembly"] if s["step"] == "freeze-until")
    assert parse_duration(freeze["time"]) > parse_duration(before["time"])
    told = [c for c in adapted.changes if c.kind == "time" and c.text.startswith("freeze")]
    assert all(change.because.startswith("computed") for change in told) and told


def test_a_ring_of_18_cm_serves_eight() -> None:
    found = data(moulded(DOME, mould="ring-180"))
    assert (found["pieces"], found["serves"]) == (1, 8)
    assert placed(moulded(DOME, mould="ring-180"), "roasted-hazelnuts")["mass"] == "16 g"


def test_a_frame_is_built_from_the_base_up_in_layers_and_cut() -> None:
    adapted = moulded(DOME, mould="frame-300")
    found = data(adapted)
    order = [entry["component"] for entry in found["placement"]][:3]
    assert order == ["hazelnut-shortcrust", "vanilla-insert", "blackcurrant-mousse"]
    assert placed(adapted, "vanilla-insert")["as"] == "layer"
    assert placed(adapted, "blackcurrant-glaze")["where"] == "top"
    assert found["portions"] == {"length": "90 mm", "width": "30 mm", "trim": "10 mm"}
    assert found["pieces"] == 18
    kinds = steps(adapted)
    assert kinds.index("glaze-at") < kinds.index("cut") < kinds.index("thaw-until")


def test_a_ring_in_singles_gets_a_stock_insert_and_a_thinner_base() -> None:
    """7 mm are a fifth of 35 mm; 40 mm on top of it leave 35 - 7 - 20 = 8 mm to the pole."""
    adapted = moulded(RING, mould="hemisphere-70", pieces=8)
    assert placed(adapted, "praline-insert")["shape"] == {"kind": "hemisphere", "diameter": "40 mm"}
    assert placed(adapted, "hazelnut-dacquoise")["thickness"] == "7 mm"
    found = data(adapted)
    assert found["pieces"] == 8 and "serves" not in found
    assert min(w.thinnest for w in sheet(RING, mould="hemisphere-70").walls) == pytest.approx(
        0.008, abs=0.0002
    )


def test_a_jelly_layer_of_bars_becomes_a_frozen_insert_of_domes() -> None:
    adapted = moulded(BARS, mould="hemisphere-70")
    assert placed(adapted, "raspberry-jelly")["as"] == "insert"
    assert data(adapted)["components"]["raspberry-jelly"]["method"][-1]["step"] == "freeze-until"
    assert data(adapted)["placement"][0] == {"component": "pistachio-mousse", "as": "filling"}
    assert "portions" not in data(adapted) and "cut" not in steps(adapted)
    glaze = placed(adapted, "raspberry-glaze")
    assert "where" not in glaze and "pour" in glaze


def test_domes_in_a_log_have_an_insert_log() -> None:
    shape = placed(moulded(DOME, mould="log-250"), "vanilla-insert")["shape"]
    assert shape["kind"] == "log" and shape["length"] == "230 mm"
    cut = placed(moulded(DOME, mould="log-250"), "hazelnut-shortcrust")["cut_out"]
    assert cut == {"kind": "rectangle", "length": "258 mm", "width": "88 mm"}


def test_layers_of_a_glass_go_inside_the_mousse_of_a_mould() -> None:
    adapted = moulded(GLASS, mould="ring-160")
    roles = {entry["component"]: entry["as"] for entry in data(adapted)["placement"]}
    assert roles["coconut-cream"] == "filling"
    assert roles["mango-compote"] == roles["lime-curd"] == "insert"
    assert roles["coconut-crumble"] == "garnish"
    assert any(c.kind == "caution" and "carries" in c.text for c in adapted.changes)


def test_a_curd_that_nothing_sets_is_refused_for_bars() -> None:
    with pytest.raises(FitError, match="Lime curd holds nothing that sets it") as refusal:
        moulded(GLASS, mould="frame-300")
    assert "nearest that would do" in str(refusal.value)


def test_a_mould_too_small_is_refused_with_the_nearest_that_would_do() -> None:
    with pytest.raises(FitError, match="finds no room in Savarin 80 mm.*nearest.*hemisphere-50"):
        moulded(DOME, mould="savarin-80")


def test_more_pieces_change_the_number_and_the_hands_and_nothing_else() -> None:
    """15 min for six: 3 whatever the number and 12 that grow, so 83, to five minutes 85, for 40."""
    adapted = moulded(DOME, pieces=40)
    found = data(adapted)
    assert found["pieces"] == 40 and found["placement"] == data_of(DOME)["placement"]
    assert found["assembly"][0]["hands_on"] == "85 min"
    assert any(c.kind == "caution" for c in adapted.changes)


def test_comments_of_the_author_are_kept_below_a_line_on_the_origin() -> None:
    first, second, *_ = moulded(DOME, vessel="glass-straight").text.splitlines()
    assert first.startswith("# Blackcurrant and vanilla dome, adapted from Half-sphere 70 mm")
    assert second == demo_texts()[DOME].splitlines()[0]


def test_name_and_id_tell_of_the_new_form() -> None:
    found = data(moulded(DOME, vessel="glass-straight"))
    assert found["id"] == "blackcurrant-vanilla-glass"
    assert found["name"] == "Blackcurrant and vanilla in a glass"
    assert data(moulded(GLASS, mould="ring-160"))["name"] == "Mango, coconut and lime ring"


@pytest.mark.parametrize(
    ("demo", "mould", "vessel"),
    [
        (DOME, None, "glass-straight"),
        (DOME, "ring-180", None),
        (DOME, "frame-300", None),
        (RING, "hemisphere-70", None),
        (LOG, None, "glass-straight"),
        (BARS, "hemisphere-70", None),
    ],
)
def test_no_bench_check_fails_in_the_new_document(
    demo: str, mould: str | None, vessel: str | None
) -> None:
    reckoning = reckoned(moulded(demo, mould, vessel).text, "new", surroundings(None, "kitchen"))
    assert [v.id for v in check(reckoning) if v.verdict is Outcome.FAIL] == []


def test_no_measure_of_the_old_mould_is_left_in_a_note() -> None:
    text = moulded(LOG, vessel="glass-straight").text
    assert "insert logs" not in text and not re.search(r"note: .*230", text)


def test_a_vessel_asked_for_as_a_mould_is_refused_with_the_right_option() -> None:
    with pytest.raises(QuantityError, match="--vessel glass-straight"):
        moulded(DOME, mould="glass-straight")
    with pytest.raises(QuantityError, match="--mould ring-180"):
        moulded(DOME, vessel="ring-180")
    with pytest.raises(UnknownName, match="ring-180"):
        moulded(DOME, mould="ring-181")


@pytest.mark.parametrize("pieces", [0, -3, 20_000])
def test_no_such_number_of_pieces(pieces: int) -> None:
    with pytest.raises(QuantityError, match="1 to 10000"):
        moulded(DOME, pieces=pieces)


def test_a_mould_and_a_vessel_exclude_each_other() -> None:
    with pytest.raises(QuantityError, match="one of the two"):
        moulded(DOME, mould="ring-180", vessel="coupe")


def data_of(demo: str) -> dict[str, Any]:
    """A demo document as it was."""
    return dict(read_tree(demo_texts()[demo], file=demo).data)


KITCHEN = """
entremetry_kitchen: 1
name: Warm freezer
freezers:
  - {name: Freezer, temperature: -17 °C}
moulds:
  - {id: small-ring, name: Small ring, shape: {kind: cylinder, diameter: 120 mm, height: 45 mm}}
"""


def test_a_kitchen_alone_changes_the_times_in_its_cold() -> None:
    text = demo_texts()[DOME]
    adapted = adapt_of_text(text, Adaptation(), kitchen_text=KITCHEN)
    assert adapted.changes and {change.kind for change in adapted.changes} == {"time"}
    assert all("-17" in c.because for c in adapted.changes if c.text.startswith("freeze"))
    assert data(adapted)["placement"] == data_of(DOME)["placement"]


def test_a_mould_of_the_kitchen_is_known() -> None:
    adapted = adapt_of_text(
        demo_texts()[DOME], Adaptation(mould="small-ring"), kitchen_text=KITCHEN
    )
    assert data(adapted)["mould"] == "small-ring"
    assert placed(adapted, "vanilla-insert")["shape"]["diameter"] == "100 mm"


def test_a_mould_and_a_swap_go_together() -> None:
    swaps = (read_swap("caster-sugar=trehalose"),)
    adapted = adapt_of_text(demo_texts()[DOME], Adaptation(vessel="coupe", swaps=swaps))
    kinds = {change.kind for change in adapted.changes}
    assert {"swap", "mould", "placement"} <= kinds
    formula = data(adapted)["components"]["blackcurrant-mousse"]["formula"]
    assert "trehalose" in formula and data(adapted)["mould"] == "coupe"


def test_more_than_the_moulds_hold_is_filled_in_goes() -> None:
    told = [c.text for c in moulded(RING, mould="hemisphere-70", pieces=8).changes]
    assert "8 cavities are filled in 2 goes: there are 6" in told


def test_translations_of_what_an_adapted_dessert_no_longer_says_are_left_out_and_told() -> None:
    result = adapt_of_text(demo_texts()["blackcurrant-vanilla-dome"], Adaptation(mould="ring-180"))
    table = read_tree(result.text, file="new").data["translations"]["fr"]
    assert "Blackcurrant mousse" in table and "Blackcurrant and vanilla dome" not in table
    (told,) = [each for each in result.changes if each.text.startswith("translations left out")]
    assert "'Blackcurrant and vanilla dome'" in told.text
    assert batch_of_text(result.text).name == "Blackcurrant and vanilla ring"
