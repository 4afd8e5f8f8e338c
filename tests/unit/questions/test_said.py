from __future__ import annotations

import pytest

from entremetry.questions import said
from entremetry.words import speaking


@pytest.mark.parametrize(
    ("minutes", "english", "french"),
    [
        (15, "15 min", "15 min"),
        (1440, "24 h", "24 h"),
        (14 * 1440, "14 days", "14 jours"),
        (4 * 1440 + 540, "4 days 9 h", "4 jours 9 h"),
    ],
)
def test_times_in_both_languages(minutes: int, english: str, french: str) -> None:
    assert said.time(minutes) == english
    with speaking("fr"):
        assert said.time(minutes) == french


def test_numbers_have_the_signs_of_the_language() -> None:
    assert (said.mass(0.0045), said.share(0.053)) == ("4.5 g", "5.3 %")
    with speaking("fr"):
        assert (said.mass(0.0045), said.share(0.053)) == ("4,5 g", "5,3 %")
        assert said.celsius(271.65) == "-1,5 °C" and said.volume(2.5e-6) == "2,5 ml"
