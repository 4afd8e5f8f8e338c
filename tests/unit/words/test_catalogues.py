"""Every catalogue has every message of the code, with the same fields."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[3] / "tools" / "catalogue"))
from messages import CATALOGUES, fresh, kept, slips, written

FILES = sorted(CATALOGUES.glob("*.po"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_catalogue_is_complete_and_names_the_same_fields(path: Path) -> None:
    assert [str(slip) for slip in slips(kept(path, fresh()), path.name)] == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_catalogue_has_what_the_code_says_and_nothing_else(path: Path) -> None:
    assert path.read_text(encoding="utf-8") == written(kept(path, fresh()))
