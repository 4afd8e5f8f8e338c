"""A language that marks what is said, so that what is not said can be found on a page."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from dataclasses import replace
from gettext import NullTranslations

import pytest
from lxml import html

from entremetry.words import ENGLISH

MARKED = re.compile("⟦[^⟦⟧]*⟧")
WORD = re.compile(r"[^\W\d_]{3,}")
ATTRIBUTES = ("aria-label", "title", "alt", "placeholder", "aria-valuetext", "aria-roledescription")
BARE = "script|style|textarea|code|pre|cite"
"""Elements whose text is no message: a program's, an author's or a source's own."""


class Marking(NullTranslations):
    """Gives every message back between brackets."""

    def gettext(self, message: str) -> str:
        return f"⟦{message}⟧"

    def pgettext(self, context: str, message: str) -> str:
        return f"⟦{message}⟧"

    def ngettext(self, one: str, many: str, number: int) -> str:
        return f"⟦{one if number == 1 else many}⟧"


MARKED_LANGUAGE = replace(ENGLISH, code="eo", name="Marked", tag="eo", messages=Marking())


def speak_marked(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have the marked language spoken, whichever is asked for."""
    module = sys.modules["entremetry.words.language"]  # the package has a function of that name
    monkeypatch.setattr(module, "language", lambda _code: MARKED_LANGUAGE)
    known = (ENGLISH.code, MARKED_LANGUAGE.code)
    monkeypatch.setattr("entremetry.usecases.language.languages", lambda: known)


def unsaid(page: str, known: frozenset[str]) -> list[str]:
    """Texts of a page that were not said, but for words that are known to be an author's.

    A message with markup in its fields begins in one text and ends in another.
    """
    found, before = [], 0
    for text in texts(page):
        after = before + text.count("⟦") - text.count("⟧")
        if words("⟦" * before + text + "⟧" * after) - known:
            found.append(text)
        before = after
    return found


def words(text: str) -> frozenset[str]:
    """Words of a text outside of the brackets, in small letters."""
    while MARKED.search(text):
        text = MARKED.sub(" ", text)
    return frozenset(word.casefold() for word in WORD.findall(text))


def texts(page: str) -> Iterator[str]:
    """Yield what a person reads or hears of a page, piece by piece."""
    tree = html.fromstring(page)
    for element in tree.iter():
        if not isinstance(element.tag, str):
            continue
        if not element.xpath(f"ancestor-or-self::*[{_is_bare()}]") and element.text:
            yield element.text.strip()
        parent = element.getparent()
        if (
            parent is not None
            and element.tail
            and not parent.xpath(f"ancestor-or-self::*[{_is_bare()}]")
        ):
            yield element.tail.strip()
        yield from (element.get(name, "") for name in ATTRIBUTES if element.get(name))


def _is_bare() -> str:
    return (
        " or ".join(f"self::{name}" for name in BARE.split("|"))
        + " or @translate='no' or (@lang and not(self::html))"
    )
