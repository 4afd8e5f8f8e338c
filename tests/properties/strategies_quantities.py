"""Strategies that draw quantities, measures and prose about them."""

from __future__ import annotations

from hypothesis import strategies as st

from entremetry.quantities import Amount, Kind, Measures, MeasureWeight, Unit, parse_amount
from entremetry.quantities.table import UNITS

masses = st.floats(1e-6, 999.0)
volumes = st.floats(1e-8, 0.999)
lengths = st.floats(1e-4, 9.99)
temperatures = st.floats(80.0, 1200.0)
durations = st.floats(0.0, 365 * 86400.0)
fractions = st.floats(0.0, 9.9)
densities = st.floats(20.0, 4000.0)
units: st.SearchStrategy[Unit] = st.sampled_from(UNITS)
measures: st.SearchStrategy[Measures] = st.sampled_from(Measures)

_VOLUMES = {"cup": 236.588e-6, "tbsp": 14.787e-6, "tsp": 4.929e-6}
_SPOONS = st.builds(
    lambda measure, density: MeasureWeight(
        measure=measure, volume=_VOLUMES[measure], mass=_VOLUMES[measure] * density
    ),
    st.sampled_from(sorted(_VOLUMES)),
    st.floats(100.0, 1500.0),
)
_THINGS = st.builds(
    MeasureWeight,
    measure=st.sampled_from(["sheet", "large egg", "stick", "pod", "leaf"]),
    volume=st.none(),
    mass=st.floats(0.001, 0.3),
)
measure_weights = st.lists(st.one_of(_SPOONS, _THINGS), max_size=5)

amounts: st.SearchStrategy[Amount] = st.builds(
    lambda number, unit: parse_amount(f"{number} {unit.name}"),
    st.integers(1, 200),
    st.sampled_from([u for u in UNITS if u.kind in {Kind.MASS, Kind.VOLUME} and u.factor < 1e-2]),
)

_WORDS = st.sampled_from(["heat to", "pour", "(", ")", "/", "or", ",", "–", "-", "flour", "gas"])
_FIGURES = st.one_of(
    st.integers(0, 2000).map(str),
    st.sampled_from(["½", "1½", "1 1/2", "0.5", "2,5", "-18", "1/0", "1,000"]),
)
_SPELLED = st.sampled_from(
    [
        "°C",
        "°F",
        "C",
        "g",
        "oz",
        "lb",
        "cup",
        "cups",
        "tbsp",
        "us cup",
        "ml",
        "in",
        "cm",
        '"',
        "pint",
    ]
)
prose = st.lists(st.one_of(_WORDS, _FIGURES, _SPELLED), max_size=14).map(" ".join)
