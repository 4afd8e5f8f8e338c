from __future__ import annotations

import re

import pytest

from entremetry.publish.shortening import short
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text


def test_the_first_sentence_stays_and_what_names_no_quantity_goes() -> None:
    assert short("Unmould. Back into the freezer.") == "Unmould."
    assert (
        short("Cover with 15 g, to the rim; level it.") == "Cover with 15 g, to the rim; level it."
    )
    assert short("Freeze hard. Film on it. It keeps for 14 days.") == (
        "Freeze hard. It keeps for 14 days."
    )
    assert short("") == ""


@pytest.mark.parametrize("name", demo_texts())
def test_no_number_of_a_demo_is_dropped(name: str) -> None:
    sheet = batch_of_text(demo_texts()[name])
    for sentence in [s for c in sheet.components for s in c.method] + list(sheet.assembly):
        assert re.findall(r"\d+", short(sentence)) == re.findall(r"\d+", sentence)
