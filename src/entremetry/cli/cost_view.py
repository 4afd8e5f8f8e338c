"""The cost of a batch as JSON and as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from entremetry.labels.cost import Cost
from entremetry.labels.english import percent
from entremetry.quantities import format_fraction
from entremetry.quantities.rounding import fixed
from entremetry.words import decimal, say, say_count

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
    pieces = cost.pieces
    yield say_count(
        "Cost of {number} piece, in {currency}",
        "Cost of {number} pieces, in {currency}",
        pieces,
        currency=cost.currency,
    )
    piece, serving, batch = say("a piece"), say("a serving"), say("the batch")
    yield f"  {piece:<34}{_amount(cost.per_piece, cost.missing):>18}"
    for each in cost.components:
        yield f"    {each.name:<32}{_amount(each.cost / pieces, not each.complete):>18}"
    if cost.labour is not None:
        hands = say("hands, {minutes} min in all", minutes=f"{cost.labour_minutes:.0f}")
        yield f"    {hands:<32}{_amount(cost.labour / pieces):>18}"
    if cost.energy:
        power = decimal(f"{cost.energy_kwh:.1f}")
        power = say("oven and freezer, about {energy} kWh", energy=power)
        yield f"    {power:<32}{_amount(cost.energy / pieces):>18}"
    if serves > 1:
        yield f"  {serving:<34}{_amount(cost.per_piece / serves, cost.missing):>18}"
    yield f"  {batch:<34}{_amount(cost.total, cost.missing):>18}"
    if cost.price_per_piece is not None and cost.margin is not None:
        wanted = say("a piece, for a margin of {share}", share=format_fraction(cost.margin))
        yield f"  {wanted:<34}{_amount(cost.price_per_piece, cost.missing):>18}"
    yield from (f"  {line}" for line in _remarks(cost))


def _amount(money: float, at_least: object = False) -> str:
    """Money to the cent; with a price that is missing no more than a lower bound."""
    amount = decimal(fixed(money, 2))
    return say("at least {amount}", amount=amount) if at_least else amount


def _remarks(cost: Cost) -> Iterator[str]:
    if cost.pieces_made > cost.pieces:
        yield say(
            "{made} pieces come of it; {pieces} bear the cost.",
            made=cost.pieces_made,
            pieces=cost.pieces,
        )
    yield from _waste(cost)
    drivers = [d for d in cost.drivers[:SHOWN_DRIVERS] if d.share >= WORTH_A_WORD]
    if drivers:
        named = ", ".join(f"{driver.name} {percent(driver.share)}" for driver in drivers)
        yield say("What drives it: {drivers}", drivers=named)
    if cost.missing:
        yield say("No price: {ingredients}", ingredients=", ".join(cost.missing))
    if cost.labour is not None:
        yield say("Hands: {reason}.", reason=cost.labour_because)
    if cost.energy:
        yield say("Energy is an estimate: {reason}.", reason=cost.energy_because)


def _waste(cost: Cost) -> Iterator[str]:
    whole, waste = cost.ingredients_total, cost.waste
    if whole <= 0.0:
        return
    strained_out = say(", {amount} is strained out", amount=_amount(waste.taken_out))
    yield say(
        "Of {whole} for ingredients, {in_pieces} is in the pieces, {left_behind} stays in pans and "
        "bags, {spare} is offcuts, run-off and spare{strained_out}.",
        whole=_amount(whole),
        in_pieces=_amount(waste.in_pieces),
        left_behind=_amount(waste.left_behind),
        spare=_amount(waste.spare),
        strained_out=strained_out if waste.taken_out > 0.0 else "",
    )
    yield say(
        "Bought in whole packs: {packs}, of which {left} is left in opened packs, peel and stones "
        "apart.",
        packs=_amount(cost.whole_packs_total),
        left=_amount(cost.whole_packs_total - whole),
    )
