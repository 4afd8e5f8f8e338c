"""Nothing is lost or made from nothing, whatever the dessert."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from properties.strategies_dessert import case_of, single, texts

FEW = settings(max_examples=15)


@FEW
@given(texts)
def test_volumes_of_the_parts_sum_to_the_cavity(text: str) -> None:
    case = case_of(text)
    placed = case.reckoning.placed
    parts = sum(part.volume for part in placed.filled)
    parts += sum(part.solid.volume for part in placed.inclusions)
    assert parts == pytest.approx(placed.cavity.volume, rel=1e-6)


@FEW
@given(texts)
def test_mass_in_is_mass_out_and_losses(text: str) -> None:
    case = case_of(text)
    for component in case.sheet.components:
        gained = sum(change.mass for change in component.changes)
        lines = sum(line.mass for line in component.lines)
        assert lines == pytest.approx(component.mass.value, rel=1e-9)
        weighed = component.mass.value
        assert weighed + gained == pytest.approx(component.ready_mass, rel=1e-9)
        lost = component.loss_fraction * weighed
        assert weighed - lost == pytest.approx(component.ready_mass, rel=1e-9)


@FEW
@given(single)
def test_what_is_ready_is_what_all_pieces_and_the_others_take(text: str) -> None:
    case = case_of(text)
    sheet = case.sheet
    into_others: dict[str, float] = {}
    for component in sheet.components:
        for line in component.lines:
            into_others[line.id] = into_others.get(line.id, 0.0) + line.mass
    for component in sheet.components:
        if component.kind != "base":  # dough is rolled beyond the cut-outs
            taken = component.per_piece.value * sheet.pieces + into_others.get(component.id, 0.0)
            assert component.ready_mass == pytest.approx(taken, rel=1e-9)


@FEW
@given(texts)
def test_scaling_commutes(text: str) -> None:
    case = case_of(text)
    number = case.sheet.mould.pieces_per_cavity * case.sheet.mould.cavities
    once, twice = case_of(text, number).sheet, case_of(text, 2 * number).sheet
    rolled = {cut.component for cut in once.cut_outs}
    for one, two in zip(once.components, twice.components, strict=True):
        if one.name not in rolled:
            assert two.mass.value == pytest.approx(2.0 * one.mass.value, rel=1e-9)
            for a, b in zip(one.lines, two.lines, strict=True):
                assert b.mass == pytest.approx(2.0 * a.mass, rel=1e-9)
        assert two.per_piece.value == pytest.approx(one.per_piece.value, rel=1e-9)


@FEW
@given(texts)
def test_filling_a_cavity_takes_what_its_parts_weigh(text: str) -> None:
    case = case_of(text)
    reckoning = case.reckoning
    filled = reckoning.placed.filled
    soft = {part.component for part in filled}
    poured = sum(s.mass or 0.0 for s in case.sheet.fill_steps if s.component in soft)
    parts = sum(part.volume * reckoning.density[part.component] for part in filled)
    assert poured == pytest.approx(parts, rel=1e-4)


@FEW
@given(texts)
def test_more_pieces_never_need_less(text: str) -> None:
    case = case_of(text)
    more = case_of(text, case.sheet.pieces + 1).sheet
    for now, then in zip(case.sheet.components, more.components, strict=True):
        assert then.mass.value >= now.mass.value * (1.0 - 1e-12)
