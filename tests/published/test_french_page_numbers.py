"""Numbers of a French page against the Unicode Common Locale Data Repository, by way of Babel.

What is compared is the decimal sign, the groups of digits and the space before a percent sign; how
many digits a number deserves is ours, and is taken from the English text of the same number.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import numpy as np
import pytest
from babel.numbers import format_decimal, format_percent

from entremetry.publish.typography import (
    NARROW,
    NO_BREAK,
    grams,
    millilitres,
    millimetres,
    per_cent,
)
from entremetry.words import decimal, speaking

VALUES = [float(value) for value in np.logspace(-8.0, 3.5, 700)]


def number(printed: str) -> Decimal:
    """The number of an English text."""
    return Decimal(printed.rpartition(NO_BREAK)[0].replace(NARROW, ""))


def in_french(value: Decimal) -> str:
    """A number as the locale data write it, with all its digits."""
    return str(format_decimal(value, locale="fr", decimal_quantization=False))


@pytest.mark.parametrize("say", [grams, millilitres, millimetres])
def test_amounts_have_the_signs_of_the_locale_data(say: Callable[[float], str]) -> None:
    grouped = 0
    for value in VALUES:
        english = say(value)
        unit = english.rpartition(NO_BREAK)[2]
        with speaking("fr"):
            french = say(value)
        shown = number(english)
        if say is millimetres and shown >= 1000:
            continue
        assert french == f"{in_french(shown)}{NO_BREAK}{unit}"
        grouped += shown >= 1000
    assert grouped > 50 or say is millimetres


def test_shares_have_the_signs_of_the_locale_data() -> None:
    for value in (value for value in VALUES if value < 9.9):
        shown = Decimal(per_cent(value).rstrip(f"%{NARROW}")) / 100
        with speaking("fr"):
            assert per_cent(value) == format_percent(shown, locale="fr", decimal_quantization=False)


def test_a_written_number_becomes_that_of_the_locale_data() -> None:
    with speaking("fr"):
        for value in VALUES:
            for places in range(4):
                written = f"{value:,.{places}f}"
                plain = Decimal(written.replace(",", ""))
                least = "0" * places
                form = f"#,##0.{least}" if places else "#,##0"
                assert decimal(written) == format_decimal(plain, form, locale="fr")
