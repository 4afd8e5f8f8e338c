"""The languages there are, and the one that is spoken."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import cache
from gettext import NullTranslations

from entremetry.words.catalogue import codes, locale_named, translations


@dataclass(frozen=True, slots=True, kw_only=True)
class Language:
    """One language: its code, its name in itself, its messages and the signs of its numbers."""

    code: str
    name: str
    tag: str
    messages: NullTranslations
    decimal: str
    group: str
    before_percent: str


ENGLISH = Language(
    code="en",
    name="English",
    tag="en-GB",
    messages=NullTranslations(),
    decimal=".",
    group="\u202f",
    before_percent="\u202f",
)
"""As messages are written. Groups of digits by ISO 80000-1, a thin space."""

_SPOKEN: ContextVar[Language] = ContextVar("spoken language", default=ENGLISH)


def current() -> Language:
    """The language that is spoken here and now."""
    return _SPOKEN.get()


@contextmanager
def speaking(code: str) -> Iterator[Language]:
    """Speak a language until the block ends.

    Raises
    ------
    LookupError
        If there is no such language.
    """
    token = _SPOKEN.set(language(code))
    try:
        yield current()
    finally:
        _SPOKEN.reset(token)


def languages() -> tuple[str, ...]:
    """Codes of all languages there are, English first."""
    return (ENGLISH.code, *codes())


@cache
def language(code: str) -> Language:
    """A language by its code.

    Raises
    ------
    LookupError
        If there is no such language.
    """
    if code == ENGLISH.code:
        return ENGLISH
    if code not in codes():
        raise LookupError(f"no language '{code}'; there are: {', '.join(languages())}")
    locale = locale_named(code)
    symbols = locale.number_symbols["latn"]
    percent = locale.percent_formats[None].pattern
    return Language(
        code=code,
        name=(locale.get_display_name(code) or code).capitalize(),
        tag=code,
        messages=translations(code),
        decimal=symbols["decimal"],
        group=symbols["group"],
        before_percent=percent.partition("%")[0].lstrip("#,0."),
    )
