"""How to keep it: as the document says, else as is usual, and never a promise."""

from __future__ import annotations

import pytest

from entremetry.labels.keeping_advice import KeepingAdvice, keeping_advice
from entremetry.usecases.batch import reckoned, surroundings

DOCUMENT = """entremetry: 1
id: dome
name: Dome
pieces: 6
mould: hemisphere-70
components:
  mousse: {{name: Mousse, kind: mousse, formula: {{cream-35: 100 g}}}}
placement: [{{component: mousse, as: filling}}]
assembly: [{assembly}]
"""


def advice(assembly: str) -> KeepingAdvice:
    text = DOCUMENT.format(assembly=assembly)
    return keeping_advice(reckoned(text, "d", surroundings(None, "k")).dessert)


def test_what_is_frozen_is_kept_frozen_and_eaten_within_a_day_of_thawing() -> None:
    found = advice("{step: fill}, {step: freeze-until, time: 6 h}, {step: thaw-until, time: 6 h}")
    assert "-18 °C" in found.storage
    assert (found.hours, found.sources) == (24.0, ("common_practice",))


def test_what_the_document_says_goes_first() -> None:
    found = advice("{step: freeze-until, time: 6 h}, {step: thaw-until, time: 6 h, keeps: 2 days}")
    assert found.hours == 48.0
    assert found.because == "as the document says"


def test_what_is_never_frozen_is_kept_cold() -> None:
    found = advice("{step: fill}")
    assert "-18 °C" not in found.storage
    assert "Eat within" in found.use_by


@pytest.mark.parametrize("assembly", ["{step: fill}", "{step: freeze-until, time: 6 h}"])
def test_no_advice_calls_anything_safe(assembly: str) -> None:
    found = advice(assembly)
    assert "safe" not in f"{found.storage} {found.use_by}".casefold()
