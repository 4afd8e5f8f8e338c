"""Names and counted things are brought to one form."""

from __future__ import annotations

import pytest

from entremetry.larder.spelling import plain, singular


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("  Crème   Fraîche ", "creme fraiche"),
        ("lemon-juice", "lemon juice"),
        ("Blanc d’Œuf", "blanc d'oeuf"),
        ("purée", "puree"),
    ],
)
def test_a_name_loses_case_accents_and_hyphens(written: str, expected: str) -> None:
    assert plain(written) == expected


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("Sheets", "sheet"),
        ("leaves", "leaf"),
        ("glass", "glass"),
        ("large eggs (EU)", "large egg (eu)"),
        ("us large eggs", "large egg (us)"),
        ("us cups", "cup (us)"),
        ("", ""),
    ],
)
def test_a_counted_thing_loses_its_plural(written: str, expected: str) -> None:
    assert singular(written) == expected
