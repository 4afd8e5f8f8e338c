"""The bibliography answers by key and cannot be changed."""

from __future__ import annotations

import pytest

from entremetry.errors import UnknownName
from entremetry.sources import BIBLIOGRAPHY, Standing, cite


def test_a_source_is_cited_by_its_key() -> None:
    assert "Choi" in cite("choi_okos_1986").text


def test_what_has_no_source_says_so() -> None:
    assert cite("common_practice").standing is Standing.COMMON_PRACTICE
    assert cite("from_memory").standing is Standing.FROM_MEMORY


def test_keys_come_in_order() -> None:
    assert list(BIBLIOGRAPHY) == sorted(BIBLIOGRAPHY)


def test_a_missing_key_names_the_thing_looked_for() -> None:
    with pytest.raises(UnknownName, match="no source is called 'nobody_1900'"):
        cite("nobody_1900")


def test_the_bibliography_cannot_be_written_to() -> None:
    with pytest.raises(TypeError):
        BIBLIOGRAPHY["a_1"] = cite("from_memory")  # type: ignore[index]
