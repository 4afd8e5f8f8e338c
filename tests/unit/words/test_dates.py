"""Days are said as the language says them."""

from __future__ import annotations

from datetime import date

from entremetry.words import full_date, short_weekday, speaking, weekday_and_date

FIRST, LATER = date(2026, 5, 1), date(2026, 11, 28)


def test_english_days() -> None:
    assert full_date(FIRST) == "1 May 2026"
    assert weekday_and_date(LATER) == "Saturday 28 November"
    assert short_weekday(LATER) == "Sat"


def test_french_days_and_the_first_of_a_month() -> None:
    with speaking("fr"):
        assert full_date(FIRST) == "1er mai 2026"
        assert full_date(LATER) == "28 novembre 2026"
        assert weekday_and_date(FIRST) == "vendredi 1er mai"
        assert weekday_and_date(LATER) == "samedi 28 novembre"
        assert short_weekday(LATER) == "sam."
