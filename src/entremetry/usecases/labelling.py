"""What a label says of a dessert, and what it costs."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import QuantityError, UnknownName, nearest_names
from entremetry.labels.cost import Cost, Hands, batch_cost
from entremetry.labels.label import Label, label
from entremetry.labels.naming import Rules
from entremetry.store.files import read_text
from entremetry.usecases.batch import (
    Surroundings,
    reckoned_as_spoken,
    surroundings,
    surroundings_of,
)
from entremetry.usecases.pieces import require_pieces
from entremetry.words import either, say, say_later, speaking

if TYPE_CHECKING:
    from entremetry.labels.price_document import PriceDocument
    from entremetry.larder.larder import Larder


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """A price document at hand as text, and what to call it.

    One that is `shared` by several desserts may price what this one does not know. Hands are
    taken from the text of a `plan`, if there is one.
    """

    text: str
    file: str = "prices"
    shared: bool = False
    plan: str | None = None


def label_of(
    path: Path,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    kitchen: Path | None = None,
    rules: str = "eu",
    prices: Path | None = None,
    plan: Path | None = None,
) -> Label:
    """The label of a document in a file.

    Raises
    ------
    EntremetryError
        With one message that says what, where and how to mend it.
    """
    text = read_text(path, what=say_later("dessert document"))
    given = None
    if prices is not None:
        planned = None if plan is None else read_text(plan, what=say_later("plan"))
        given = Prices(
            text=read_text(prices, what=say_later("price document")), file=str(prices), plan=planned
        )
    elif plan is not None:
        raise QuantityError(
            say("a plan without prices"), say("--plan FILE together with --prices FILE")
        )
    around = surroundings_of(path, kitchen)
    return _label(text, str(path), around, mould, pieces, rules, given)


def label_of_text(
    text: str,
    *,
    file: str = "document",
    pieces: int | None = None,
    mould: str | None = None,
    kitchen_text: str | None = None,
    rules: str = "eu",
    prices: Prices | None = None,
) -> Label:
    """The label of a document at hand as text; see `label_of`."""
    around = surroundings(kitchen_text, "kitchen")
    return _label(text, file, around, mould, pieces, rules, prices)


def _label(
    text: str,
    file: str,
    around: Surroundings,
    mould: str | None,
    pieces: int | None,
    rules: str,
    prices: Prices | None,
) -> Label:
    chosen = rules_named(rules)
    with speaking(chosen.language):
        return _drafted(
            reckoned_as_spoken(text, file, around, mould), around, pieces, chosen, prices
        )


def _drafted(
    reckoning: Reckoning,
    around: Surroundings,
    pieces: int | None,
    rules: Rules,
    prices: Prices | None,
) -> Label:
    number = reckoning.dessert.document.pieces if pieces is None else pieces
    require_pieces(number)
    cost = None if prices is None else _cost(reckoning, number, prices, around)
    return label(reckoning, pieces=number, rules=rules, cost=cost)


def rules_named(name: str) -> Rules:
    """Rules by their name; QuantityError if there are none of it."""
    known = [rules.value for rules in Rules]
    if name.casefold() not in known:
        found = say("rules '{name}'", name=name)
        raise QuantityError(found, either(known), nearest_names(name, known))
    return Rules(name.casefold())


def _cost(reckoning: Reckoning, pieces: int, prices: Prices, around: Surroundings) -> Cost:
    from entremetry.labels.price_document import read_prices
    from entremetry.labels.pricing import priced

    document, tree = read_prices(prices.text, file=prices.file)
    dessert = reckoning.dessert
    if prices.shared:
        document = _known(document, dessert.larder)
    by_id = priced(
        document,
        dessert.larder,
        measures=around.measures(dessert.document),
        tree=tree,
        file=prices.file,
    )
    return batch_cost(
        reckoning, pieces, by_id, document, planned=_planned(prices.plan, reckoning, pieces)
    )


def _planned(plan: str | None, reckoning: Reckoning, pieces: int) -> Hands | None:
    """Hands of a plan, in proportion if it is for another number of pieces."""
    from entremetry.usecases.planned_hands import planned_hands

    if plan is None:
        return None
    found = planned_hands(plan, reckoning.dessert.document.id)
    because = say(
        "this dessert's hands-on time in the plan for {pieces} pieces", pieces=found.pieces
    )
    if found.pieces != pieces:
        because = say("{reason}, in proportion to the pieces", reason=because)
    return Hands(minutes=found.minutes * pieces / found.pieces, because=because)


def _known(document: PriceDocument, larder: Larder) -> PriceDocument:
    """The prices of what a larder has."""
    kept = {name: price for name, price in document.prices.items() if knows(larder, name)}
    return document.model_copy(update={"prices": kept})


def knows(larder: Larder, name: str) -> bool:
    """Whether a larder has an ingredient of this id or name."""
    try:
        larder.find(name)
    except UnknownName:
        return False
    return True
