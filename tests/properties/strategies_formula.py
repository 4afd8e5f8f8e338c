"""Mixes that a kitchen could hold."""

from __future__ import annotations

from hypothesis import strategies as st

from entremetry.formula import Mix
from entremetry.larder.constituents import NAMES, Constituents

masses = st.floats(min_value=0.0, max_value=5.0, allow_subnormal=False).map(
    lambda mass: 0.0 if mass < 1e-6 else mass
)
shares = st.floats(min_value=0.0, max_value=0.95)
factors = st.floats(min_value=0.05, max_value=50.0)
gases = st.floats(min_value=0.0, max_value=0.02)


@st.composite
def constituents(draw: st.DrawFn) -> Constituents:
    """Some of any constituent, and always some water."""
    parts = {name: draw(masses) for name in draw(st.sets(st.sampled_from(NAMES), max_size=6))}
    parts["water"] = draw(st.floats(min_value=0.01, max_value=5.0))
    return Constituents(**parts)


def mixes() -> st.SearchStrategy[Mix]:
    """Mixes with and without gas."""
    return st.builds(Mix, constituents=constituents(), gas=gases)
