"""Published pages of the demo desserts, each made once in a process."""

from __future__ import annotations

from datetime import date
from functools import cache

from entremetry.store.demo import demo_texts
from entremetry.usecases.publishing import page_of_text

DAY = date(2026, 3, 8)


@cache
def demo_page(name: str, language: str = "en") -> str:
    """Page of a demo dessert in a language, as it would be published on `DAY`."""
    return page_of_text(demo_texts()[name], file=name, today=DAY, language=language)
