"""The table of units."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from entremetry.quantities import UNITS, Kind, Measures, unit_named
from entremetry.quantities.spelling import nearest_units, unit_called
from entremetry.sources.bibliography.general import ENTRIES as GENERAL
from entremetry.sources.bibliography.quantities import ENTRIES


def test_every_unit_names_a_source_that_exists() -> None:
    known = {entry.key for entry in (*ENTRIES, *GENERAL)}
    assert {unit.source for unit in UNITS} <= known


def test_no_two_units_share_a_spelling() -> None:
    spelled = [s.casefold() for unit in UNITS for s in {unit.name, *unit.spellings}]
    assert len(spelled) == len(set(spelled))


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.name)
def test_a_unit_converts_there_and_back(unit: object) -> None:
    for one in UNITS:
        assert one.from_si(one.to_si(7.25)) == pytest.approx(7.25, rel=1e-12)


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("US cup", "us cup"),
        ("American tablespoons", "us tbsp"),
        ("australian tablespoon", "au tbsp"),
        ("imperial pint", "uk pint"),
        ("UK fl. oz.", "uk fl oz"),
        ("labelling cup", "label cup"),
        ("mL", "ml"),
        ("grammes", "g"),
        ('"', "in"),
    ],
)
def test_spellings(word: str, name: str) -> None:
    unit = unit_called(word)
    assert unit is not None and unit.name == name


@pytest.mark.parametrize(
    ("measures", "volume"),
    [(Measures.US, 14.78676478125), (Measures.METRIC, 15), (Measures.AU, 20), (Measures.UK, 15)],
)
def test_a_tablespoon_is_that_of_the_country(measures: Measures, volume: float) -> None:
    unit = unit_called("tablespoons", measures)
    assert unit is not None and unit.factor * 1e6 == pytest.approx(volume)


def test_a_measure_that_a_country_does_not_have_is_refused() -> None:
    with pytest.raises(QuantityError, match="us pint, uk pint"):
        unit_called("pint", Measures.AU)


@pytest.mark.parametrize("word", ["imperial tablespoon", "metric pint", "tonne", "dessertspoons"])
def test_a_measure_without_an_agreed_size_is_refused(word: str) -> None:
    with pytest.raises(QuantityError):
        unit_called(word)


def test_a_word_that_is_no_unit_is_none() -> None:
    assert unit_called("sheets") is None


def test_an_unknown_name_offers_the_nearest() -> None:
    with pytest.raises(QuantityError, match="us cup"):
        unit_named("us cups")
    assert "gram" in nearest_units("grm", Kind.MASS)
