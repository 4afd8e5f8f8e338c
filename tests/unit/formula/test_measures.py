"""The measures a formula is balanced by."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.formula import Mix, metrics
from entremetry.formula.measures import MEASURES, USUAL, measure_named
from entremetry.formula.state import constituents_of, state_of
from unit.formula.formulas import DARK_70, MOUSSE, line, state


def test_shares_agree_with_the_metrics_of_the_mix() -> None:
    whole = state(MOUSSE)
    told = metrics(Mix(constituents=constituents_of(whole)))
    for name in ("water", "fat", "milk_fat", "cocoa_butter", "dry_solids", "sugars", "protein"):
        assert MEASURES[name].value(whole) == pytest.approx(getattr(told, name)), name
    assert MEASURES["brix"].value(whole) == pytest.approx(told.brix / 100.0)


def test_gelatine_is_counted_on_the_water() -> None:
    whole = state(MOUSSE)
    assert MEASURES["gelatine"].value(whole) == pytest.approx(0.008 / constituents_of(whole).water)


def test_a_measure_is_found_by_name_key_and_words() -> None:
    assert measure_named("freezing-point") is measure_named("freezing_point_c")
    assert measure_named("Dry solids") is MEASURES["dry_solids"]
    with pytest.raises(UnknownName, match="sweetness"):
        measure_named("sweetnes")


def test_printed_and_read_are_each_other_back() -> None:
    for measure in MEASURES.values():
        assert measure.read(measure.printed(0.3)) == pytest.approx(0.3)


def test_what_is_dry_has_neither_freezing_point_nor_ice() -> None:
    dry = state([line(DARK_70, 100.0)]) * 1.0
    dry[0] = 0.0
    assert MEASURES["freezing_point"].value(dry) is None
    assert MEASURES["ice"].value(dry) is None
    assert MEASURES["gelatine"].value(dry) is None


def test_what_is_usually_kept_are_measures() -> None:
    assert set(USUAL) <= set(MEASURES)


def test_a_state_keeps_its_constituents() -> None:
    parts = MOUSSE[0].adds
    assert state_of(constituents_of(state(MOUSSE[:1])))[1] == pytest.approx(parts[1] * 0.008)
