"""Every setting the program reads stands in the documentation, and no other."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
SETTING = re.compile(r"\bENTREMETRY_[A-Z_]+\b")


def settings_in(text: str) -> set[str]:
    """Names of settings in a text."""
    return set(SETTING.findall(text))


def test_the_page_lists_the_settings_that_are_read() -> None:
    modules = (ROOT / "src").rglob("*.py")
    read = settings_in("\n".join(path.read_text(encoding="utf-8") for path in modules))
    page = ROOT / "docs" / "reference" / "settings.md"
    assert settings_in(page.read_text(encoding="utf-8")) == read
