"""Foods and prices for labels."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from entremetry.labels.content import Content, together
from entremetry.labels.energy import Fuel
from entremetry.larder import Ingredient
from entremetry.store.larder_file import open_larder

INGREDIENTS: tuple[Ingredient, ...] = tuple(i for i in open_larder() if i.id != "water")
masses = st.floats(min_value=1e-4, max_value=2.0)
amounts_on_labels = st.floats(min_value=0.0, max_value=3000.0, allow_subnormal=False)


def one_food(ingredient: Ingredient, mass: float) -> Content:
    """So much of one ingredient."""
    return Content(
        id=ingredient.id,
        name=ingredient.name,
        mass=mass,
        constituents=ingredient.composition * mass,
        held={ingredient.id: mass},
        ingredients={ingredient.id: ingredient},
    )


@st.composite
def foods(draw: st.DrawFn) -> Content:
    """A mix of a few ingredients of the larder."""
    chosen = draw(st.lists(st.sampled_from(INGREDIENTS), min_size=1, max_size=5))
    return together("food", "Food", [one_food(i, draw(masses)) for i in chosen])


fuels: st.SearchStrategy[Fuel] = st.builds(
    Fuel,
    **dict.fromkeys(
        (
            "carbohydrate",
            "polyols",
            "erythritol",
            "protein",
            "fat",
            "alcohol",
            "organic_acids",
            "fibre",
        ),
        st.floats(min_value=0.0, max_value=1.0, allow_subnormal=False),
    ),
)


@st.composite
def price_documents(draw: st.DrawFn) -> dict[str, Any]:
    """Prices of some of the small larder's ingredients."""
    names = draw(st.sets(st.sampled_from(["caster-sugar", "cream-35", "puree", "plain-flour"])))
    price = st.floats(min_value=0.01, max_value=100.0)
    return {
        "entremetry_prices": 1,
        "currency": draw(st.sampled_from(["EUR", "USD"])),
        "prices": {
            name: {"pack": draw(st.sampled_from(["1 kg", "500 g", "2 lb"])), "price": draw(price)}
            for name in sorted(names)
        },
        "labour_per_hour": draw(st.none() | price),
        "energy_per_kwh": draw(st.none() | price),
        "margin": draw(st.none() | st.sampled_from(["0 %", "50 %", "80 %"])),
    }
