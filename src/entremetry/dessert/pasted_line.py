"""One pasted line of a formula taken apart: how much, of what, and what is said beside it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from entremetry.errors import QuantityError
from entremetry.quantities import Kind, Measures
from entremetry.quantities.amount import KNOWN_THINGS, singular
from entremetry.quantities.spelling import unit_called

_FRACTIONS = "¼½¾⅓⅔⅛⅜⅝⅞"
_NUMBER = re.compile(
    rf"^(?:\d+\s+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?\s*[{_FRACTIONS}]|[{_FRACTIONS}]|\d+(?:[.,]\d+)?)"
    r"(?![\d/])"
)
_BULLET = re.compile(r"^\s*(?:[-*•–·]\s+)?")
_NOTE = re.compile(r"\s*\(([^)]*)\)\s*$|\s*,\s*([^,]*)$")
MOST_UNIT_WORDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedLine:
    """`number` and `unit` as written, either may be empty; `needs_country` for cups and spoons."""

    written: str
    number: str
    unit: str
    kind: Kind | None
    name: str
    note: str = ""
    needs_country: bool = False

    @property
    def amount(self) -> str:
        """Number and unit as a document writes them."""
        return f"{self.number} {self.unit}".strip()


def pasted_line(text: str) -> PastedLine:
    """Take a line such as '1 1/2 tbsp corn starch, sifted' apart; nothing is guessed."""
    bare = _BULLET.sub("", text).strip()
    found = _NUMBER.match(bare)
    number = found.group().strip() if found else ""
    unit, kind, rest = _unit(bare[found.end() :].strip() if found else bare)
    name, note = _without_note(re.sub(r"^(?:of|de|d'|d’)\s+", "", rest, flags=re.IGNORECASE))
    return PastedLine(
        written=text.strip(),
        number=number,
        unit=unit,
        kind=kind,
        name=name,
        note=note,
        needs_country=kind is Kind.VOLUME and _needs_country(unit),
    )


def is_blank(text: str) -> bool:
    """Tell whether a pasted line holds nothing."""
    return not _BULLET.sub("", text).strip()


def _unit(words: str) -> tuple[str, Kind | None, str]:
    """Longest unit at the start, its kind, and what follows it."""
    parts = words.split()
    for count in range(min(MOST_UNIT_WORDS, len(parts) - 1), 0, -1):
        spelled = " ".join(parts[:count])
        kind = _kind_of(spelled)
        if kind is not None:
            return spelled, kind, " ".join(parts[count:])
    return "", None, words


def _kind_of(spelled: str) -> Kind | None:
    try:
        unit = unit_called(spelled, Measures.US)
    except QuantityError:
        return None
    if unit is not None:
        return unit.kind if unit.kind in (Kind.MASS, Kind.VOLUME) else None
    return Kind.COUNT if singular(spelled).casefold() in KNOWN_THINGS else None


def _needs_country(unit: str) -> bool:
    try:
        unit_called(unit)
    except QuantityError:
        return True
    return False


def _without_note(name: str) -> tuple[str, str]:
    found = _NOTE.search(name)
    if not found:
        return name.strip(), ""
    return name[: found.start()].strip(), (found.group(1) or found.group(2) or "").strip()
