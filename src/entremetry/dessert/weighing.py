"""What an amount as written weighs."""

from __future__ import annotations

from entremetry.dessert.region import region_of
from entremetry.errors import QuantityError
from entremetry.larder.ingredient import Ingredient
from entremetry.quantities import Kind, parse_amount
from entremetry.words import quoted, say


def mass_of_amount(text: str, ingredient: Ingredient | None, *, measures: str | None) -> float:
    """Mass of an amount of an ingredient, or of a component if there is none. [kg]

    A spoon or cup takes the ingredient's own household weight where one is known, else its
    density.

    Raises
    ------
    QuantityError
        If the text is no amount, or its unit cannot be weighed.
    UnknownName
        If the ingredient is not counted in that unit.
    """
    amount = parse_amount(text, measures)
    if amount.kind is Kind.MASS and amount.si is not None:
        return amount.si
    if ingredient is None:
        accepted = say("a mass: another component goes in by weight")
        raise QuantityError(quoted(text), accepted)
    if amount.kind is Kind.VOLUME and amount.si is not None:
        for weight in ingredient.household:
            if weight.measure == amount.unit:
                return amount.number * weight.mass / weight.amount
        return amount.si * ingredient.density
    return ingredient.mass_of(amount.number, amount.unit, region_of(measures))
