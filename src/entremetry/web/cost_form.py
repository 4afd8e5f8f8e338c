"""Prices as they are typed, put into the price list of the library."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any

from entremetry.documents import read_tree
from entremetry.documents.tree import field_text
from entremetry.errors import Fault
from entremetry.usecases.price_list import keys_by_id, with_pack, with_values
from entremetry.words import say, say_later

if TYPE_CHECKING:
    from entremetry.larder.larder import Larder

WHOLE: Mapping[str, str] = {
    "currency": say_later("Currency"),
    "labour_per_hour": say_later("An hour of hands"),
    "energy_per_kwh": say_later("A kilowatt hour"),
    "margin": say_later("Wanted margin"),
}
NUMBER = re.compile(r"[0-9]+([.,][0-9]+)?")
PACK, PRICE = "pack:", "price:"


def typed_from(text: str, ids: Iterable[str], larder: Larder) -> dict[str, str]:
    """Fields as the list fills them."""
    data = read_tree(text, file="prices").data
    prices, keys = data.get("prices") or {}, keys_by_id(text, larder)
    fields = {name: _said(data.get(name)) for name in WHOLE}
    for each in ids:
        entry = prices.get(keys.get(each, ""), {})
        fields[PACK + each] = _said(entry.get("pack"))
        fields[PRICE + each] = _said(entry.get("price"))
    return fields


def text_from(
    text: str, fields: Mapping[str, str], ids: Iterable[str], larder: Larder
) -> tuple[str, dict[str, str]]:
    """The list with what was typed, and which form field each of its fields came from."""
    keys = keys_by_id(text, larder)
    whole: dict[str, Any] = {name: _value(fields.get(name, "")) for name in WHOLE}
    whole["currency"] = str(fields.get("currency", "")).strip().upper() or "EUR"
    text = with_values(text, whole)
    origin = {name: name for name in WHOLE}
    for each in ids:
        pack, price = fields.get(PACK + each, "").strip(), _value(fields.get(PRICE + each, ""))
        key = keys.get(each, each)
        text = with_pack(text, key, pack, price)
        for name, field in (("pack", PACK), ("price", PRICE)):
            origin[field_text(("prices", key, name))] = field + each
    return text, origin


def empty_halves(fields: Mapping[str, str], ids: Iterable[str]) -> dict[str, str]:
    """A pack without a price, or a price without a pack, by field."""
    faults = {}
    for each in ids:
        pack, price = fields.get(PACK + each, "").strip(), fields.get(PRICE + each, "").strip()
        if pack and not price:
            faults[PRICE + each] = say("Say what the pack costs.")
        if price and not pack:
            faults[PACK + each] = say("Say what the pack holds, such as 1 kg.")
    return faults


def by_field(faults: Iterable[Fault], origin: Mapping[str, str]) -> dict[str, str]:
    """Faults of the list in words, by the field of the form; what has none is under ''."""
    found: dict[str, str] = {}
    for fault in faults:
        name = origin.get(fault.field, "")
        words = say("Found {found}; {accepted}.", found=fault.found, accepted=fault.accepted)
        found[name] = words if name else say("{field}: {words}", field=fault.field, words=words)
    return found


def _value(typed: str) -> Any:
    """A number where a number is typed, None for nothing, else the text as it is."""
    text = typed.strip()
    if NUMBER.fullmatch(text):
        return float(text.replace(",", "."))
    return text or None


def _said(value: Any) -> str:
    if value is None:
        return ""
    return f"{value:g}" if isinstance(value, float) else str(value)
