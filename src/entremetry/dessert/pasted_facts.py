"""What a pasted text says about the whole: how many it makes, how long it takes."""

from __future__ import annotations

import re
from dataclasses import dataclass

from entremetry.dessert.said_time import said_times

_COUNT = re.compile(
    r"(?P<word>serves|makes|yields?|servings?|portions?|rendement|quantité)\s*:?\s*(?P<said>.*\d.*)"
    r"|pour\s+(?P<french>\d{1,4}\s+(?:personnes|pièces|parts|portions))\W*",
    re.IGNORECASE,
)
_TIME = re.compile(
    r"(?P<word>prep(?:aration)?|cook(?:ing)?|total|temps total|préparation|cuisson)"
    r"(?:\s+time)?\s*:\s*(?P<said>.*\d.*)",
    re.IGNORECASE,
)
_NUMBER = re.compile(r"\d{1,5}")
_PIECES = re.compile(
    r"(\d{1,5})\s+(?:\w+\s+){0,2}(?:pieces|piece|domes?|cakes?|bars?|tartlets?|glasses|entremets?|"
    r"desserts?|logs?|rings?|pièces?|bûches?)\b",
    re.IGNORECASE,
)
_WORDS = {
    "prep": "preparation",
    "préparation": "preparation",
    "cook": "cooking",
    "cuisson": "cooking",
    "temps total": "total",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A line about the whole: `about` is yield, preparation, cooking or total."""

    about: str
    said: str
    seconds: float | None = None

    @property
    def pieces(self) -> int | None:
        """Number of pieces, where the words count pieces and not people."""
        found = _PIECES.findall(self.said) if self.about == "yield" else []
        numbers = _NUMBER.findall(self.said)
        return int(found[0]) if len(found) == 1 and len(numbers) == 1 else None

    @property
    def number(self) -> str:
        """The only number said; empty if there is none, or more than one."""
        numbers = _NUMBER.findall(self.said)
        return numbers[0] if len(numbers) == 1 else ""


def fact_of(line: str) -> Fact | None:
    """What a line says about the whole; None if it is a line of another kind."""
    bare = line.strip().strip("*_ ")
    if len(bare) > 120:
        return None
    if count := _COUNT.fullmatch(bare):
        word = (count["word"] or "").casefold()
        said = count["french"] or count["said"]
        people = word in ("serves", "serving", "servings") and said.strip().isdecimal()
        return Fact(about="yield", said=f"{said} servings" if people else said)
    if time := _TIME.fullmatch(bare):
        word = time["word"].casefold()
        times = said_times(time["said"])
        seconds = times[0].seconds if len(times) == 1 else None
        return Fact(about=_WORDS.get(word, word), said=time["said"], seconds=seconds)
    return None
