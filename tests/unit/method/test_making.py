"""A formula through its method: masses by hand, and refusals that say where."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.errors import BalanceError, DocumentError
from entremetry.formula import brix, density
from entremetry.larder.constituents import Constituents
from entremetry.method import AnyStep, Made, Portion, Step, make

STEPS: TypeAdapter[tuple[AnyStep, ...]] = TypeAdapter(tuple[Step, ...])
CREAM = Constituents(water=0.6, milk_fat=0.35, protein=0.02, lactose=0.03)
SYRUP = Constituents(water=0.5, sucrose=0.5)
GELATINE = Constituents(water=0.13, protein=0.87)
POD = Constituents(water=0.3, fibre=0.7)


def portion(parts: Constituents, grams: float, *tags: str) -> Portion:
    return Portion(name="x", constituents=parts * (grams / 1000.0), tags=frozenset(tags))


LINES = {
    "cream": portion(CREAM, 150),
    "pod": portion(POD, 3),
    "gelatine": portion(GELATINE, 4, "gelling", "animal"),
    "whipped": portion(CREAM, 60),
}


def made_of(
    lines: dict[str, Portion], *steps: dict[str, Any], kind: str = "", density: float | None = None
) -> Made:
    written = STEPS.validate_python(steps)
    return make(lines, written, component_name="Heart", kind=kind, density=density)


def changes(made: Made) -> list[tuple[str, float]]:
    return [(change.reason, round(change.mass * 1000.0, 6)) for change in made.changes]


def test_an_insert_by_hand() -> None:
    made = made_of(
        LINES,
        {"step": "soak", "what": ["gelatine"], "water": "20 g"},
        {"step": "cook-to", "what": ["cream", "pod"], "temperature": "82 °C", "evaporates": "5 g"},
        {"step": "strain", "removes": ["pod"], "holds_back": "2 g"},
        {"step": "whip", "what": ["whipped"], "bowl": "foam", "overrun": "90 %"},
        {"step": "fold", "what": ["foam"]},
        {"step": "pour", "left_behind": "4 %"},
        kind="insert",
    )
    assert made.mass_in == pytest.approx(0.237)
    assert changes(made) == [
        ("water taken up in soaking", 20.0),
        ("water boiled off", -5.0),
        ("x taken out", -3.0),
        ("held back by the sieve", -2.0),
        ("left in pan, bowl or bag", -9.08),
    ]
    assert made.mix.mass == pytest.approx(0.21792)
    assert made.loss == pytest.approx(0.01908)
    assert made.soaking_water == (("gelatine", pytest.approx(0.02)),)
    assert not any("bowl and bag" in text for text in made.assumptions)


def test_without_a_method_the_lines_are_mixed() -> None:
    made = made_of({"a": portion(CREAM, 100), "b": portion(SYRUP, 50)})
    assert made.mix.mass == pytest.approx(0.15)
    assert made.changes == ()


@pytest.mark.parametrize("kind", ["mousse", "insert", "glaze", "soak"])
def test_what_sticks_loses_five_per_cent_unless_stated(kind: str) -> None:
    made = made_of({"a": portion(CREAM, 200)}, {"step": "mix"}, kind=kind)
    assert changes(made) == [("left in bowl and bag", -10.0)]
    assert made.changes[0].source == "common_practice"
    assert "5 % stays in bowl and bag" in made.assumptions[0]


@pytest.mark.parametrize("kind", ["base", "crumble", "garnish", ""])
def test_what_does_not_stick_loses_nothing_unless_stated(kind: str) -> None:
    assert made_of({"a": portion(CREAM, 200)}, {"step": "mix"}, kind=kind).loss == 0.0


def test_zero_left_behind_is_a_statement() -> None:
    step = {"step": "pour", "left_behind": "0 %"}
    assert made_of({"a": portion(CREAM, 200)}, step, kind="mousse").loss == 0.0


def test_gelatine_without_water_takes_up_five_times_its_mass() -> None:
    made = made_of(LINES, {"step": "soak", "what": ["gelatine"]}, {"step": "mix"})
    assert made.soaking_water == (("gelatine", pytest.approx(0.02)),)
    assert made.changes[0].source == "common_practice"
    assert "added to the mass" in made.assumptions[0]


def test_anything_else_soaked_without_water_takes_up_none() -> None:
    made = made_of({"fruit": portion(SYRUP, 50)}, {"step": "soak", "what": ["fruit"]})
    assert made.mass_in == pytest.approx(0.05)
    assert "no soaking water is stated" in made.assumptions[0]


def test_a_line_soaked_in_another_needs_no_water() -> None:
    lines = {"fruit": portion(SYRUP, 50), "milk": portion(CREAM, 100)}
    made = made_of(lines, {"step": "soak", "what": ["fruit", "milk"]})
    assert made.assumptions == ()
    assert made.mass_in == pytest.approx(0.15)


def test_a_fault_names_the_component_by_its_id() -> None:
    steps = STEPS.validate_python([{"step": "mix", "what": ["craem"]}])
    with pytest.raises(DocumentError, match=r"components\.heart-1\.method\.0\.what"):
        make(LINES, steps, component_name="Heart", component_id="heart-1")


def test_water_is_shared_by_mass_between_what_soaks_together() -> None:
    lines = {"a": portion(GELATINE, 4), "b": portion(GELATINE, 12)}
    made = made_of(lines, {"step": "soak", "what": ["a", "b"], "water": "80 g"})
    assert made.soaking_water == (("a", pytest.approx(0.02)), ("b", pytest.approx(0.06)))


def test_a_pod_strained_out_late_has_lost_its_share_on_the_way() -> None:
    made = made_of(
        {"milk": portion(CREAM, 97), "pod": portion(POD, 3)},
        {"step": "mix", "left_behind": "50 %"},
        {"step": "strain", "removes": ["pod"]},
    )
    assert changes(made)[1] == ("x taken out", -1.5)
    assert made.mix.constituents.fibre == pytest.approx(0.0, abs=1e-15)


def test_reductions_end_where_they_are_told() -> None:
    lines = {"syrup": portion(SYRUP, 400)}
    assert made_of(lines, {"step": "simmer", "to_mass": "250 g"}).mix.mass == pytest.approx(0.25)
    assert brix(made_of(lines, {"step": "simmer", "to_brix": 65}).mix) == pytest.approx(65.0)
    share = made_of(lines, {"step": "melt", "evaporates": "10 %"})
    assert share.mix.mass == pytest.approx(0.36)


def test_a_refusal_names_component_step_and_amounts() -> None:
    with pytest.raises(BalanceError, match=r"Heart, step 1, simmer: cannot reduce to 500 g"):
        made_of({"syrup": portion(SYRUP, 400)}, {"step": "simmer", "to_mass": "500 g"})
    with pytest.raises(BalanceError, match=r"Heart, thicken: cannot evaporate 250 g"):
        made_of(
            {"syrup": portion(SYRUP, 400)},
            {"step": "simmer", "id": "thicken", "evaporates": "250 g"},
        )


def test_more_held_back_than_there_is_is_refused() -> None:
    with pytest.raises(BalanceError, match="cannot leave 500 g behind"):
        made_of({"syrup": portion(SYRUP, 400)}, {"step": "strain", "holds_back": "500 g"})


def test_nothing_left_is_refused() -> None:
    with pytest.raises(BalanceError, match="Heart: nothing is left"):
        made_of({"syrup": portion(SYRUP, 400)}, {"step": "pour", "left_behind": "100 %"})
    with pytest.raises(BalanceError, match="Heart: nothing is left"):
        make({}, (), component_name="Heart")


def test_steam_that_is_not_stated_is_mentioned() -> None:
    lines = {"syrup": portion(SYRUP, 400)}
    for step, words in (
        ({"step": "simmer"}, "no evaporation is stated"),
        ({"step": "cook-to", "temperature": "85 °C"}, "no evaporation is stated"),
        ({"step": "cook-to", "temperature": "118 °C"}, "at 118 °C a syrup has lost most"),
        ({"step": "bake", "at": "170 °C"}, "no bake loss is stated"),
    ):
        assert words in made_of(lines, step).assumptions[0]
    assert made_of(lines, {"step": "cook-to", "temperature": "45 °C"}).assumptions == ()


def test_folding_keeps_nine_tenths_of_all_air_unless_stated() -> None:
    lines = {"fruit": portion(SYRUP, 100), "cream": portion(CREAM, 100)}
    whip = {"step": "whip", "what": ["cream"], "bowl": "foam", "overrun": "100 %"}
    air = made_of({"cream": lines["cream"]}, {"step": "whip", "overrun": "100 %"}).mix.gas
    usual = made_of(lines, whip, {"step": "fold", "what": ["foam"]})
    stated = made_of(lines, whip, {"step": "fold", "what": ["foam"], "kept": "70 %"})
    assert usual.mix.gas == pytest.approx(0.9 * air)
    assert stated.mix.gas == pytest.approx(0.7 * air)
    assert usual.assumptions == ("folding keeps 90 % of the air (0.85 to 0.95, from memory)",)
    assert stated.assumptions == ()


def test_cream_whips_as_the_cup_says_unless_stated() -> None:
    made = made_of({"cream": portion(CREAM, 100)}, {"step": "whip"})
    plain = made_of({"cream": portion(CREAM, 100)}, {"step": "mix"})
    assert density(made.mix) == pytest.approx(density(plain.mix) * 120.0 / 238.0)
    assert "usda_sr28" in made.density.sources


def test_air_that_nobody_stated_is_not_made_up() -> None:
    made = made_of({"syrup": portion(SYRUP, 100)}, {"step": "whip"})
    assert made.mix.gas == 0.0
    assert "no air is counted" in made.assumptions[0]


def test_whipping_to_a_density_reaches_it() -> None:
    made = made_of({"cream": portion(CREAM, 100)}, {"step": "whip", "density": "0.5 g/ml"})
    assert made.density.value == pytest.approx(500.0)


def test_a_line_that_brings_air_keeps_it() -> None:
    foam = Portion(name="foam", constituents=CREAM * 0.1, gas=1e-4)
    assert made_of({"foam": foam}, {"step": "pour"}).mix.gas == pytest.approx(1e-4)


def test_trimming_is_booked() -> None:
    made = made_of({"a": portion(SYRUP, 200)}, {"step": "cut", "trim": "10 %"})
    assert changes(made) == [("trimmed off", -20.0)]


def test_how_sure_a_density_is_depends_on_how_it_is_known() -> None:
    lines = {"cream": portion(CREAM, 100)}
    assert made_of(lines, {"step": "mix"}).density.relative_error == 0.02
    assert made_of(lines, {"step": "whip", "overrun": "90 %"}).density.relative_error == 0.08
    assert made_of(lines, {"step": "mix"}, density=620.0).density.relative_error == 0.03
    assert made_of(lines, {"step": "bake", "at": "170 °C"}).density.relative_error == 0.5


def test_the_authors_density_fills_the_mix_with_the_gas_it_implies() -> None:
    made = made_of({"cream": portion(CREAM, 100)}, {"step": "mix"}, density=620.0)
    assert density(made.mix) == pytest.approx(620.0)
    assert "author" in made.density.because


def test_a_dough_has_its_density_before_the_oven() -> None:
    dough = {"dough": portion(Constituents(water=0.2, starch=0.5, milk_fat=0.3), 100)}
    made = made_of(dough, {"step": "bake", "at": "170 °C", "loss": "10 %"}, density=600.0)
    plain = made_of(dough, {"step": "mix"})
    assert made.raw_density.value == pytest.approx(plain.density.value)
    assert made.density.value == 600.0
    assert made.mix.mass == pytest.approx(0.09)


def test_baked_without_a_measurement_it_keeps_its_volume_and_says_so() -> None:
    dough = {"dough": portion(Constituents(water=0.2, starch=0.5, milk_fat=0.3), 100)}
    made = made_of(dough, {"step": "bake", "at": "170 °C", "loss": "10 %"})
    assert made.density.value == pytest.approx(0.9 * made.raw_density.value)
    assert any("weigh a piece" in text for text in made.assumptions)


def test_what_was_not_baked_has_one_density() -> None:
    made = made_of({"cream": portion(CREAM, 100)}, {"step": "mix"})
    assert made.raw_density == made.density
    assert "water 60 %" in made.density.because
