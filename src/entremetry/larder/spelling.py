"""Names and counted things as people write them, brought to one form."""

from __future__ import annotations

import re
import unicodedata

from entremetry.quantities.amount import singular as singular_words

REGIONS = ("us", "eu")
_REGION_FIRST = re.compile(r"^(us|eu)\s+(.*)$")
_REGION_LAST = re.compile(r"^(.*?)\s*\((us|eu)\)$")


def plain(name: str) -> str:
    """Return a name in lower case, without accents, hyphens and doubled blanks."""
    letters = name if name.isascii() else _without_accents(name)
    return " ".join(letters.replace("-", " ").casefold().split())


def _without_accents(name: str) -> str:
    spelled = name.replace("œ", "oe").replace("Œ", "oe").replace("’", "'")
    decomposed = unicodedata.normalize("NFKD", spelled)
    return "".join(c for c in decomposed if not unicodedata.combining(c))


def singular(words: str) -> str:
    """Return a counted thing in lower case without its plural ending: '2 Sheets' -> '2 sheet'."""
    folded = " ".join(words.casefold().split())
    if match := _REGION_LAST.match(folded):
        return f"{singular(match[1])} ({match[2]})"
    if match := _REGION_FIRST.match(folded):
        return f"{singular(match[2])} ({match[1]})"
    *before, last = folded.split(" ") if folded else [""]
    return " ".join((*before, singular_words(last)))
