"""Our units, household weights and temperatures against exact definitions and printed tables."""

from __future__ import annotations

import csv
from pathlib import Path

import pint
import pytest

from entremetry.errors import QuantityError
from entremetry.quantities import (
    MeasureWeight,
    Method,
    find_slips,
    gas_mark,
    household,
    parse_amount,
    parse_temperature,
    parse_temperature_difference,
    parse_volume,
    to_celsius,
    to_fahrenheit,
    unit_named,
)

HERE = Path(__file__).parent
EXACT = 1e-14  # a few roundings of double precision
PINT_NAMES = {
    "in": "inch",
    "ft": "foot",
    "lb": "pound",
    "oz": "ounce",
    "us gallon": "gallon",
    "us quart": "quart",
    "us pint": "pint",
    "us cup": "cup",
    "us fl oz": "fluid_ounce",
    "us tbsp": "tablespoon",
    "us tsp": "teaspoon",
    "uk gallon": "imperial_gallon",
    "uk quart": "imperial_quart",
    "uk pint": "imperial_pint",
    "uk fl oz": "imperial_fluid_ounce",
    "imperial cup": "imperial_cup",
    "kg": "kilogram",
    "g": "gram",
    "mg": "milligram",
    "l": "litre",
    "dl": "decilitre",
    "cl": "centilitre",
    "ml": "millilitre",
    "mm": "millimetre",
    "cm": "centimetre",
    "min": "minute",
    "h": "hour",
    "day": "day",
    "week": "week",
    "kg/m³": "kilogram/metre**3",
    "g/ml": "gram/millilitre",
    "g/cm²": "gram/centimetre**2",
    "%": "percent",
}
CUP, TBSP, TSP = 236.588e-6, 14.787e-6, 4.929e-6
SPOONS = {"cup": CUP, "tbsp": TBSP, "tsp": TSP}


def rows(*names: str) -> list[dict[str, str]]:
    found = []
    for name in names:
        with (HERE / name).open(newline="", encoding="utf-8") as file:
            found += list(csv.DictReader(file))
    return found


UNITS = rows(
    "nist_hb44_appendix_c_units.csv",
    "uk_weights_and_measures_1985_units.csv",
    "cfr_21_101_9_units.csv",
)


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


@pytest.mark.parametrize("row", UNITS, ids=lambda row: row["unit"])
def test_a_unit_has_its_exact_size_and_its_source(row: dict[str, str]) -> None:
    unit = unit_named(row["unit"])
    assert unit.factor == pytest.approx(float(row["exact_si"]), rel=EXACT)
    assert (unit.kind, unit.source) == (row["kind"], row["source"])


@pytest.mark.parametrize("name", PINT_NAMES)
def test_an_independent_table_of_units_agrees(name: str, registry: pint.UnitRegistry) -> None:
    other = registry(PINT_NAMES[name]).to_base_units()
    unit = unit_named(name)
    scale = 1e-3 if str(other.units).startswith("gram") else 1.0  # base unit there: the gram
    assert unit.factor == pytest.approx(float(other.magnitude) * scale, rel=1e-12)


@pytest.mark.parametrize("celsius", [-40.0, -18.0, 0.0, 60.0, 82.0, 180.0])
def test_an_independent_conversion_of_temperatures_agrees(
    celsius: float, registry: pint.UnitRegistry
) -> None:
    kelvin = parse_temperature(f"{celsius:g} °C")
    other = registry.Quantity(celsius, "degC").to("degF").magnitude
    assert to_fahrenheit(kelvin) == pytest.approx(other, abs=1e-9)


@pytest.mark.parametrize("row", rows("sizes_gas_mark_table.csv"), ids=lambda row: row["mark"])
def test_a_gas_mark_is_the_printed_temperature(row: dict[str, str]) -> None:
    kelvin = parse_temperature(f"gas mark {row['mark']}")
    assert to_fahrenheit(kelvin) == pytest.approx(float(row["fahrenheit"]), abs=1e-9)
    assert to_celsius(kelvin) == pytest.approx(float(row["celsius"]), abs=5.0)


def test_the_rule_of_gas_marks_does_not_hold_below_one() -> None:
    assert to_fahrenheit(gas_mark(0.25)) != pytest.approx(250 + 25 * 0.25)
    assert to_fahrenheit(gas_mark(0.5)) != pytest.approx(250 + 25 * 0.5)


@pytest.mark.parametrize(
    "row",
    rows("usda_sr28_household_weights.csv"),
    ids=lambda row: f"{row['food']} {row['measure']}",
)
def test_a_published_household_weight_gives_its_measure(row: dict[str, str]) -> None:
    same_food = [r for r in rows("usda_sr28_household_weights.csv") if r["food"] == row["food"]]
    others = [r for r in same_food if r["measure"] == row["measure"] or r["measure"] in SPOONS]
    weights = [
        MeasureWeight(
            measure=r["measure"], volume=SPOONS.get(r["measure"]), mass=float(r["grams"]) / 1000
        )
        for r in others
    ]
    result = household(float(row["grams"]) / 1000, weights=weights, system="us")
    assert result.text == row["text"]
    assert abs(result.relative_error) < 1e-4


def test_temperatures_that_are_worked_out_by_hand() -> None:
    assert to_celsius(parse_temperature("350 °F")) == pytest.approx(176.67, abs=0.005)
    assert to_fahrenheit(parse_temperature("180 °C")) == pytest.approx(356.0, abs=1e-9)
    assert parse_temperature_difference("25 °F") == pytest.approx(13.89, abs=0.005)


def test_volumes_that_are_worked_out_by_hand() -> None:
    assert parse_volume("1½ cups", "us") * 1e6 == pytest.approx(354.88235475, rel=EXACT)
    assert parse_volume("1 1/2 label cup") * 1e6 == pytest.approx(360.0, rel=EXACT)
    assert parse_volume("1½ cups", "metric") * 1e6 == pytest.approx(375.0, rel=EXACT)
    difference = parse_volume("1 uk pint") - parse_volume("1 us pint")
    assert difference * 1e6 == pytest.approx(95.084777, rel=1e-9)


@pytest.mark.parametrize("text", ["2 T", "2 t", "1 c", "1 C", "1 cup", "2 tbsp", "1 pint"])
def test_a_word_with_two_meanings_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_amount(text)


@pytest.mark.parametrize("text", ["1 pinch", "2 sticks"])
def test_a_kitchen_word_is_no_unit_of_physics(text: str, registry: pint.UnitRegistry) -> None:
    assert parse_amount(text).si is None
    word = text.split()[1]
    if word == "pinch":
        assert str(registry.parse_units(word)) == "picoinch"  # why the library reads no recipe


def test_gelatine_and_salt_are_weighed() -> None:
    spoon = MeasureWeight(measure="tsp", volume=TSP, mass=0.006)  # usda_sr28, NDB 02047
    result = household(0.006, weights=[spoon], system="us", weigh_only=True)
    assert (result.text, result.method) == ("weigh: 6.0 g", Method.SCALES)


@pytest.mark.parametrize("row", rows("sizes_gas_mark_table.csv"), ids=lambda row: row["mark"])
def test_the_printed_pairs_of_oven_temperatures_are_no_slips(row: dict[str, str]) -> None:
    assert find_slips(f"Bake at {row['celsius']} °C / {row['fahrenheit']} °F.") == ()
