"""Temperatures in a sentence, and which of them it leaves to choose from."""

from __future__ import annotations

import re

from entremetry.quantities import Kind, find_slips
from entremetry.quantities.mentions import Mention, mentions, pairs

_GAS = re.compile(r"\bgas(?: mark)? ?[1-9¼½]\b", re.IGNORECASE)


def temperatures(text: str) -> tuple[str, ...]:
    """Temperatures that a text leaves to choose from; one if a pair agrees, both if it does not."""
    every = [m for m in mentions(text) if m.kind is Kind.TEMPERATURE]
    slips = {slip.start for slip in find_slips(text)}
    doubled = {b.start for a, b in pairs(text) if a.kind is Kind.TEMPERATURE}
    kept = [m for m in every if m.start not in doubled or m.start in slips]
    said = [f"{number} {_degree(m)}" for m in kept for number in m.written]
    if not every:
        said = [gas.group() for gas in _GAS.finditer(text)]
    return tuple(dict.fromkeys(said))


def _degree(mention: Mention) -> str:
    return mention.units[0].name
