"""The use case behind the command and the page."""

from __future__ import annotations

from pathlib import Path

import pytest

from entremetry.errors import DocumentError, EntremetryError, UnknownName
from entremetry.usecases.temperatures import (
    temperatures,
    temperatures_of_text,
    timed_steps_of,
    timed_steps_of_text,
)
from timed_desserts import KITCHEN, TIMED


def test_a_file_and_its_text_give_the_same(tmp_path: Path) -> None:
    dessert, kitchen = tmp_path / "dome.yaml", tmp_path / "kitchen.yaml"
    dessert.write_text(TIMED, encoding="utf-8")
    kitchen.write_text(KITCHEN, encoding="utf-8")
    one = temperatures(dessert, step="freeze", kitchen=kitchen)
    other = temperatures_of_text(TIMED, step="freeze", kitchen_text=KITCHEN, pictures=False)
    assert (one.time, one.low, one.high, one.because) == (
        other.time,
        other.low,
        other.high,
        other.because,
    )
    assert [s.id for s in timed_steps_of(dessert)] == [s.id for s in timed_steps_of_text(TIMED)]


def test_pictures_come_when_they_are_wanted() -> None:
    assert temperatures_of_text(TIMED, step="thaw").field is not None
    assert temperatures_of_text(TIMED, step="thaw", pictures=False).field is None


def test_an_unknown_step_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="thaw"):
        temperatures_of_text(TIMED, step="thawing")


def test_a_missing_file_and_a_broken_document_are_refused(tmp_path: Path) -> None:
    with pytest.raises(EntremetryError, match="nowhere"):
        temperatures(tmp_path / "nowhere.yaml", step="freeze")
    with pytest.raises(DocumentError):
        temperatures_of_text(TIMED.replace("pieces: 6", "pieces: none"), step="freeze")
