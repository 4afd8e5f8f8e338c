"""One pasted line of a formula taken apart: how much, of what, and what is said beside it."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from entremetry.dessert.pasted_words import bare_line, of_fruit
from entremetry.errors import QuantityError
from entremetry.quantities import Kind, Measures
from entremetry.quantities.amount import KNOWN_THINGS, singular
from entremetry.quantities.number import NUMBER_PATTERN
from entremetry.quantities.spelling import unit_called

_NUMBER = re.compile(rf"(?:{NUMBER_PATTERN})(?![\d/])")
_RANGE = re.compile(rf"({NUMBER_PATTERN})\s*(?:-|–|—|to|or|à|ou)\s*({NUMBER_PATTERN})(?![\d/])")
_JOINT = re.compile(r"^(?:\+|and|plus|et)?\s*(?=[\d¼½¾⅓⅔⅛⅜⅝⅞])")
_OF = re.compile(r"^(?:of\s+|de\s+la\s+|de\s+|du\s+|des\s+|d['’]\s*|x\s+)", re.IGNORECASE)
_FIRST_NOTE = re.compile(r"^\(([^)]*)\)\s*")
_LAST_NOTE = re.compile(
    r"\s*\(([^)]*)\)\s*$|\s*[,;]\s*([^,;()]*)$"
    r"|\s+((?:to taste|as needed|for dusting|plus (?:extra|more)|à volonté|pour le moule)\b"
    r"[^,;()]*)$",
    re.IGNORECASE,
)
_BEFORE_AMOUNT = " \t:=–—-"
MOST_UNIT_WORDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class PastedLine:
    """`number` and `unit` as written, either may be empty; `needs_country` for cups and spoons.

    `either` holds both ends of a range such as '100-120 g', which somebody must choose from.
    """

    written: str
    number: str
    unit: str
    kind: Kind | None
    name: str
    note: str = ""
    needs_country: bool = False
    either: tuple[str, ...] = ()

    @property
    def amount(self) -> str:
        """Number and unit as a document writes them."""
        return f"{self.number} {self.unit}".strip()


def pasted_line(text: str) -> PastedLine:
    """Take a line such as '1 1/2 tbsp corn starch, sifted' apart; nothing is guessed."""
    bare, note = bare_line(text)
    line = _of_fruit(bare) or _range(bare) or _amount_first(bare) or _amount_last(bare)
    line = line or _named(PastedLine(written="", number="", unit="", kind=None, name=""), bare)
    notes = ", ".join(part for part in (note, line.note) if part)
    return replace(line, written=text.strip(), note=notes)


def _of_fruit(bare: str) -> PastedLine | None:
    name, note = _without_notes(bare)
    found = of_fruit(name)
    if found is None:
        return None
    number, fruit, part = found
    said = ", ".join(word for word in (name, note) if word)
    return PastedLine(written="", number=number, unit=fruit, kind=Kind.COUNT, name=part, note=said)


def _range(bare: str) -> PastedLine | None:
    found = _RANGE.match(bare)
    if found is None:
        return None
    line = _amount_first(f"{found[2]}{bare[found.end() :]}")
    if line is None:
        return None
    either = tuple(f"{number.strip()} {line.unit}".strip() for number in found.groups())
    return replace(line, number="", either=either)


def _amount_first(bare: str) -> PastedLine | None:
    """Read '1 kg 200 g pears': as many numbers with units of one kind as stand at the start."""
    found = _NUMBER.match(bare)
    if found is None:
        return None
    number, after = found.group().strip(), bare[found.end() :].strip()
    pack = _FIRST_NOTE.match(after)  # 1 (400 ml) can
    unit, kind, rest = _unit(after[pack.end() :] if pack else after)
    rest = f"{pack.group()} {rest}" if pack else rest
    written = [unit]
    while kind in (Kind.MASS, Kind.VOLUME) and (more := _one_more(rest, kind)):
        another, rest = more
        written.append(another)
    line = PastedLine(
        written="",
        number=number,
        unit=" ".join(written).strip(),
        kind=kind,
        name="",
        needs_country=kind is Kind.VOLUME and _needs_country(unit),
    )
    return _named(line, rest)


def _one_more(rest: str, kind: Kind) -> tuple[str, str] | None:
    """A further number with its unit, and what follows it."""
    joint = _JOINT.match(rest)
    number = _NUMBER.match(rest, joint.end()) if joint else None
    if number is None:
        return None
    unit, its_kind, after = _unit(rest[number.end() :].strip())
    return (f"{number.group().strip()} {unit}", after) if its_kind is kind else None


def _amount_last(bare: str) -> PastedLine | None:
    """Read 'Caster sugar: 50 g', the way formulas of the trade are set."""
    words, note = _without_notes(bare)
    for found in _NUMBER.finditer(words):
        name = words[: found.start()].rstrip(_BEFORE_AMOUNT)
        line = _amount_first(f"{words[found.start() :]} it")
        if name and line is not None and line.name == "it" and line.kind is not None:
            return replace(line, name=name, note=note)
    return None


def _named(line: PastedLine, rest: str) -> PastedLine:
    """Put the name and what is said beside it to an amount."""
    first = _FIRST_NOTE.match(rest)
    name, note = _without_notes(_OF.sub("", rest[first.end() :] if first else rest))
    notes = ", ".join(part for part in (first.group(1) if first else "", note) if part)
    if line.kind is Kind.COUNT and f"{line.unit} {name}".casefold().startswith(("egg ", "egg-")):
        return replace(line, unit="", kind=None, name=f"{line.unit} {name}", note=notes)
    return replace(line, name=name, note=notes)


def _unit(words: str) -> tuple[str, Kind | None, str]:
    """Longest unit at the start, its kind, and what follows it."""
    parts = words.split()
    for count in range(min(MOST_UNIT_WORDS, len(parts)), 0, -1):
        spelled = " ".join(parts[:count])
        kind = _kind_of(spelled)
        if kind is not None and (count < len(parts) or kind is not Kind.COUNT):
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


def _without_notes(name: str) -> tuple[str, str]:
    """The name, and what stands behind commas and in brackets at its end."""
    notes: list[str] = []
    while found := _LAST_NOTE.search(name):
        notes.insert(0, next(filter(None, found.groups()), "").strip())
        name = name[: found.start()]
    return name.strip(), ", ".join(note for note in notes if note)
