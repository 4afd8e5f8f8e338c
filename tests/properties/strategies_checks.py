"""Bands, and changes that spoil or mend a dessert."""

from __future__ import annotations

from math import inf
from typing import Any

from hypothesis import strategies as st

from entremetry.checks import Band

END = st.floats(-1e4, 1e4)


@st.composite
def bands(draw: st.DrawFn) -> Band:
    """Bands with one good end or two."""
    fails_below, low, high, fails_above = sorted(draw(st.tuples(END, END, END, END)))
    sides = draw(st.sampled_from(["low", "high", "both"]))
    if sides == "low":
        high = fails_above = inf
    if sides == "high":
        low = fails_below = -inf
    return Band(unit="x", low=low, high=high, fails_below=fails_below, fails_above=fails_above)


def _grams(low: float, high: float) -> st.SearchStrategy[str]:
    return st.floats(low, high).map(lambda grams: f"{grams:.2f} g")


def _degrees(low: float, high: float) -> st.SearchStrategy[str]:
    return st.floats(low, high).map(lambda degrees: f"{degrees:.1f} °C")


PATHS: dict[str, st.SearchStrategy[Any]] = {
    "components/mousse/formula/gelatine-sheet-gold": _grams(0.05, 20),
    "components/mousse/formula/raspberry-puree": _grams(5, 900),
    "components/mousse/formula/caster-sugar": _grams(0.5, 900),
    "components/mousse/formula/cream-35": _grams(5, 900),
    "components/mousse/method/0/water": _grams(0.5, 300),
    "components/mousse/method/1/temperature": _degrees(21, 104),
    "components/mousse/method/2/temperature": _degrees(5, 70),
    "components/insert/formula/caster-sugar": _grams(0.5, 500),
    "components/insert/formula/egg-yolk": _grams(1, 200),
    "components/insert/method/1/temperature": _degrees(21, 104),
    "components/glaze/formula/water": _grams(0.5, 500),
    "components/base/method/3/loss": st.integers(0, 14).map(lambda share: f"{share} %"),
    "assembly/1/temperature": _degrees(-40, -1),
    "assembly/3/temperature": _degrees(15, 60),
    "assembly/5/temperature": _degrees(-12, 8),
}


def spoilt() -> st.SearchStrategy[dict[str, Any]]:
    """Changes of some numbers of a dessert, for better or worse."""
    return st.fixed_dictionaries({}, optional=PATHS)
