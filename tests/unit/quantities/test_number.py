"""Numbers as people write them."""

from __future__ import annotations

import pytest

from entremetry.errors import QuantityError
from entremetry.quantities.number import mixed_text, number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("240", 240),
        ("0.5", 0.5),
        (".5", 0.5),
        ("1,5", 1.5),
        ("0,125", 0.125),
        ("1 1/2", 1.5),
        ("1½", 1.5),
        ("1 ½", 1.5),
        ("¾", 0.75),
        ("3/4", 0.75),
        ("1⁄3", 1 / 3),
        ("1 000", 1000),
        ("12\u202f500", 12500),
        ("2⅔", 2 + 2 / 3),
    ],
)
def test_a_number_is_read(text: str, value: float) -> None:
    assert number(text) == pytest.approx(value, rel=1e-15)


def test_a_thousand_with_a_comma_is_ambiguous_and_both_readings_are_offered() -> None:
    with pytest.raises(QuantityError, match=r"1000 or 1\.000"):
        number("1,000")


@pytest.mark.parametrize("text", ["", "x", "1/0", "1.5.5", "1e3", "٣", "1,2,3", "9" * 31])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        number(text)


@pytest.mark.parametrize(
    ("value", "text"), [(0.125, "⅛"), (1.5, "1½"), (2, "2"), (2 / 3, "⅔"), (0.45, "0.45"), (0, "0")]
)
def test_a_fraction_is_written_with_its_sign(value: float, text: str) -> None:
    assert mixed_text(value) == text
