"""The larder against the printed tables it is made from, and those tables against themselves."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.larder import Ingredient, mean_molar_mass
from entremetry.store.larder_file import open_larder

HERE = Path(__file__).parent
TABLES = HERE.parents[1] / "tools" / "larder"
LARDER = open_larder()
KCAL = 4184.0
ALCOHOL_KCAL = 6.93  # kcal/g, Atwater factor used throughout SR28
CLOSURE_EXCEPTIONS = {
    "18372",  # baking soda: its carbon dioxide is not in the ash
    "04047",  # coconut oil: 99.12 as printed
    "02030",  # pepper, black and white: the parts fall short by 5 to 6 g
    "02032",
    "02048",  # vinegars: acetic acid is no carbohydrate there
    "02053",
    "02069",
    "18374",  # fresh yeast: 99.20
    "19383",  # household recipes and packets, rounded to whole grams
    "19100",
    "19125",
    "18239",
    "16122",
}


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def half_digit(text: str) -> float:
    """Half the last printed digit, and a hair."""
    return 0.5000001 * 10.0 ** -len(text.partition(".")[2])


SR28 = {row["ndb"]: row for row in rows(TABLES / "sr28.csv")}
SELECTED = {row["id"]: SR28[row["ndb"]] for row in rows(TABLES / "selection.csv")}
WITH_FACTORS = [
    i
    for i, row in SELECTED.items()
    if row["carbohydrate_factor"] and row["ndb"] not in CLOSURE_EXCEPTIONS
]


def grams(row: dict[str, str], *words: str) -> float:
    """Sum of some columns, blank as nothing."""
    return sum(float(row[word] or 0) for word in words)


@pytest.mark.parametrize("row", rows(HERE / "usda_sr28_household.csv"), ids=str)
def test_household_weights_are_the_printed_ones(row: dict[str, str]) -> None:
    weight = LARDER.find(row["ingredient"]).mass_of(1.0, row["measure"])
    assert 1000.0 * weight == pytest.approx(float(row["grams"]), abs=1e-9)


@pytest.mark.parametrize("row", rows(HERE / "usda_sr28_composition.csv"), ids=str)
def test_composition_is_the_printed_one(row: dict[str, str]) -> None:
    part = getattr(LARDER.find(row["ingredient"]).composition, row["word"])
    within = half_digit(row["grams_per_100g"]) + 0.05  # the table adds up to 99.95 to 100.05
    assert 100.0 * part == pytest.approx(float(row["grams_per_100g"]), abs=within)


@pytest.mark.parametrize("row", rows(HERE / "usda_sr28_nutrients.csv"), ids=str)
def test_nutrients_are_the_printed_ones(row: dict[str, str]) -> None:
    found = getattr(LARDER.find(row["ingredient"]).nutrients, row["word"])
    per_100g = {"g": 1e2, "mg": 1e5, "ug": 1e8}[row["unit"]] * found
    assert per_100g == pytest.approx(float(row["per_100g"]), abs=half_digit(row["per_100g"]))


def test_trans_fat_that_is_blank_is_taken_from_salted_butter_and_says_so() -> None:
    """NUT_DATA 01001: 3.278 g of trans fat in 81.11 g of fat; 01145 leaves it blank."""
    butter = LARDER.find("butter-unsalted")
    share = (butter.nutrients.trans_fat or 0.0) / butter.composition.fat
    assert share == pytest.approx(3.278 / 81.11, rel=1e-6)
    assert any("trans fat is blank" in note for note in butter.notes)


@pytest.mark.parametrize("ndb", sorted(set(SR28) - CLOSURE_EXCEPTIONS))
def test_sr28_adds_up_to_a_hundred(ndb: str) -> None:
    whole = grams(SR28[ndb], "water", "protein", "fat", "carbohydrate", "ash", "alcohol")
    assert whole == pytest.approx(100.0, abs=0.1501)


def test_baking_soda_and_coconut_oil_are_the_known_exceptions() -> None:
    words = ("water", "protein", "fat", "carbohydrate", "ash", "alcohol")
    assert grams(SR28["18372"], *words) == pytest.approx(37.1, abs=0.05)
    assert grams(SR28["04047"], *words) == pytest.approx(99.12, abs=0.005)


def test_every_exception_to_closure_is_one() -> None:
    words = ("water", "protein", "fat", "carbohydrate", "ash", "alcohol")
    assert all(abs(grams(SR28[n], *words) - 100.0) > 0.15 for n in CLOSURE_EXCEPTIONS)


@pytest.mark.parametrize("ingredient_id", WITH_FACTORS)
def test_energy_follows_from_the_proximates(ingredient_id: str) -> None:
    """Atwater's specific factors are printed for each food; energy is printed in whole kcal."""
    row, found = SELECTED[ingredient_id], LARDER.find(ingredient_id)
    parts = found.composition
    kcal = 100.0 * (
        grams(row, "protein_factor") * parts.protein
        + grams(row, "fat_factor") * parts.fat
        + grams(row, "carbohydrate_factor") * parts.carbohydrate
        + ALCOHOL_KCAL * parts.alcohol
    )
    printed = (found.energy or 0.0) / (10.0 * KCAL)
    assert kcal == pytest.approx(printed, rel=0.012, abs=1.5)


@pytest.mark.parametrize("ingredient_id", sorted(SELECTED))
def test_parts_keep_what_sr28_prints(ingredient_id: str) -> None:
    """Closing moves nothing by more than it has to: half a gram, the exceptions apart."""
    row, parts = SELECTED[ingredient_id], LARDER.find(ingredient_id).composition
    assert 100.0 * parts.water == pytest.approx(grams(row, "water"), abs=0.25)
    assert 100.0 * parts.protein == pytest.approx(grams(row, "protein"), abs=0.25)
    assert 100.0 * parts.alcohol == pytest.approx(grams(row, "alcohol"), abs=0.1)
    if row["ndb"] not in CLOSURE_EXCEPTIONS:
        assert 100.0 * parts.fat == pytest.approx(grams(row, "fat"), abs=0.2)
        assert 100.0 * parts.ash == pytest.approx(grams(row, "ash"), abs=0.16)
        assert 100.0 * parts.carbohydrate == pytest.approx(grams(row, "carbohydrate"), abs=0.2)


@pytest.mark.parametrize("row", rows(HERE / "migoya_2008_chocolate.csv"), ids=str)
def test_couvertures_have_the_printed_sugar_and_fat(row: dict[str, str]) -> None:
    found = LARDER.find(row["ingredient"])
    sugar, fat, dry = (float(row[word]) for word in ("sugar", "fat", "dry_cocoa"))
    cocoa_sugar = 0.0203 * dry  # cocoa without its fat: 1.75 in 86.3 g, SR28 19165
    assert 100.0 * found.composition.cocoa_butter == pytest.approx(fat, abs=0.05)
    assert 100.0 * found.composition.sugars == pytest.approx(sugar + cocoa_sugar, abs=0.1)
    assert 100.0 * (found.cocoa or 0.0) == pytest.approx(fat + dry, abs=0.05)


@pytest.mark.parametrize("row", rows(HERE / "belitz_2009_starch_syrup.csv"), ids=str)
def test_starch_syrups_have_the_printed_solids(row: dict[str, str]) -> None:
    found = LARDER.find(row["ingredient"])
    solids = found.composition.dry_solids
    parts = found.composition
    assert 100.0 * parts.glucose / solids == pytest.approx(float(row["glucose"]), abs=0.5)
    assert 100.0 * parts.maltose / solids == pytest.approx(float(row["maltose"]), abs=0.5)
    assert 100.0 * parts.other_carbohydrate / solids == pytest.approx(float(row["higher"]), abs=0.5)
    assert found.dextrose_equivalent == float(row["dextrose_equivalent"])


def test_42_de_lies_between_the_40_and_60_de_rows() -> None:
    """Belitz, acid: DE 40 has 17 glucose and 13 maltose, DE 60 has 36 and 20."""
    parts = LARDER.find("glucose-syrup-42de").composition
    solids = parts.dry_solids
    assert 100.0 * parts.glucose / solids == pytest.approx(17.0 + 0.1 * (36.0 - 17.0), abs=0.01)
    assert 100.0 * parts.maltose / solids == pytest.approx(13.0 + 0.1 * (20.0 - 13.0), abs=0.01)


@pytest.mark.parametrize(
    ("dextrose_equivalent", "grams_per_mole"), [(42.0, 429.0), (60.0, 300.3), (52.63, 342.3)]
)
def test_the_dextrose_equivalent_gives_the_mean_molar_mass(
    dextrose_equivalent: float, grams_per_mole: float
) -> None:
    """M = 18016/DE; maltose, two glucoses in a chain, has DE 52.6 and 342.3 g/mol."""
    assert 1000.0 * mean_molar_mass(dextrose_equivalent) == pytest.approx(grams_per_mole, rel=1e-3)


@pytest.mark.parametrize("row", rows(HERE / "belitz_2009_acid.csv"), ids=str)
def test_fruit_has_the_printed_acid(row: dict[str, str]) -> None:
    acidity = LARDER.find(row["ingredient"]).acidity or 0.0
    assert 100.0 * acidity == pytest.approx(float(row["acid_percent"]), abs=1e-9)


def sheets() -> list[Ingredient]:
    return [i for i in LARDER if i.id.startswith("gelatine-sheet-")]


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_sheet_of_any_grade_sets_the_same(sheet: Ingredient) -> None:
    """Trade rule: grams times Bloom is 400 to 460 for all grades."""
    assert 400.0 <= 1000.0 * sheet.mass_of(1.0, "sheet") * (sheet.bloom or 0.0) <= 460.0


def test_an_egg_of_class_m_gives_the_published_parts() -> None:
    """58 g in the shell: 63 % white and 27.5 % yolk (Cotterill and Geiger 1977)."""
    white = LARDER.find("egg-white").mass_of(1.0, "medium egg (EU)")
    yolk = LARDER.find("egg-yolk").mass_of(1.0, "medium egg (EU)")
    assert 1000.0 * white == pytest.approx(0.63 * 58.0, abs=0.05)
    assert 1000.0 * yolk == pytest.approx(0.275 * 58.0, abs=0.06)


def test_a_cream_made_by_balance_is_the_cream_sr28_analysed() -> None:
    """36.08 % from the balance of 35 and 40 % lies within 0.4 g of food 01053 in every part."""
    low, high = (LARDER.find(name).composition for name in ("cream-35", "cream-40"))
    share = (36.08 - 35.0) / 5.0
    made = low * (1.0 - share) + high * share
    assert 100.0 * made.water == pytest.approx(57.81, abs=0.4)
    assert 100.0 * made.carbohydrate == pytest.approx(2.74, abs=0.5)
    assert 100.0 * made.protein == pytest.approx(2.84, abs=0.7)


def test_dark_couverture_agrees_with_the_bands_of_sr28() -> None:
    """Food 19903, 60 to 69 % cocoa, has 38.31 fat and 36.71 sugars; 64 and 66 % enclose it."""
    fats = [100.0 * LARDER.find(f"couverture-dark-{n}").composition.fat for n in (61, 64, 66)]
    assert min(fats) < 38.31 < max(fats)


def test_whipping_heavy_cream_doubles_it() -> None:
    """238 g fluid and 120 g whipped in one cup: an overrun of 98.3 %."""
    cream = LARDER.find("cream-36")
    overrun = cream.mass_of(1.0, "us cup") / cream.mass_of(1.0, "us cup, whipped") - 1.0
    assert 100.0 * overrun == pytest.approx(98.3, abs=0.1)


def test_sugars_above_carbohydrate_are_brought_into_it_and_said() -> None:
    """SR28 prints 5.05 sugars in 4.78 carbohydrate for whole milk 01211."""
    milk = LARDER.find("whole-milk")
    assert 100.0 * milk.composition.lactose == pytest.approx(4.78, abs=0.01)
    assert any("5.05" in note for note in milk.notes)


def test_blank_is_not_reported_and_not_zero() -> None:
    """SR28 prints no sugars for food 19310 and no split for 19087."""
    assert "sugars" in LARDER.find("pectin-sugar-mix").not_reported
    assert {"sucrose", "lactose"} <= LARDER.find("chocolate-white").not_reported
    assert LARDER.find("chocolate-white").composition.unsplit_sugars == pytest.approx(
        0.59, abs=1e-3
    )


def test_a_starch_syrup_is_not_all_sugar() -> None:
    """SR28 calls 76.77 of 76.79 g sugars in light corn syrup; the larder does not follow."""
    syrup = LARDER.find("corn-syrup-light")
    assert syrup.composition.sugars < 0.25
    assert any("sugars" in note for note in syrup.notes)
