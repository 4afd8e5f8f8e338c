"""Words of pasted lines that always mean the same, brought to the words the program reads."""

from __future__ import annotations

import re

_BULLET = re.compile(r"^\s*(?:[-*•–·▪◦+]\s+|\d{1,2}[.)]\s+(?=\S))?")
_ABOUT = re.compile(
    r"^(?:about|approximately|approx\.?|roughly|around|ca\.?|circa|environ|env\.|~|≈)\s*(?=[\d¼½¾⅓⅔⅛])",
    re.IGNORECASE,
)
_ONE = re.compile(
    r"^(?:an?|one|une?)\s+(?=(?:small |large |good |generous |heaped )?"
    r"(?:pinch|pod|bean|sheet|leaf|sprig|stick|sachet|packet|egg|lemon|lime|orange|pincée|gousse|"
    r"feuille|cup|tbsp|tablespoon|tsp|teaspoon|dash|drop|knob|handful|vanilla|clove|slice)\b)",
    re.IGNORECASE,
)
_OF_FRUIT = re.compile(
    r"^(?:the\s+)?(?:finely\s+)?(?:grated\s+)?(?P<part>juice|zest|zeste|jus)\s+(?:of|from|d['’]|de)\s*"
    r"(?P<number>an?|one|une?|\d+(?:\s+\d/\d|/\d+)?|[½¼])\s+(?P<fruit>[\w\s-]+)$",
    re.IGNORECASE,
)
_HALF = {"a": "1", "an": "1", "one": "1", "un": "1", "une": "1"}
_FRENCH: tuple[tuple[re.Pattern[str], str], ...] = tuple(
    (re.compile(pattern, re.IGNORECASE), instead)
    for pattern, instead in (
        (r"(?:c\.?|cuill(?:è|e)res?|cuil\.?)\s*(?:à|a)\s*(?:s\.?|soupe)(?=\s)", "metric tbsp"),
        (r"(?:c\.?|cuill(?:è|e)res?|cuil\.?)\s*(?:à|a)\s*(?:c\.?|caf(?:é|e))(?=\s)", "metric tsp"),
        (r"\bc(?:à|a)s(?=\s)", "metric tbsp"),
        (r"\bc(?:à|a)c(?=\s)", "metric tsp"),
        (r"\bjaunes?\s+d['’]\s*(?:œ|oe)ufs?\b", "egg yolks"),
        (r"\bblancs?\s+d['’]\s*(?:œ|oe)ufs?\b", "egg whites"),
        (r"\b(?:œ|oe)ufs?(?:\s+entiers?)?\b", "eggs"),
        (r"\bgousses?\s+de\s+vanille\b", "vanilla pods"),
        (r"\bfeuilles?\s+(?:de\s+)?g(?:é|e)latine\b", "sheets gelatine"),
        (r"\bpinc(?:é|e)es?\b", "pinch"),
    )
)


def bare_line(text: str) -> tuple[str, str]:
    """The line without its bullet and with plain words, and what has been set aside as a note."""
    bare = " ".join(unbulleted(text).split())
    note = ""
    if about := _ABOUT.match(bare):
        bare, note = bare[about.end() :], "about"
    bare = _ONE.sub("1 ", bare)
    for pattern, instead in _FRENCH:
        bare = pattern.sub(instead, bare)
    return bare, note


def unbulleted(text: str) -> str:
    """A line without its bullet or its number."""
    return _BULLET.sub("", text)


def is_blank(text: str) -> bool:
    """Tell whether a pasted line holds nothing but a bullet or a rule."""
    return not re.search(r"\w|[¼½¾⅓⅔⅛]", _BULLET.sub("", text))


def of_fruit(bare: str) -> tuple[str, str, str] | None:
    """Number, fruit and part of 'juice of 2 limes': 2, lime, lime juice; None if it is no such."""
    found = _OF_FRUIT.match(bare)
    if found is None:
        return None
    number = _HALF.get(found["number"].casefold(), found["number"])
    part = "juice" if found["part"].casefold() in {"juice", "jus"} else "zest"
    fruit = _fruit(found["fruit"].strip())
    return number, fruit, f"{fruit} {part}"


def _fruit(words: str) -> str:
    folded = words.casefold()
    french = {"citron": "lemon", "citrons": "lemon", "citron vert": "lime", "citrons verts": "lime"}
    return french.get(folded, folded[:-1] if folded.endswith("s") else folded)
