"""Catalogues of messages: one file for a language, read when it is first spoken."""

from __future__ import annotations

from functools import cache
from gettext import GNUTranslations
from importlib.resources import files
from io import BytesIO
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from babel import Locale

ENDING = ".po"


@cache
def codes() -> tuple[str, ...]:
    """Codes of the languages that have a catalogue."""
    names = (entry.name for entry in files("entremetry.words").joinpath("catalogues").iterdir())
    return tuple(sorted(name.removesuffix(ENDING) for name in names if name.endswith(ENDING)))


def translations(code: str) -> GNUTranslations:
    """Messages of a catalogue, for look-up."""
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    entry = files("entremetry.words").joinpath("catalogues", f"{code}{ENDING}")
    compiled = BytesIO()
    write_mo(compiled, read_po(BytesIO(entry.read_bytes()), locale=code))
    compiled.seek(0)
    return GNUTranslations(compiled)


def locale_named(code: str) -> Locale:
    """What the Unicode locale data say of a language."""
    from babel import Locale

    return Locale.parse(code)
