"""What a batch costs: ingredients with their waste, hands, power; and what drives it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.agenda.hands_on import hands_on
from entremetry.dessert.reckoning import Reckoning
from entremetry.dessert.requirement import Requirement
from entremetry.labels.content import WATER
from entremetry.labels.power import JOULES_PER_KWH, batch_energy
from entremetry.labels.price_document import PriceDocument
from entremetry.labels.pricing import Price
from entremetry.labels.waste import Waste, waste
from entremetry.larder.spoken_name import ingredient_name
from entremetry.words import say, say_later


@dataclass(frozen=True, slots=True, kw_only=True)
class IngredientCost:
    """An ingredient of the batch: mass weighed [kg], its cost, and whole packs of it.

    Without a price cost and packs are None.
    """

    id: str
    name: str
    mass: float
    cost: float | None
    packs: int | None
    packs_cost: float | None
    pack: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ComponentCost:
    """Ingredients weighed for a component, apart from other components that go into it."""

    id: str
    name: str
    cost: float
    complete: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Driver:
    """Something that costs, and its share of the total."""

    name: str
    cost: float
    share: float


METHOD_HANDS = say_later(
    "the hands-on time that the steps of the method state, or that is usual for them"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hands:
    """Minutes of hands for a batch, and where they are from."""

    minutes: float
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """Cost of a batch in one currency; with a price `missing` every total is 'at least'.

    `pieces` bear it, though whole frames and cavities may give more: `pieces_made`.
    """

    currency: str
    pieces: int
    pieces_made: int
    ingredients: tuple[IngredientCost, ...]
    components: tuple[ComponentCost, ...]
    ingredients_total: float
    whole_packs_total: float
    waste: Waste
    labour_minutes: float
    labour_because: str
    labour: float | None
    energy_kwh: float
    energy: float | None
    energy_because: str
    total: float
    margin: float | None
    price_per_piece: float | None
    drivers: tuple[Driver, ...]
    missing: tuple[str, ...]

    @property
    def per_piece(self) -> float:
        """Cost of one piece."""
        return self.total / self.pieces


def batch_cost(
    reckoning: Reckoning,
    pieces: int,
    prices: Mapping[str, Price],
    document: PriceDocument,
    *,
    planned: Hands | None = None,
) -> Cost:
    """Cost of a batch of so many pieces; hands as planned, else as the method has them."""
    required = reckoning.requirements(pieces)
    weighed = _weighed(reckoning, required)
    ingredients = tuple(_ingredient(*each, prices) for each in weighed.values())
    per_kilogram = {name: price.per_kilogram for name, price in prices.items()}
    total = math.fsum(each.cost or 0.0 for each in ingredients)
    hands = planned or Hands(minutes=_hands(reckoning, required, pieces), because=say(METHOD_HANDS))
    minutes = hands.minutes
    power = batch_energy(reckoning, required)
    kwh = power.joules / JOULES_PER_KWH
    labour = None if document.labour_per_hour is None else minutes / 60 * document.labour_per_hour
    energy = None if document.energy_per_kwh is None else kwh * document.energy_per_kwh
    whole = total + (labour or 0.0) + (energy or 0.0)
    return Cost(
        currency=document.currency,
        pieces=pieces,
        pieces_made=reckoning.cavities(pieces) * reckoning.per_cavity,
        ingredients=ingredients,
        components=_components(reckoning, required, per_kilogram),
        ingredients_total=total,
        whole_packs_total=math.fsum(each.packs_cost or 0.0 for each in ingredients),
        waste=waste(reckoning, required, pieces, per_kilogram, total),
        labour_minutes=minutes,
        labour_because=hands.because,
        labour=labour,
        energy_kwh=kwh,
        energy=energy,
        energy_because=power.because,
        total=whole,
        margin=document.margin,
        price_per_piece=None
        if document.margin is None
        else whole / pieces / (1.0 - document.margin),
        drivers=_drivers(ingredients, labour, energy, whole),
        missing=tuple(each.name for each in ingredients if each.cost is None),
    )


def _weighed(
    reckoning: Reckoning, required: Mapping[str, Requirement]
) -> dict[str, tuple[str, str, float]]:
    """Id, name and mass of every ingredient of the batch; water from the tap costs nothing."""
    found: dict[str, tuple[str, str, float]] = {}
    for component in reckoning.dessert.components:
        for line in component.lines:
            mass = line.mass * required[component.id].factor
            if line.ingredient is None or line.ingredient.id == WATER or mass <= 0.0:
                continue
            ingredient = line.ingredient
            before = found.get(ingredient.id, ("", "", 0.0))[2]
            found[ingredient.id] = (ingredient.id, ingredient_name(ingredient), before + mass)
    return found


def _ingredient(id: str, name: str, mass: float, prices: Mapping[str, Price]) -> IngredientCost:
    price = prices.get(id)
    if price is None:
        return IngredientCost(id=id, name=name, mass=mass, cost=None, packs=None, packs_cost=None)
    packs = math.ceil(mass / (price.pack_mass * price.usable) - 1e-9)
    return IngredientCost(
        id=id,
        name=name,
        mass=mass,
        cost=mass * price.per_kilogram,
        packs=packs,
        packs_cost=packs * price.pack_price,
        pack=price.pack,
    )


def _components(
    reckoning: Reckoning, required: Mapping[str, Requirement], per_kilogram: Mapping[str, float]
) -> tuple[ComponentCost, ...]:
    found = []
    for component in reckoning.dessert.components:
        factor = required[component.id].factor
        lines = [i for i in component.lines if i.ingredient and i.ingredient.id != WATER]
        costs = [
            per_kilogram.get(line.ingredient.id, 0.0) * line.mass * factor
            for line in lines
            if line.ingredient
        ]
        if factor > 0.0:
            complete = all(i.ingredient and i.ingredient.id in per_kilogram for i in lines)
            found.append(
                ComponentCost(
                    id=component.id, name=component.name, cost=math.fsum(costs), complete=complete
                )
            )
    return tuple(found)


def _hands(reckoning: Reckoning, required: Mapping[str, Requirement], pieces: int) -> float:
    """Minutes of hands for the batch, as a plan counts them."""
    document = reckoning.dessert.document
    made = [c for c in reckoning.dessert.components if required[c.id].ready > 0.0]
    steps = [step for component in made for step in component.steps] + list(document.assembly)
    return math.fsum(hands_on(step, document.pieces).minutes(pieces) for step in steps)


def _drivers(
    ingredients: tuple[IngredientCost, ...],
    labour: float | None,
    energy: float | None,
    whole: float,
) -> tuple[Driver, ...]:
    costs = [(each.name, each.cost or 0.0) for each in ingredients if each.cost is not None]
    costs += [(say("Hands"), labour)] if labour is not None else []
    costs += [(say("Oven and freezer"), energy)] if energy is not None else []
    costs.sort(key=lambda item: -item[1])
    return tuple(
        Driver(name=name, cost=cost, share=cost / whole if whole > 0.0 else 0.0)
        for name, cost in costs
    )
