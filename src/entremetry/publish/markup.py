"""Elements and numbers of a drawing as text, with everything foreign escaped."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape

FORBIDDEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def plain(text: str) -> str:
    """Text without the control characters that no XML document may hold."""
    return FORBIDDEN.sub("", text)


def escaped(text: str) -> str:
    """Text that is shown as it stands, in an element or in an attribute."""
    return escape(plain(text), quote=True)


def number(value: float) -> str:
    """Number to a hundredth, without needless zeros."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def element(name: str, *children: str, **attributes: str | float | None) -> str:
    """Element with its attributes; `_` in a name stands for `-`, None leaves one out.

    Children are markup already; foreign text goes through `escaped` first.
    """
    words = [name]
    for key, value in attributes.items():
        if value is not None:
            shown = value if isinstance(value, str) else number(value)
            words.append(f'{key.strip("_").replace("_", "-")}="{escaped(shown)}"')
    opening = " ".join(words)
    return f"<{opening}>{''.join(children)}</{name}>" if children else f"<{opening}/>"


def path_data(points: Iterable[Iterable[float]], *, closed: bool = True) -> str:
    """Path through points, to a hundredth, without repeated ones."""
    words: list[str] = []
    for point in points:
        word = " ".join(number(coordinate) for coordinate in point)
        if not words or words[-1] != word:
            words.append(word)
    return "M" + "L".join(words) + ("Z" if closed else "")
