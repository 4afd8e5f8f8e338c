"""A template and its data set on paper or as a picture, by Typst in the fonts it brings along.

A template is a Typst text of ours; what is foreign reaches it as data and is never read as markup.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from datetime import UTC, date, datetime
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, Literal

from entremetry.publish.markup import plain
from entremetry.publish.typography import typeset
from entremetry.words import current

if TYPE_CHECKING:
    from typst import Fonts

SERIF = "Libertinus Serif"
"""The one family; whatever it lacks comes from the fonts of the machine."""
LONGEST_WORD = 32
BREAK = "\u200b"
TURNING = re.compile("[\u202a-\u202e\u2066-\u2069]")
LONG_WORD = re.compile(rf"\S{{{LONGEST_WORD}}}(?=\S)")
EPOCH = date(1980, 1, 1)


class Paper(StrEnum):
    """Paper that a kitchen printer holds."""

    A4 = "a4"
    LETTER = "letter"


def line(text: str) -> str:
    """Text in one line: nothing that ends it, turns its direction or cannot be shown."""
    return " ".join(TURNING.sub("", plain(text)).split())


def printed(text: str) -> str:
    """One line with the signs of print, in which words too long for a column may break."""
    return LONG_WORD.sub(rf"\g<0>{BREAK}", typeset(line(text)))


def set_in_type(
    template: str,
    data: Mapping[str, Any],
    *,
    form: Literal["pdf", "png", "svg"] = "pdf",
    ppi: float = 72.0,
    on: date | None = None,
) -> bytes:
    """Set a template with its data; pictures are those of the first page.

    The template also knows the language that is spoken. `on` is the day that the file says it was
    made; the same input gives the same bytes.
    """
    import typst

    day = on or EPOCH
    language, _, region = current().tag.partition("-")
    whole = {**data, "lang": language, "region": region or None}
    made = typst.compile(
        _template(template),
        format=form,
        ppi=ppi,
        font_paths=_fonts(),
        sys_inputs={"data": json.dumps(whole, ensure_ascii=False)},
        timestamp=int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp()),
    )
    return bytes(made[0] if isinstance(made, list) else made)


@cache
def _fonts() -> Fonts:
    from typst import Fonts

    return Fonts()


@cache
def _template(name: str) -> bytes:
    """A template after the words that all of them share."""
    folder = files("entremetry.publish") / "templates"
    return b"\n".join((folder / each).read_bytes() for each in ("shared.typ", name))
