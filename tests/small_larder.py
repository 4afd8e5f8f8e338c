"""A larder of a few ingredients with round numbers, invented for the tests alone."""

from __future__ import annotations

from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import HouseholdWeight, Ingredient, Pack
from entremetry.larder.larder import Larder


def _ingredient(
    ingredient_id: str, density: float, parts: Constituents, **others: object
) -> Ingredient:
    return Ingredient(
        id=ingredient_id,
        name=ingredient_id.replace("-", " "),
        group="test",
        composition=parts,
        density=density,
        source="from_memory",
        **others,  # type: ignore[arg-type]
    )


SHEET = HouseholdWeight(measure="sheet", amount=1.0, mass=0.002, source="from_memory")
CUP_OF_FLOUR = HouseholdWeight(measure="us cup", amount=1.0, mass=0.125, source="from_memory")
SMALL_LARDER = Larder(
    (
        _ingredient("water", 1000.0, Constituents(water=1.0)),
        _ingredient("caster-sugar", 845.0, Constituents(sucrose=1.0)),
        _ingredient(
            "cream-35",
            1000.0,
            Constituents(water=0.6, milk_fat=0.35, lactose=0.03, protein=0.02),
            allergens_eu=frozenset({"milk"}),
            allergens_us=frozenset({"milk"}),
            packs=(Pack(name="carton", mass=0.5),),
        ),
        _ingredient("puree", 1050.0, Constituents(water=0.85, fructose=0.12, fibre=0.03)),
        _ingredient(
            "plain-flour",
            530.0,
            Constituents(starch=0.76, protein=0.12, water=0.12),
            household=(CUP_OF_FLOUR,),
            allergens_eu=frozenset({"gluten:wheat"}),
            allergens_us=frozenset({"wheat"}),
        ),
        _ingredient(
            "gelatine-sheet-gold",
            1300.0,
            Constituents(protein=0.87, water=0.13),
            household=(SHEET,),
            packs=(Pack(name="sheet", mass=0.002, whole=True),),
            tags=frozenset({"gelling"}),
            bloom=200.0,
        ),
        _ingredient("whole-fruit", 600.0, Constituents(water=0.85, fructose=0.15), refuse=0.2),
    )
)
