"""The price list of the library: one document for all desserts, edited entry by entry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from entremetry.documents import edited, read_tree, removed
from entremetry.errors import UnknownName
from entremetry.store import Kind

if TYPE_CHECKING:
    from entremetry.larder.larder import Larder
    from entremetry.store.library import Library

PRICES = "prices"
STARTER = "entremetry_prices: 1\ncurrency: EUR\nprices: {}\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceList:
    """Text of the list; revision 0 is a list that was never written."""

    text: str
    revision: int
    can_undo: bool


def price_list(library: Library) -> PriceList:
    """The price list in its newest state."""
    found = library.find(Kind.PRICES, PRICES)
    if found is None:
        return PriceList(text=STARTER, revision=0, can_undo=False)
    revision = found.revision
    return PriceList(
        text=found.text, revision=revision.number, can_undo=revision.parent is not None
    )


def save_price_list(library: Library, text: str, *, started_from: int) -> PriceList:
    """Keep a new state of the list, as one unit of work.

    Raises
    ------
    DocumentError
        With all faults; nothing is kept.
    Conflict
        If somebody saved meanwhile; nothing is kept.
    """
    from entremetry.labels.price_document import read_prices

    read_prices(text, file=PRICES)
    library.put(Kind.PRICES, PRICES, text, started_from=started_from)
    return price_list(library)


def undo_price_list(library: Library, *, started_from: int) -> PriceList:
    """Go one state back; Conflict if somebody saved meanwhile, StoreError at the first state."""
    library.undo(Kind.PRICES, PRICES, started_from=started_from)
    return price_list(library)


def keys_by_id(text: str, larder: Larder) -> dict[str, str]:
    """Under which name the list has the ingredients that a larder knows."""
    found: dict[str, str] = {}
    for name in read_tree(text, file=PRICES).data.get("prices") or {}:
        try:
            found.setdefault(larder.find(name).id, name)
        except UnknownName:
            continue
    return found


def with_values(text: str, values: Mapping[str, Any]) -> str:
    """The list with currency, wage, energy or margin set; None takes one out."""
    data = read_tree(text, file=PRICES).data
    for name, value in values.items():
        if value is not None:
            text = edited(text, (name,), value)
        elif name in data:
            text = removed(text, (name,))
    return text


def with_pack(text: str, key: str, pack: str, price: Any) -> str:
    """The list with the pack of an ingredient and its price; without both it is taken out."""
    prices = read_tree(text, file=PRICES).data.get("prices") or {}
    if not pack and price is None:
        return removed(text, ("prices", key)) if key in prices else text
    if key not in prices:
        return edited(text, ("prices", key), {"pack": pack, "price": price})
    return edited(edited(text, ("prices", key, "pack"), pack), ("prices", key, "price"), price)
