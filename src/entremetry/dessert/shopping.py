"""What to buy for a batch, in the units it is sold in, and what rounding does."""

from __future__ import annotations

import math
from collections.abc import Iterable

from entremetry.dessert.batch_sheet import Purchase
from entremetry.dessert.region import is_elsewhere
from entremetry.larder.ingredient import Ingredient, Pack
from entremetry.larder.spoken_name import ingredient_name
from entremetry.quantities import format_mass
from entremetry.quantities.things import things
from entremetry.words import decimal, say

FROM_THE_TAP = frozenset({"water"})
EXACT = 0.005  # share of a mass that is called exact


def shopping(weighed: Iterable[tuple[Ingredient, float]], measures: str) -> tuple[Purchase, ...]:
    """Add up each ingredient over all components and put it in packs. Masses in kg."""
    total: dict[str, float] = {}
    known: dict[str, Ingredient] = {}
    for ingredient, mass in weighed:
        known[ingredient.id] = ingredient
        total[ingredient.id] = total.get(ingredient.id, 0.0) + mass
    bought = [ingredient for ingredient in known.values() if ingredient.id not in FROM_THE_TAP]
    return tuple(_purchase(i, total[i.id], measures) for i in bought)


def _purchase(ingredient: Ingredient, mass: float, measures: str) -> Purchase:
    gross = mass / (1.0 - ingredient.refuse)
    packs = tuple(pack for pack in ingredient.packs if not is_elsewhere(pack.name, measures))
    if not packs:
        return _loose(ingredient, mass, gross)
    pack, count = _fewest_left_over(packs, gross)
    bought = count * pack.mass
    return Purchase(
        id=ingredient.id,
        name=ingredient_name(ingredient),
        mass=mass,
        buy=f"{count} × {things(pack.name)}"
        + ("" if pack.whole else f" ({format_mass(pack.mass)})"),
        bought_mass=bought,
        left_over=max(0.0, bought - gross),
        effect=_effect(pack, gross) if pack.whole else "",
    )


def _loose(ingredient: Ingredient, mass: float, gross: float) -> Purchase:
    bought = format_mass(gross)
    return Purchase(
        id=ingredient.id,
        name=ingredient_name(ingredient),
        mass=mass,
        buy=say("{mass} as bought", mass=bought) if ingredient.refuse else bought,
        bought_mass=gross,
        left_over=0.0,
    )


def _fewest_left_over(packs: tuple[Pack, ...], mass: float) -> tuple[Pack, int]:
    choices = [(pack, _count(pack, mass)) for pack in packs]
    return min(choices, key=lambda choice: (choice[1] * choice[0].mass, choice[1]))


def _count(pack: Pack, mass: float) -> int:
    """How many are enough; of whole ones, so many as come within what no scale would show."""
    exact = mass / pack.mass
    spare = EXACT * exact if pack.whole else 1e-9
    return max(1, math.ceil(exact - spare))


def _effect(pack: Pack, mass: float) -> str:
    """What happens if one does not weigh but takes whole ones."""
    exact = mass / pack.mass
    nearest = max(1, round(exact))
    if abs(nearest / exact - 1.0) < EXACT:
        return say("{number} whole: exact", number=nearest)
    needed, weighed = decimal(f"{exact:.1f}"), format_mass(mass)
    below, above = math.floor(exact), math.ceil(exact)
    if not below:
        return say(
            "needs {number}: taking {change}; weigh {mass} to be exact",
            number=needed,
            change=_change(above, exact),
            mass=weighed,
        )
    return say(
        "needs {number}: taking {less} and {more}; weigh {mass} to be exact",
        number=needed,
        less=_change(below, exact),
        more=_change(above, exact),
        mass=weighed,
    )


def _change(number: int, exact: float) -> str:
    change = number / exact - 1.0
    percent = f"{abs(change) * 100:.0f}"
    if change > 0:
        return say("{number} whole is {percent}% more", number=number, percent=percent)
    return say("{number} whole is {percent}% less", number=number, percent=percent)
