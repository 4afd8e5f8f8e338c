"""What is printed can be read back, and means what it meant within what is shown."""

from __future__ import annotations

from hypothesis import assume, given
from hypothesis import strategies as st

from entremetry.errors import QuantityError
from entremetry.quantities import (
    Amount,
    Measures,
    MeasureWeight,
    Method,
    Unit,
    find_slips,
    format_celsius,
    format_density,
    format_duration,
    format_fraction,
    format_length,
    format_mass,
    format_ounces,
    format_temperature,
    format_volume,
    household,
    parse_amount,
    parse_density,
    parse_duration,
    parse_fraction,
    parse_length,
    parse_mass,
    parse_temperature,
    parse_volume,
)
from properties.strategies_quantities import (
    amounts,
    densities,
    durations,
    fractions,
    lengths,
    masses,
    measure_weights,
    measures,
    prose,
    temperatures,
    units,
    volumes,
)


def close(one: float, other: float, *, relative: float, absolute: float = 0.0) -> bool:
    return abs(one - other) <= max(relative * abs(one), absolute) * (1 + 1e-9)


@given(masses)
def test_a_mass_reads_back(mass: float) -> None:
    assert close(mass, parse_mass(format_mass(mass)), relative=0.051, absolute=0.5e-5)


@given(volumes)
def test_a_volume_reads_back(volume: float) -> None:
    assert close(volume, parse_volume(format_volume(volume)), relative=0.051, absolute=0.5e-8)


@given(lengths)
def test_a_length_reads_back(length: float) -> None:
    assert close(length, parse_length(format_length(length)), relative=0.05, absolute=0.5e-4)


@given(masses)
def test_ounces_read_back(mass: float) -> None:
    assume(mass > 0.0018)
    assert close(mass, parse_mass(format_ounces(mass)), relative=0.0, absolute=0.0071)


@given(temperatures)
def test_a_temperature_reads_back_and_its_pair_agrees(kelvin: float) -> None:
    assert close(kelvin, parse_temperature(format_celsius(kelvin)), relative=0, absolute=0.5)
    assert find_slips(format_temperature(kelvin)) == ()


@given(durations)
def test_a_duration_reads_back(seconds: float) -> None:
    shown = 0.5 if seconds < 120 else 30 if seconds < 48 * 3600 else 1800
    read = parse_duration(format_duration(seconds))
    assert close(seconds, read, relative=0.0, absolute=shown + 0.5)


@given(fractions)
def test_a_fraction_reads_back(fraction: float) -> None:
    read = parse_fraction(format_fraction(fraction))
    assert close(fraction, read, relative=0.05, absolute=0.5e-4)


@given(densities)
def test_a_density_reads_back(density: float) -> None:
    assert close(density, parse_density(format_density(density)), relative=0, absolute=5.0)


@given(units, st.floats(-1e4, 1e4))
def test_a_unit_converts_there_and_back(unit: Unit, number: float) -> None:
    assert close(number, unit.from_si(unit.to_si(number)), relative=1e-9, absolute=1e-6)


@given(amounts)
def test_an_amount_is_its_number_of_its_unit(amount: Amount) -> None:
    again = parse_amount(f"{amount.number:.15g} {amount.unit}")
    assert again.unit == amount.unit and amount.si is not None and again.si is not None
    assert close(amount.si, again.si, relative=1e-12)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    for parse in (parse_amount, parse_mass, parse_temperature, parse_duration):
        try:
            parse(text)
        except QuantityError as error:
            assert error.found and error.accepted


@given(st.floats(1e-4, 50.0), measure_weights, measures, st.booleans(), st.floats(300, 1500))
def test_a_household_measure_never_drifts_more_than_it_says(
    mass: float,
    weights: list[MeasureWeight],
    system: Measures,
    weigh_only: bool,
    density: float,
) -> None:
    result = household(mass, weights=weights, system=system, weigh_only=weigh_only, density=density)
    assert close(result.mass, mass * (1 + result.relative_error), relative=1e-9)
    if abs(result.relative_error) > 0.05 + 1e-9:
        assert "%" in result.text and abs(result.relative_error) <= 0.2 + 1e-9
    if weigh_only:
        assert result.method is Method.SCALES and "weigh" in result.text


@given(st.floats(1e-4, 5.0), st.floats(200, 1400), measures)
def test_the_words_of_a_household_measure_mean_its_mass(
    mass: float, density: float, system: Measures
) -> None:
    spoon = MeasureWeight(measure="cup", volume=250e-6, mass=250e-6 * density)
    result = household(mass, weights=[spoon], system=system)
    if result.method is Method.SPOONS:
        words = result.text.removeprefix("about ").partition(" (")[0]
        assert close(parse_volume(words, system) * density, result.mass, relative=1e-6)


@given(prose)
def test_a_slip_that_is_mended_is_gone(text: str) -> None:
    slips = find_slips(text)
    for slip in slips:
        assert text[slip.start : slip.end] == slip.found
        mended = text[: slip.start] + slip.right + text[slip.end :]
        again = [each for each in find_slips(mended) if each.start == slip.start]
        assert again == []


@given(st.text(max_size=60))
def test_any_prose_can_be_searched(text: str) -> None:
    for slip in find_slips(text):
        assert slip.right != slip.found
