"""What goes into a formula comes out of it, is lost by name, or is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from entremetry.errors import BalanceError
from entremetry.formula import (
    Mix,
    bake,
    brix,
    density,
    evaporate,
    fold,
    leave_behind,
    liquid_density,
    mixed,
    overrun,
    overrun_of,
    reduce_to_brix,
    reduce_to_mass,
    scaled,
    take_up,
    trim,
    whip,
)
from entremetry.larder.constituents import NAMES
from properties.strategies_formula import factors, mixes, shares

DRY = tuple(name for name in NAMES if name != "water")


def same(first: Mix, second: Mix) -> bool:
    """Whether two mixes agree in every constituent and in gas."""
    pairs = [(getattr(first.constituents, n), getattr(second.constituents, n)) for n in NAMES]
    pairs.append((first.gas, second.gas))
    return all(one == pytest.approx(other, rel=1e-9, abs=1e-12) for one, other in pairs)


@given(mixes(), mixes(), mixes())
def test_mixing_is_associative_and_commutative(one: Mix, two: Mix, three: Mix) -> None:
    assert same(mixed(mixed(one, two), three), mixed(one, mixed(two, three)))
    assert same(mixed(one, two), mixed(two, one))


@given(mixes(), mixes())
def test_mixing_keeps_every_gram(one: Mix, two: Mix) -> None:
    assert mixed(one, two).mass == pytest.approx(one.mass + two.mass, rel=1e-12)


@given(mixes(), shares)
def test_evaporation_takes_water_only_and_just_as_much(mix: Mix, share: float) -> None:
    water = share * mix.constituents.water
    after = evaporate(mix, water)
    assert after.mass + water == pytest.approx(mix.mass, rel=1e-9)
    assert all(getattr(after.constituents, n) == getattr(mix.constituents, n) for n in DRY)


@given(mixes(), shares)
def test_baking_takes_its_share_or_is_refused(mix: Mix, loss: float) -> None:
    if loss * mix.mass > mix.constituents.water + 1e-9:
        with pytest.raises(BalanceError):
            bake(mix, loss)
    elif loss * mix.mass <= mix.constituents.water:
        assert bake(mix, loss).mass == pytest.approx(mix.mass * (1.0 - loss), rel=1e-9)


@given(mixes(), st.floats(min_value=0.0, max_value=1.0))
def test_a_reduction_ends_at_the_mass_asked_for(mix: Mix, place: float) -> None:
    target = mix.mass - place * mix.constituents.water
    assert reduce_to_mass(mix, target).mass == pytest.approx(target, rel=1e-9)


@given(mixes(), st.floats(min_value=0.5, max_value=88.0))
def test_a_reduction_ends_at_the_brix_asked_for_or_is_refused(mix: Mix, target: float) -> None:
    try:
        after = reduce_to_brix(mix, target)
    except BalanceError:
        alcohol = mix.constituents.alcohol
        present = brix(mix)
        assert present == 0.0 or target < present or alcohol > 0.0
    else:
        assert brix(after) == pytest.approx(target, rel=1e-6)
        assert after.constituents.water <= mix.constituents.water + 1e-12


@given(mixes(), shares)
def test_what_is_left_behind_and_what_is_kept_make_the_whole(mix: Mix, share: float) -> None:
    lost = share * mix.mass
    after = leave_behind(mix, lost)
    assert after.mass + lost == pytest.approx(mix.mass, rel=1e-9)
    assert same(after, trim(mix, share))
    assert same(after, scaled(mix, 1.0 - share))


@given(mixes(), shares)
def test_water_taken_up_can_be_driven_off_again(mix: Mix, water: float) -> None:
    assert same(evaporate(take_up(mix, water), water), mix)


@given(mixes(), st.floats(min_value=0.0, max_value=8.0))
def test_whipping_keeps_the_mass_and_reaches_the_overrun(mix: Mix, wanted: float) -> None:
    foam = whip(mix, wanted)
    assert foam.mass == mix.mass
    assert overrun_of(foam) == pytest.approx(wanted, abs=1e-9)
    assert overrun(liquid_density(mix), density(foam)) == pytest.approx(wanted, abs=1e-9)


@given(mixes(), mixes(), st.floats(min_value=0.0, max_value=1.0))
def test_folding_keeps_mass_and_never_makes_gas(one: Mix, two: Mix, kept: float) -> None:
    folded = fold(one, two, kept=kept)
    assert folded.mass == pytest.approx(one.mass + two.mass, rel=1e-12)
    assert 0.0 <= folded.gas <= one.gas + two.gas


@given(mixes(), mixes(), factors)
def test_scaling_commutes_with_mixing(one: Mix, two: Mix, factor: float) -> None:
    assert same(scaled(mixed(one, two), factor), mixed(scaled(one, factor), scaled(two, factor)))


@given(mixes(), factors)
def test_scaling_keeps_brix_and_density(mix: Mix, factor: float) -> None:
    assert brix(scaled(mix, factor)) == pytest.approx(brix(mix), rel=1e-9)
    assert density(scaled(mix, factor)) == pytest.approx(density(mix), rel=1e-9)


@given(mixes(), mixes())
def test_a_blend_lies_between_the_densities_of_its_parts(one: Mix, two: Mix) -> None:
    low, high = sorted((density(one), density(two)))
    assert low * (1 - 1e-9) <= density(mixed(one, two)) <= high * (1 + 1e-9)
