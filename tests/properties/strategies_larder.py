"""Ingredients of the larder, and own ones a cook could write down."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from entremetry.larder import TAGS, HouseholdWeight, Ingredient, Pack
from entremetry.larder.constituents import NAMES, Constituents
from entremetry.store.larder_file import open_larder

ingredients: st.SearchStrategy[Ingredient] = st.sampled_from(open_larder().ingredients)
fractions = st.floats(min_value=0.0, max_value=1.0, allow_subnormal=False)
words = st.text("abcdefghij", min_size=1, max_size=8)
masses = st.floats(min_value=1e-4, max_value=10.0)


@st.composite
def compositions(draw: st.DrawFn) -> Constituents:
    """Constituents that add up to one."""
    shares = {name: draw(fractions) for name in draw(st.sets(st.sampled_from(NAMES), min_size=1))}
    whole = sum(shares.values())
    if whole < 1e-6:
        return Constituents(water=1.0)
    return Constituents(**{name: share / whole for name, share in shares.items()})


def household_weights() -> st.SearchStrategy[HouseholdWeight]:
    """Counted things of any weight."""
    return st.builds(
        HouseholdWeight,
        measure=words,
        amount=st.floats(min_value=0.25, max_value=10.0),
        mass=masses,
        source=st.just("our_own"),
    )


def packs() -> st.SearchStrategy[Pack]:
    """Packs of any size."""
    return st.builds(Pack, name=words, mass=masses, whole=st.booleans())


@st.composite
def labels(draw: st.DrawFn) -> dict[str, float]:
    """What a label states, in grams in 100 g; less than a hundred together."""
    fat, carbohydrate, protein = (draw(st.floats(0.0, 30.0)) for _ in range(3))
    sugars = draw(st.floats(0.0, 1.0)) * carbohydrate
    return {"fat": fat, "carbohydrate": carbohydrate, "sugars": sugars, "protein": protein}


@st.composite
def own_sections(draw: st.DrawFn) -> dict[str, Any]:
    """A new own ingredient as it stands in a document."""
    return {
        "name": draw(words),
        "density": f"{draw(st.floats(0.2, 1.6)):.3f} g/ml",
        "per_100g": draw(labels()),
        "tags": draw(st.lists(st.sampled_from(sorted(TAGS)), max_size=3, unique=True)),
    }
