"""The cost of a batch as JSON and as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from entremetry.labels.cost import Cost
from entremetry.quantities import format_fraction
from entremetry.quantities.rounding import fixed

SHOWN_DRIVERS = 8
WORTH_A_WORD = 0.005  # share of the cost from which a driver is shown


def cost_as_json(cost: Cost, serves: int) -> dict[str, Any]:
    """The cost of the batch, unless a key says otherwise; amounts end in their currency."""
    unit = cost.currency.lower()

    def money(**amounts: float | None) -> dict[str, float | None]:
        return {
            f"{name}_{unit}": None if value is None else round(value, 4)
            for name, value in amounts.items()
        }

    return {
        "currency": cost.currency,
        "at_least": bool(cost.missing),
        "missing_prices": list(cost.missing),
        "pieces": cost.pieces,
        "pieces_made": cost.pieces_made,
        **money(
            total=cost.total,
            per_piece=cost.per_piece,
            per_serving=cost.per_piece / serves,
            ingredients=cost.ingredients_total,
            whole_packs=cost.whole_packs_total,
        ),
        "waste": money(
            in_pieces=cost.waste.in_pieces,
            left_behind=cost.waste.left_behind,
            spare=cost.waste.spare,
            taken_out=cost.waste.taken_out,
        ),
        **money(labour=cost.labour, energy=cost.energy, price_per_piece=cost.price_per_piece),
        "labour_min": round(cost.labour_minutes, 1),
        "labour_because": cost.labour_because,
        "energy_kwh": round(cost.energy_kwh, 3),
        "energy_because": cost.energy_because,
        "margin_percent": None if cost.margin is None else round(cost.margin * 100.0, 2),
        "components": [
            {
                "id": each.id,
                "name": each.name,
                **money(cost=each.cost, per_piece=each.cost / cost.pieces),
                "at_least": not each.complete,
            }
            for each in cost.components
        ],
        "ingredients": [
            {
                "id": each.id,
                "name": each.name,
                "mass_g": round(each.mass * 1e3, 3),
                "pack": each.pack,
                "packs": each.packs,
                **money(cost=each.cost, packs_cost=each.packs_cost),
            }
            for each in cost.ingredients
        ],
        "drivers": [
            {
                "name": driver.name,
                **money(cost=driver.cost),
                "share_percent": round(driver.share * 100.0, 2),
            }
            for driver in cost.drivers
        ],
    }


def cost_lines(cost: Cost, serves: int) -> Iterator[str]:
    """The cost as one reads it in a terminal."""
    least = "at least " if cost.missing else ""
    unit, pieces = cost.currency, cost.pieces
    yield f"Cost of {pieces} piece{'s' if pieces > 1 else ''}, in {unit}"
    yield f"  {'a piece':<34}{least + fixed(cost.per_piece, 2):>18}"
    for each in cost.components:
        amount = fixed(each.cost / pieces, 2)
        yield f"    {each.name:<32}{('' if each.complete else 'at least ') + amount:>18}"
    if cost.labour is not None:
        hands = f"hands, {cost.labour_minutes:.0f} min in all"
        yield f"    {hands:<32}{fixed(cost.labour / pieces, 2):>18}"
    if cost.energy:
        power = f"oven and freezer, about {cost.energy_kwh:.1f} kWh"
        yield f"    {power:<32}{fixed(cost.energy / pieces, 2):>18}"
    if serves > 1:
        yield f"  {'a serving':<34}{least + fixed(cost.per_piece / serves, 2):>18}"
    yield f"  {'the batch':<34}{least + fixed(cost.total, 2):>18}"
    if cost.price_per_piece is not None and cost.margin is not None:
        wanted = f"a piece, for a margin of {format_fraction(cost.margin)}"
        yield f"  {wanted:<34}{least + fixed(cost.price_per_piece, 2):>18}"
    if cost.pieces_made > pieces:
        yield f"  {cost.pieces_made} pieces come of it; {pieces} bear the cost."
    yield from _waste(cost)
    drivers = [d for d in cost.drivers[:SHOWN_DRIVERS] if d.share >= WORTH_A_WORD]
    if drivers:
        named = ", ".join(f"{driver.name} {driver.share:.0%}" for driver in drivers)
        yield f"  What drives it: {named}"
    if cost.missing:
        yield f"  No price: {', '.join(cost.missing)}"
    if cost.labour is not None:
        yield f"  Hands: {cost.labour_because}."
    if cost.energy:
        yield f"  Energy is an estimate: {cost.energy_because}."


def _waste(cost: Cost) -> Iterator[str]:
    whole, waste = cost.ingredients_total, cost.waste
    if whole <= 0.0:
        return
    yield (
        f"  Of {fixed(whole, 2)} for ingredients, {fixed(waste.in_pieces, 2)} is in the pieces, "
        f"{fixed(waste.left_behind, 2)} stays in pans and bags, "
        f"{fixed(waste.spare, 2)} is offcuts, run-off and spare"
        + (f", {fixed(waste.taken_out, 2)} is strained out." if waste.taken_out > 0.0 else ".")
    )
    left = cost.whole_packs_total - whole
    yield (
        f"  Bought in whole packs: {fixed(cost.whole_packs_total, 2)}, of which {fixed(left, 2)} "
        "is left in opened packs, peel and stones apart."
    )
