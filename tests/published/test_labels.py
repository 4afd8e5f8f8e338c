"""Labels against the rules as printed, and foods of the larder against their own table."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from entremetry.labels import Rules, eu_rounding, us_rounding
from entremetry.labels.allergen_statement import allergens_of, contains_statement
from entremetry.labels.content import Content
from entremetry.labels.emphasis import spans
from entremetry.labels.energy import Fuel, eu_kilocalories, eu_kilojoules
from entremetry.labels.english import row_name
from entremetry.labels.keeping_advice import days_left
from entremetry.labels.language_words import allergen_word
from entremetry.labels.panel import eu_rows, us_rows
from entremetry.larder import EU_CODES
from entremetry.store.larder_file import open_larder
from entremetry.words import speaking

HERE = Path(__file__).parent
LARDER = open_larder()


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.mark.parametrize("row", rows("cfr_21_101_9_rounding.csv"), ids=str)
def test_american_rounding(row: dict[str, str]) -> None:
    """21 CFR 101.9(c), tabulated in fda_labeling_guide_2009, appendix H."""
    assert str(getattr(us_rounding, row["nutrient"])(float(row["value"]))) == row["printed"]


@pytest.mark.parametrize("row", rows("eu_guidance_2012_rounding.csv"), ids=str)
def test_european_rounding(row: dict[str, str]) -> None:
    assert str(getattr(eu_rounding, row["nutrient"])(float(row["value"]))) == row["printed"]


@pytest.mark.parametrize("row", rows("eu_1169_2011_energy.csv"), ids=str)
def test_european_energy(row: dict[str, str]) -> None:
    words = ("fat", "carbohydrate", "polyols", "erythritol", "protein", "fibre", "alcohol")
    fuel = Fuel(**{word: float(row[word]) / 1e3 for word in words})
    assert eu_kilojoules(fuel) == pytest.approx(float(row["kilojoules"]), abs=0.05)
    assert eu_kilocalories(fuel) == pytest.approx(float(row["kilocalories"]), abs=0.05)


def test_energy_is_declared_in_kilojoules_and_in_kilocalories() -> None:
    fuel = Fuel(fat=0.0123, carbohydrate=0.0284, protein=0.0039, fibre=0.0012, alcohol=0.0005)
    kilojoules = eu_rounding.energy(eu_kilojoules(fuel), "kJ")
    kilocalories = eu_rounding.energy(eu_kilocalories(fuel), "kcal")
    assert f"{kilojoules} / {kilocalories}" == "1028 kJ / 246 kcal"


FRENCH = rows("eu_1169_2011_french.csv")


@pytest.mark.parametrize("row", [r for r in FRENCH if r["kind"] == "value"], ids=str)
def test_the_values_have_the_words_of_the_french_version(row: dict[str, str]) -> None:
    """Règlement (UE) no 1169/2011, annexe I in the consolidated version of 2021, and XV."""
    with speaking("fr"):
        assert row_name(row["key"], Rules.EU) == row["printed"]


@pytest.mark.parametrize("row", [r for r in FRENCH if r["kind"] == "allergen"], ids=str)
def test_the_allergens_have_the_words_of_the_french_version(row: dict[str, str]) -> None:
    """Annexe II, which has most of them in the plural; one is named in the singular here."""
    with speaking("fr"):
        assert allergen_word(row["key"]) == row["printed"]
        assert [span.strong for span in spans(row["printed"], [row["key"]])] == [True]


def test_every_allergen_of_the_european_list_has_its_french_word() -> None:
    assert {row["key"] for row in FRENCH if row["kind"] == "allergen"} == EU_CODES


MIXED = [
    LARDER.find(name)
    for name in (
        "plain-flour",
        "cream-35",
        "almond-ground",
        "coconut-desiccated",
        "fish-gelatine-200",
        "soya-lecithin",
        "pine-nut",
    )
]


def test_allergens_of_europe_name_the_cereal_and_the_nut() -> None:
    """eu_1169_2011, annex II: coconut and pine nut are not on it; fish gelatine in a mousse is."""
    found = allergens_of(MIXED, Rules.EU)
    assert [entry.word for entry in found] == ["fish", "wheat", "milk", "almond", "soya"]
    assert next(entry for entry in found if entry.word == "almond").group == "nuts"


def test_allergens_of_america_have_pine_nut_and_no_coconut() -> None:
    """fda_allergens_2025: coconut is off the tree nuts since January 2025."""
    found = allergens_of(MIXED, Rules.US)
    assert contains_statement(found) == (
        "Contains: fish, milk, soy, wheat, tree nuts (almond, pine nut)."
    )


@pytest.mark.parametrize(("frozen_after", "left"), [(2, 5), (1, 6), (7, 0), (9, 0)])
def test_freezing_stops_the_count_of_days(frozen_after: int, left: int) -> None:
    """fda_food_code 3-501.17: seven days at 5 °C, the day of making the first; from_memory."""
    assert days_left(frozen_after) == left


def alone(name: str) -> Content:
    """Hundred grams of one food of the larder."""
    food = LARDER.find(name)
    return Content(
        id=name,
        name=food.name,
        mass=0.1,
        constituents=food.composition * 0.1,
        held={name: 0.1},
        ingredients={name: food},
    )


SR28 = {row["ndb"]: row for row in rows("../../tools/larder/sr28.csv")}
SELECTION = rows("../../tools/larder/selection.csv")
PLAIN = (
    "butter-unsalted",
    "egg-yolk",
    "egg-whole",
    "cream-36",
    "hazelnut-whole",
    "almond-blanched",
    "pistachio",
    "cocoa-butter",
    "granulated-sugar",
    "plain-flour",
    "raspberry",
    "honey",
    "coconut-fresh",
)


@pytest.mark.parametrize("name", PLAIN)
def test_a_dessert_of_one_food_has_the_label_of_that_food(name: str) -> None:
    """Values of NUT_DATA; parts are closed to 100 g, so within a quarter of a gram."""
    printed = SR28[next(row["ndb"] for row in SELECTION if row["id"] == name)]
    found = {row.key: row.per_100g for row in us_rows(alone(name), ())}
    for key, column in (
        ("fat_g", "fat"),
        ("saturated_fat_g", "saturates"),
        ("carbohydrate_g", "carbohydrate"),
        ("fibre_g", "fibre"),
        ("protein_g", "protein"),
        ("sodium_mg", "sodium_mg"),
        ("cholesterol_mg", "cholesterol_mg"),
        ("calcium_mg", "calcium_mg"),
        ("iron_mg", "iron_mg"),
        ("potassium_mg", "potassium_mg"),
    ):
        assert found[key] == pytest.approx(float(printed[column]), rel=1e-6, abs=0.25), key


@pytest.mark.parametrize("name", PLAIN)
def test_calories_by_general_factors_are_near_those_of_the_table(name: str) -> None:
    """SR28 uses Atwater's specific factors: raspberries, mostly fibre and acid, differ by 12 %."""
    printed = SR28[next(row["ndb"] for row in SELECTION if row["id"] == name)]
    kcal = next(row.per_100g for row in us_rows(alone(name), ()) if row.key == "energy_kcal")
    assert kcal == pytest.approx(float(printed["energy_kcal"]), rel=0.13)


def test_european_carbohydrate_is_without_fibre_and_salt_is_all_sodium() -> None:
    """eu_1169_2011, annex I; raspberries: NUT_DATA 09302, 11.94 carbohydrate of which 6.5 fibre."""
    found = {row.key: row.per_100g for row in eu_rows(alone("raspberry"), ())}
    acids = 100.0 * LARDER.find("raspberry").composition.organic_acids
    assert found["carbohydrate_g"] == pytest.approx(11.94 - 6.5 - acids, abs=0.1)
    butter = {row.key: row.per_100g for row in eu_rows(alone("butter-salted"), ())}
    assert butter["salt_g"] == pytest.approx(0.643 * 2.5, rel=1e-9)  # NUT_DATA 01001, 307
