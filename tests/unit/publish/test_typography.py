import pytest

from entremetry.publish.typography import (
    grams,
    hours,
    millilitres,
    millimetres,
    per_cent,
    typeset,
)


@pytest.mark.parametrize(
    ("found", "printed"),
    [
        ("freeze at -18 °C", "freeze at \u221218\u00a0°C"),
        ("400 x 300 mm", "400 × 300\u00a0mm"),
        ("15-18 min", "15–18\u00a0min"),
        ("240 g of purée", "240\u00a0g of purée"),
        ("35 % fat", "35\u00a0% fat"),
        ("half-spheres of 40 mm", "half-spheres of 40\u00a0mm"),
        ("a 2 x 3 grid", "a 2 × 3 grid"),
        ("box", "box"),
    ],
)
def test_signs_and_spaces_are_those_of_print(found: str, printed: str) -> None:
    assert typeset(found) == printed


@pytest.mark.parametrize(
    ("kilograms", "printed"),
    [
        (0.240, "240\u00a0g"),
        (0.0025, "2.5\u00a0g"),
        (0.0008, "0.8\u00a0g"),
        (0.00025, "0.25\u00a0g"),
        (1.2344, "1\u202f234\u00a0g"),
        (0.00996, "10\u00a0g"),
        (0.0, "0\u00a0g"),
    ],
)
def test_masses_have_the_digits_a_scale_shows(kilograms: float, printed: str) -> None:
    assert grams(kilograms) == printed


def test_lengths_volumes_and_shares() -> None:
    assert millimetres(0.0035) == "3.5\u00a0mm"
    assert millimetres(0.060) == "60\u00a0mm"
    assert millilitres(89.8e-6) == "89.8\u00a0ml"
    assert millilitres(1.2e-3) == "1\u202f200\u00a0ml"
    assert per_cent(0.046) == "4.6\u202f%"
    assert per_cent(-0.15) == "\u221215\u202f%"


@pytest.mark.parametrize(
    ("seconds", "printed"),
    [(0, "0\u00a0min"), (3600, "1\u00a0h"), (7800, "2\u00a0h 10\u00a0min"), (540, "9\u00a0min")],
)
def test_times_are_hours_and_minutes(seconds: float, printed: str) -> None:
    assert hours(seconds) == printed
