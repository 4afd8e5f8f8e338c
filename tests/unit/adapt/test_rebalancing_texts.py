"""A component of a document rebalanced, and the document written anew."""

from __future__ import annotations

import difflib

import pytest

from entremetry.adapt.asking import Asked
from entremetry.adapt.rebalanced import MeasureChange, Rebalanced
from entremetry.adapt.rebalancing import rebalanced_text
from entremetry.adapt.swap import read_swap
from entremetry.errors import QuantityError, UnknownName
from entremetry.physics.gelatine import BloomRule
from unit.adapt.mousse_texts import COMPONENT, MOUSSE, formula_of, opened


def run(text: str = MOUSSE, swap: str = "", **asked: object) -> Rebalanced:
    swaps = (read_swap(swap),) if swap else ()
    wanted = Asked(component=COMPONENT, swaps=swaps, **asked)  # type: ignore[arg-type]
    return rebalanced_text(text, wanted, opened)


def measure(result: Rebalanced, name: str) -> MeasureChange:
    return next(each for each in result.measures if each.measure.name == name)


def changed_lines(after: str, before: str = MOUSSE) -> list[str]:
    lines = difflib.ndiff(before.splitlines(), after.splitlines())
    return [line for line in lines if line[0] in "+-"]


def test_the_document_is_the_same_to_the_last_letter_when_nothing_changes() -> None:
    result = run()
    assert result.text == MOUSSE
    assert result.changes == ()
    assert all(line.before == line.after for line in result.lines)


def test_keeping_what_is_so_already_changes_nothing() -> None:
    result = run(keeps=("fat", "gelatine", "ice", "yield"), pins=("cream-35",))
    assert result.text == MOUSSE


def test_a_target_is_met_by_the_component_as_it_is_made() -> None:
    result = run(targets=("fat=12 %",))
    fat = measure(result, "fat")
    assert fat.held and fat.wish == "asked"
    assert fat.after == pytest.approx(0.12, rel=0.021)
    made = formula_of(result.text)
    assert made["cream-35"] < 300.0
    assert [line.line for line in result.lines] == list(made)


def test_only_amounts_are_touched_and_comments_stay() -> None:
    result = run(targets=("sugars=-25 %",))
    assert all("formula" not in line and "step" not in line for line in changed_lines(result.text))
    assert "# more if it is sour" in result.text
    assert "note: very cold" in result.text


def test_less_sugar_names_what_gave_way() -> None:
    result = run(targets=("sugars=-25 %",))
    sugars = measure(result, "sugars")
    assert sugars.before is not None and sugars.after is not None
    assert sugars.after == pytest.approx(0.75 * sugars.before, rel=0.031)
    assert "sweetness" in {each.measure.name for each in result.gave_way}
    assert measure(result, "gelatine").held


def test_masses_are_written_as_scales_show_them() -> None:
    result = run(targets=("sugars=-25 %",))
    sugar = formula_of(result.text)["caster-sugar"]
    assert sugar == pytest.approx(round(sugar, 1), abs=1e-9)


def test_a_pinned_line_stays_and_is_said_to() -> None:
    result = run(targets=("fat=12 %",), pins=("raspberry-puree",))
    line = next(line for line in result.lines if line.line == "raspberry-puree")
    assert line.pinned and line.after == line.before


def test_bounds_hold_after_rounding() -> None:
    result = run(targets=("fat=12 %",), bounds=("cream-35=251.7..400 g", "raspberry-puree=..362"))
    made = formula_of(result.text)
    assert made["cream-35"] >= 251.7 - 1e-9
    assert made["raspberry-puree"] <= 362.0 + 1e-9


def test_what_no_formula_can_do_is_refused_with_its_reason() -> None:
    result = run(targets=("fat=30 %",), pins=("cream-35", "raspberry-puree"))
    assert not result.feasible and result.text == MOUSSE
    assert result.conflict is not None and result.conflict.proved
    assert any("fat" in demand for demand in result.conflict.demands)


def test_a_line_can_be_left_out_if_its_author_lets_it() -> None:
    result = run(bounds=("caster-sugar=0..0",))
    made = formula_of(result.text)
    assert "caster-sugar" not in made
    assert "[raspberry-puree, gelatine-sheet-gold]" in result.text


def test_without_leave_something_of_every_line_stays() -> None:
    result = run(targets=("sweetness=6",))
    assert formula_of(result.text)["caster-sugar"] >= 2.5 - 1e-6


def test_a_puree_of_other_brix_moves_its_sugar_to_the_sugar() -> None:
    result = run(swap="raspberry-puree=raspberry-puree-unsweetened")
    made = formula_of(result.text)
    assert made["raspberry-puree-unsweetened"] == pytest.approx(315.0, rel=0.02)
    assert made["caster-sugar"] == pytest.approx(85.0, rel=0.03)
    assert not result.gave_way


def test_a_swap_renames_the_line_in_formula_and_method() -> None:
    result = run(swap="raspberry-puree=mango-puree")
    assert "raspberry-puree" not in result.text
    assert "what: [mango-puree, caster-sugar, gelatine-sheet-gold]" in result.text
    assert list(formula_of(result.text)) == [
        "gelatine-sheet-gold",
        "mango-puree",
        "caster-sugar",
        "cream-35",
    ]


def test_cream_can_be_made_of_two() -> None:
    result = run(swap="cream-35=cream-48+whole-milk")
    made = formula_of(result.text)
    assert made["cream-48"] + made["whole-milk"] == pytest.approx(300.0, rel=0.02)
    assert "what: [cream-48, whole-milk], bowl: cream" in result.text
    assert "cream-48: {amount:" in result.text and "note: very cold" in result.text


def test_what_comes_in_joins_a_line_that_enters_with_it() -> None:
    text = MOUSSE.replace("      caster-sugar: 50", "      glucose: 20 g\n      caster-sugar: 50")
    text = text.replace("glucose: 20", "trehalose: 20").replace(
        "what: [raspberry-puree,", "what: [raspberry-puree, trehalose,"
    )
    made = formula_of(run(text, swap="caster-sugar=trehalose").text)
    assert "caster-sugar" not in made
    assert made["trehalose"] > 55.0


def test_what_comes_in_stays_apart_from_a_line_that_enters_elsewhere() -> None:
    text = MOUSSE.replace("      cream-35: {", "      whole-milk: 50 g\n      cream-35: {")
    result = run(text, swap="cream-35=whole-milk")
    assert "note: very cold, ingredient: whole-milk}" in result.text
    assert "what: [whole-milk-2], bowl: cream" in result.text
    assert formula_of(result.text)["whole-milk"] > 40.0


def test_agar_for_gelatine_is_dosed_on_the_water_and_told_how_to_use() -> None:
    result = run(swap="gelatine-sheet-gold=agar-powder")
    made = formula_of(result.text)
    water = measure(result, "water")
    total = measure(result, "yield")
    assert water.before is not None and total.before is not None
    assert made["agar-powder"] == pytest.approx(5.0 * water.before * total.before, rel=0.02)
    told = " ".join(each.text for each in result.cautions)
    assert "boil" in told and "0.2 to 0.9 %" in told and "does not melt in the mouth" in told
    assert measure(result, "gelatine").wish == ""


def test_gelatine_for_agar_is_dosed_too() -> None:
    text = run(swap="gelatine-sheet-gold=agar-powder").text
    result = run(text, swap="agar-powder=gelatine-powder-200")
    assert measure(result, "gelatine").after == pytest.approx(0.016, rel=0.06)
    assert "do not boil" in " ".join(each.text for each in result.cautions)


@pytest.mark.parametrize(
    ("rule", "grams"), [(BloomRule.LINEAR, 10.0), (BloomRule.SQUARE_ROOT, 8.94)]
)
def test_both_rules_are_shown_and_the_chosen_one_used(rule: BloomRule, grams: float) -> None:
    result = run(swap="gelatine-sheet-gold=gelatine-sheet-silver", rule=rule)
    assert formula_of(result.text)["gelatine-sheet-silver"] == pytest.approx(grams, rel=0.01)
    told = " ".join(each.text for each in result.cautions)
    assert "are 10 g of" in told and "8.9 g by gel strength" in told
    assert not result.gave_way


def test_powder_for_sheets_asks_for_the_water() -> None:
    told = run(swap="gelatine-sheet-gold=gelatine-powder-200").cautions
    assert any("state the soaking water" in each.text for each in told)


def test_gelatine_mass_brings_its_water() -> None:
    result = run(swap="gelatine-sheet-gold=gelatine-mass-200")
    assert any("brings its own water" in each.text for each in result.cautions)
    assert formula_of(result.text)["gelatine-mass-200"] > 50.0


def test_milk_for_cream_is_warned_about_and_its_fat_gives_way() -> None:
    result = run(swap="cream-35=whole-milk")
    assert any("does not whip" in each.text for each in result.cautions)
    assert "fat" in {each.measure.name for each in result.gave_way}


def test_plant_cream_tells_of_new_allergens() -> None:
    told = run(swap="cream-35=plant-whipping-cream").cautions
    assert any("new allergens: soybeans" in each.text for each in told)
    assert any("27 % fat" in each.text for each in told)


def test_raw_fruit_that_digests_gelatine_is_told() -> None:
    told = run(swap="raspberry-puree=pineapple").cautions
    assert any("digests gelatine" in each.text for each in told)


def test_trehalose_for_sucrose_keeps_the_freezing_point_and_loses_sweetness() -> None:
    result = run(swap="caster-sugar=trehalose")
    assert measure(result, "freezing_point").held
    sweet = measure(result, "sweetness")
    assert sweet.before is not None and sweet.after is not None and sweet.after < sweet.before


def test_an_own_lactose_free_cream_takes_the_lactose_out() -> None:
    own = (
        "ingredients:\n"
        "  cream-lactose-free: {like: cream-35, name: Lactose-free cream,"
        " per_100g: {lactose: 0, glucose: 1.6, galactose: 1.6}}\n"
        "components:"
    )
    text = MOUSSE.replace("components:", own)
    result = run(text, swap="cream-35=cream-lactose-free")
    assert measure(result, "lactose").after == pytest.approx(0.0, abs=1e-6)
    assert formula_of(result.text)["cream-lactose-free"] == pytest.approx(300.0, rel=0.05)


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({"targets": ("fat",)}, "NAME=VALUE"),
        ({"targets": ("fat=plenty",)}, "a number in %"),
        ({"targets": ("fat=30 g",)}, "a number in %"),
        ({"targets": ("fat=30..20 %",)}, "lower one first"),
        ({"targets": ("fat=..",)}, "one may be left out"),
        ({"targets": ("yield=-5 g",)}, "more than nothing"),
        ({"bounds": ("cream-35=much..",)}, "masses in g or kg"),
        ({"bounds": ("cream-35",)}, "LINE=LOW..HIGH"),
        ({"swap": "cream-35"}, "OLD=NEW"),
        ({"swap": "cream-35=gelatine"}, "of what strength"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_is_accepted(
    asked: dict[str, object], words: str
) -> None:
    with pytest.raises(QuantityError, match=words):
        run(**asked)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("asked", "nearest"),
    [
        ({"targets": ("fats=30 %",)}, "fat"),
        ({"keeps": ("sweetnes",)}, "sweetness"),
        ({"pins": ("cream-36",)}, "cream-35"),
        ({"swap": "cream-48=cream-30"}, "cream-35"),
        ({"swap": "cream-35=cream-31"}, "cream-3"),
    ],
)
def test_an_unknown_name_comes_with_the_nearest(asked: dict[str, object], nearest: str) -> None:
    with pytest.raises(UnknownName, match=nearest):
        run(**asked)  # type: ignore[arg-type]


def test_an_unknown_component_is_refused() -> None:
    with pytest.raises(UnknownName, match="raspberry-mousse"):
        rebalanced_text(MOUSSE, Asked(component="raspbery-mousse"), opened)


def test_a_measure_that_the_component_has_not_is_refused() -> None:
    dry = MOUSSE.replace("water: 100 g", "cocoa-butter: 100 g")
    with pytest.raises(QuantityError, match="too dry or too strong"):
        rebalanced_text(dry, Asked(component="syrup", targets=("freezing_point=-3",)), opened)


@pytest.mark.parametrize(
    ("text", "grams"),
    [("yield=500 g", 500.0), ("yield=0.5 kg", 500.0), ("yield=500", 500.0), ("yield=-10 %", 628.3)],
)
def test_a_yield_is_asked_for_in_grams_kilograms_or_as_a_change(text: str, grams: float) -> None:
    result = run(targets=(text,))
    made = measure(result, "yield").after
    assert made is not None
    before = measure(result, "yield").before
    assert before is not None
    wanted = 0.9 * before if "%" in text else grams / 1e3
    assert made == pytest.approx(wanted, rel=0.0101)


def test_ends_may_be_left_open() -> None:
    result = run(targets=("fat=..12 %", "freezing-point=-2..-1.5 °C"))
    fat, point = measure(result, "fat"), measure(result, "freezing_point")
    assert fat.after is not None and fat.after <= 0.12 + 1e-6
    assert point.after is not None and -2.0 <= point.after - 273.15 <= -1.5 + 1e-6
