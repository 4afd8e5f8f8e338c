"""The heat is followed from bowl to bowl."""

from __future__ import annotations

import pytest

from bench_texts import DOME, bench_of, changed
from entremetry.checks.warmth import Moment

ZERO = 273.15


def of(component: str, changes: dict[str, object] | None = None) -> tuple[Moment, ...]:
    return bench_of(changed(DOME, changes or {})).by_id[component].moments


def test_a_step_with_a_temperature_sets_it() -> None:
    found = of("insert")
    assert [round(m.after - ZERO) for m in found if m.step.step == "cook-to"] == [82]
    assert found[-1].after - ZERO == pytest.approx(-15.0)


def test_what_meets_is_mixed_by_its_heat() -> None:
    glaze = of("glaze")
    (mixing,) = [m for m in glaze if m.step.step == "mix"]
    assert mixing.before is not None
    assert ZERO + 20.0 < mixing.after < mixing.before
    assert {"couverture-white-30", "gelatine-powder-200"} <= set(mixing.entering)


def test_the_fold_lands_between_base_and_cream() -> None:
    (fold,) = [m for m in of("mousse") if m.step.step == "fold"]
    assert fold.before == pytest.approx(43.0 + ZERO)
    assert 18.0 < fold.after - ZERO < 32.0


def test_what_is_baked_comes_back_to_the_room() -> None:
    assert of("base")[-1].after - ZERO == pytest.approx(20.0)
