"""What a bare word means, by the core schema of YAML 1.2: 'no' and 'on' stay texts."""

from __future__ import annotations

import re

_TRUTHS = {"true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False}
_NOTHING = frozenset({"", "~", "null", "Null", "NULL"})
_WHOLE = re.compile(r"[-+]?[0-9]+")
_OTHER_BASES = re.compile(r"0o[0-7]+|0x[0-9a-fA-F]+")
_REAL = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_NOT_FINITE = re.compile(r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)")
_MOST_DIGITS = 18

Scalar = str | int | float | bool | None


class NotFinite(ValueError):
    """A number that is not finite, or too long for a number."""


def scalar(text: str) -> Scalar:
    """Return what a bare word means; raise NotFinite for NaN, infinity and endless numbers."""
    if text in _NOTHING:
        return None
    if text in _TRUTHS:
        return _TRUTHS[text]
    if _NOT_FINITE.fullmatch(text):
        raise NotFinite(text)
    if _WHOLE.fullmatch(text) or _OTHER_BASES.fullmatch(text):
        return _whole(text)
    return _real(text) if _REAL.fullmatch(text) else text


def _whole(text: str) -> int:
    """Read a whole number of a sensible length."""
    if len(text) > _MOST_DIGITS:
        raise NotFinite(text)
    return int(text, 0) if text[:2] in {"0o", "0x"} else int(text)


def _real(text: str) -> float:
    """Read a decimal number, which must be finite."""
    value = float(text)
    if value in {float("inf"), float("-inf")}:
        raise NotFinite(text)
    return value
