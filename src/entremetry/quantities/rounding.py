"""Round a number as a person does, halves upwards, and write it."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal


def rounded(value: float, decimals: int = 0) -> Decimal:
    """Round to so many decimals, a half away from zero as in school."""
    step = Decimal(1).scaleb(-decimals)
    result = Decimal(repr(float(value))).quantize(step, rounding=ROUND_HALF_UP)
    return result if result else abs(result)


def fixed(value: float, decimals: int = 0) -> str:
    """Write a number with exactly so many decimals: 4.0."""
    return f"{rounded(value, decimals):f}"


def trimmed(value: float, decimals: int = 0) -> str:
    """Write a number with at most so many decimals: 4, 2.5."""
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def scaled(value: float) -> str:
    """Write a number as kitchen scales show it: 0.35, 4.0, 240."""
    if rounded(value, 2) < 1:
        return fixed(value, 2)
    return fixed(value, 1) if rounded(value, 1) < 10 else fixed(value)
