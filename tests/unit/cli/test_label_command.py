"""`label` as scripts and cooks read it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from command_line import entremetry, numbers
from entremetry.store.demo import demo_texts

UNITS = ("_g", "_mg", "_ug", "_kj", "_kcal", "_percent", "_min", "_kwh", "_eur")
COUNTS = frozenset({"pieces", "pieces_made", "per_container", "level", "packs"})
PRICES = """entremetry_prices: 1
currency: EUR
labour_per_hour: 25
margin: 60 %
prices:
  cream-35: {pack: 1 l, price: 5.40}
"""


@pytest.fixture
def dome(tmp_path: Path) -> Path:
    path = tmp_path / "dome.yaml"
    path.write_text(demo_texts()["blackcurrant-vanilla-dome"], encoding="utf-8")
    return path


@pytest.fixture
def prices(tmp_path: Path) -> Path:
    path = tmp_path / "prices.yaml"
    path.write_text(PRICES, encoding="utf-8")
    return path


def test_the_keys_of_the_contract(dome: Path) -> None:
    answer = entremetry("label", dome, "--json")
    assert (answer.status, answer.err) == (0, "")
    told = json.loads(answer.out)
    assert {"per_100g", "per_piece", "allergens", "ingredient_list", "cost"} <= set(told)
    assert list(told["per_100g"]) == [
        "energy_kj", "energy_kcal", "fat_g", "saturates_g", "carbohydrate_g", "sugars_g",
        "fibre_g", "protein_g", "salt_g",
    ]  # fmt: skip
    ratio = told["piece_mass_g"] / 100.0
    for key, value in told["per_100g"].items():
        assert told["per_piece"][key] == pytest.approx(value * ratio, rel=1e-4)
    assert {entry["name"] for entry in told["allergens"]} == {
        "milk", "egg", "wheat", "hazelnut", "soya",
    }  # fmt: skip
    assert told["ingredient_list"]["text"].startswith("Ingredients: cream (milk), ")
    assert told["cost"] is None


def test_a_label_is_drafted_in_another_language(dome: Path) -> None:
    told = json.loads(entremetry("label", dome, "--language", "fr", "--json").out)
    assert told["ingredient_list"]["text"].startswith("Ingrédients : crème (lait), ")
    assert told["declaration"][0]["name"] == "Énergie"
    assert told["name"] == "Dôme cassis et vanille"
    assert entremetry("label", dome, "--language", "en").out == entremetry("label", dome).out


def test_a_language_that_is_not_there_is_refused_with_those_that_are(dome: Path) -> None:
    answer = entremetry("label", dome, "--language", "tlh")
    assert (answer.status, answer.out) == (2, "")
    assert "'tlh'" in answer.err and "en, fr" in answer.err


def test_an_american_label_is_english_in_any_language(dome: Path) -> None:
    american = ("label", dome, "--rules", "us")
    assert entremetry(*american, "--language", "fr").out == entremetry(*american).out


def test_american_rules_have_their_own_rows_and_statement(dome: Path) -> None:
    told = json.loads(entremetry("label", dome, "--rules", "us", "--json").out)
    assert {"trans_fat_g", "added_sugars_g", "vitamin_d_ug"} <= set(told["per_100g"])
    assert told["contains"] == "Contains: egg, milk, soy, wheat, tree nuts (hazelnut)."
    assert told["net_quantity"].startswith("Net Wt ")
    by_key = {row["key"]: row for row in told["declaration"]}
    assert by_key["fat_g"]["daily_value_percent"] > 0
    assert all(entry["quantity_percent"] is None for entry in told["ingredient_list"]["entries"])


@pytest.mark.parametrize("rules", ["eu", "us"])
def test_every_number_says_its_unit_last_or_is_a_count(
    dome: Path, prices: Path, rules: str
) -> None:
    answer = entremetry("label", dome, "--rules", rules, "--prices", prices, "--json")
    for key in numbers(json.loads(answer.out)):
        assert key in COUNTS or key.endswith(UNITS), key


def test_a_blank_is_told_with_the_most_there_can_be(tmp_path: Path) -> None:
    path = tmp_path / "glass.yaml"
    path.write_text(demo_texts()["mango-coconut-lime-glass"], encoding="utf-8")
    told = json.loads(entremetry("label", path, "--json").out)
    assert told["highest_per_100g"]["salt_g"] > told["per_100g"]["salt_g"]
    (row,) = [row for row in told["declaration"] if row["key"] == "salt_g"]
    assert [each["id"] for each in row["not_reported"]] == ["pectin-nh"]
    assert "Salt: Pectin NH" in entremetry("label", path).out


@pytest.mark.parametrize("name", sorted(demo_texts()))
@pytest.mark.parametrize("rules", ["eu", "us"])
def test_every_demo_dessert_has_a_label_with_its_caution(
    name: str, rules: str, tmp_path: Path
) -> None:
    path = tmp_path / "demo.yaml"
    path.write_text(demo_texts()[name], encoding="utf-8")
    answer = entremetry("label", path, "--rules", rules)
    assert (answer.status, answer.err) == (0, "")
    assert "the law where you sell, your packets and a competent person decide" in answer.out
    assert "Ingredients: " in answer.out
    assert "complian" not in answer.out.casefold()


def test_allergens_stand_in_capitals_in_the_european_list(dome: Path) -> None:
    text = entremetry("label", dome).out
    assert "cream (MILK), blackcurrant purée 22 % (blackcurrants, sugar)" in text
    assert "vanilla pod infusion" in text


def test_a_whole_for_eight_is_declared_by_the_slice(tmp_path: Path) -> None:
    path = tmp_path / "ring.yaml"
    path.write_text(demo_texts()["coffee-praline-ring"], encoding="utf-8")
    told = json.loads(entremetry("label", path, "--json").out)
    assert told["serving"]["household"] == "1/8 piece"
    for key, value in told["per_serving"].items():
        assert told["per_piece"][key] == pytest.approx(8 * value, rel=1e-4)


def test_the_cost_says_what_has_no_price(dome: Path, prices: Path) -> None:
    told = json.loads(entremetry("label", dome, "--prices", prices, "--json").out)["cost"]
    assert told["currency"] == "EUR" and told["at_least"]
    assert "Caster sugar" in told["missing_prices"]
    assert told["per_piece_eur"] == pytest.approx(told["total_eur"] / 6, abs=1e-3)
    text = entremetry("label", dome, "--prices", prices).out
    assert "at least" in text and "No price: " in text and "What drives it: Hands" in text


def test_more_pieces_cost_less_each(dome: Path, prices: Path) -> None:
    few, many = (
        json.loads(entremetry("label", dome, "--pieces", n, "--prices", prices, "--json").out)
        for n in (6, 24)
    )
    assert many["cost"]["per_piece_eur"] < few["cost"]["per_piece_eur"]
    assert many["per_piece"] == few["per_piece"]


def test_another_mould_makes_another_piece(dome: Path) -> None:
    usual = json.loads(entremetry("label", dome, "--json").out)
    other = json.loads(entremetry("label", dome, "--mould", "cap-80", "--json").out)
    assert other["piece_mass_g"] != usual["piece_mass_g"]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--rules", "uk"], "found rules 'uk'; accepted: eu or us"),
        (["--pieces", "0"], "1 to 10000 pieces"),
        (["--prices", "gone.yaml"], "gone.yaml"),
        (["--mould", "hemisfere-70"], "hemisphere-70"),
    ],
)
def test_what_cannot_be_is_refused(dome: Path, arguments: list[str], says: str) -> None:
    answer = entremetry("label", dome, *arguments)
    assert (answer.status, answer.out) == (2, "")
    assert says in answer.err


def test_a_dessert_document_is_no_price_document(dome: Path) -> None:
    answer = entremetry("label", dome, "--prices", dome)
    assert answer.status == 2
    assert "entremetry_prices: 1" in answer.err
