"""What a label says of a dessert, and what it costs."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from entremetry.dessert.document import MAX_PIECES
from entremetry.dessert.reckoning import Reckoning
from entremetry.errors import QuantityError, nearest_names
from entremetry.labels.cost import Cost, batch_cost
from entremetry.labels.label import Label, label
from entremetry.labels.naming import Rules
from entremetry.store.files import read_text
from entremetry.usecases.batch import (
    Surroundings,
    reckoned_as_spoken,
    surroundings,
    surroundings_of,
)
from entremetry.words import speaking


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """A price document at hand as text, and what to call it."""

    text: str
    file: str = "prices"


def label_of(
    path: Path,
    *,
    pieces: int | None = None,
    mould: str | None = None,
    kitchen: Path | None = None,
    rules: str = "eu",
    prices: Path | None = None,
) -> Label:
    """The label of a document in a file.

    Raises
    ------
    EntremetryError
        With one message that says what, where and how to mend it.
    """
    text = read_text(path, what="dessert document")
    given = None
    if prices is not None:
        given = Prices(text=read_text(prices, what="price document"), file=str(prices))
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
    if not 1 <= number <= MAX_PIECES:
        raise QuantityError(f"{number} pieces", f"1 to {MAX_PIECES} pieces")
    cost = None if prices is None else _cost(reckoning, number, prices, around)
    return label(reckoning, pieces=number, rules=rules, cost=cost)


def rules_named(name: str) -> Rules:
    """Rules by their name; QuantityError if there are none of it."""
    known = [rules.value for rules in Rules]
    if name.casefold() not in known:
        raise QuantityError(f"rules '{name}'", " or ".join(known), nearest_names(name, known))
    return Rules(name.casefold())


def _cost(reckoning: Reckoning, pieces: int, prices: Prices, around: Surroundings) -> Cost:
    from entremetry.labels.price_document import read_prices
    from entremetry.labels.pricing import priced

    document, tree = read_prices(prices.text, file=prices.file)
    dessert = reckoning.dessert
    by_id = priced(
        document,
        dessert.larder,
        measures=around.measures(dessert.document),
        tree=tree,
        file=prices.file,
    )
    return batch_cost(reckoning, pieces, by_id, document)
