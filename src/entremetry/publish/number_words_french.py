"""Numbers as they are said aloud in French, in the spelling before 1990.

Twenty takes an s in 'quatre-vingts' and a hundred in 'deux cents' only at the end; 'mille' never
does. One agrees with what is counted: 'vingt et une minutes'.
"""

from __future__ import annotations

SMALL = (
    *("zéro", "un", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix"),
    *("onze", "douze", "treize", "quatorze", "quinze", "seize", "dix-sept"),
    *("dix-huit", "dix-neuf"),
)
TENS = ("", "dix", "vingt", "trente", "quarante", "cinquante", "soixante", "soixante")
LARGEST = 999_999
"""Numbers beyond are nothing that a kitchen weighs, and stay as they are written."""
PARTS = {
    2: ("demi", "demis"),
    3: ("tiers", "tiers"),
    4: ("quart", "quarts"),
    5: ("cinquième", "cinquièmes"),
    6: ("sixième", "sixièmes"),
    8: ("huitième", "huitièmes"),
}


def whole_words(value: int, *, feminine: bool = False) -> str:
    """A whole number from 0 to 999 999: 1280 is 'mille deux cent quatre-vingts'."""
    words = _thousands(value)
    return f"{words}e" if feminine and (words == "un" or words.endswith((" un", "-un"))) else words


def _thousands(value: int) -> str:
    thousands, rest = divmod(value, 1000)
    if not thousands:
        return _hundreds(rest)
    many = "" if thousands == 1 else f"{_singular(_hundreds(thousands))} "
    return f"{many}mille" + (f" {_hundreds(rest)}" if rest else "")


def _singular(words: str) -> str:
    """Words before 'mille', where 'cents' and 'vingts' lose their s."""
    return words[:-1] if words.endswith(("cents", "vingts")) else words


def _hundreds(value: int) -> str:
    hundreds, rest = divmod(value, 100)
    if not hundreds:
        return _tens(rest)
    many = "" if hundreds == 1 else f"{SMALL[hundreds]} "
    if rest:
        return f"{many}cent {_tens(rest)}"
    return f"{many}cent{'s' if hundreds > 1 else ''}"


def _tens(value: int) -> str:
    if value < 20:
        return SMALL[value]
    if value >= 80:
        return f"quatre-vingt-{SMALL[value - 80]}" if value > 80 else "quatre-vingts"
    ten, one = divmod(value, 10)
    if ten == 7:
        one += 10
    if one in (1, 11):
        return f"{TENS[ten]} et {SMALL[one]}"
    return TENS[ten] + (f"-{SMALL[one]}" if one else "")


def decimal_words(digits: str, *, feminine: bool = False) -> str:
    """A number as written, '4,9' or '0,05': the noughts behind the comma, then a whole number."""
    whole, _, behind = digits.partition(",")
    behind = behind.rstrip("0")
    if not behind:
        return whole_words(int(whole or "0"), feminine=feminine)
    noughts = len(behind) - len(behind.lstrip("0"))
    said = [*[SMALL[0]] * noughts, whole_words(int(behind))]
    return f"{whole_words(int(whole or '0'))} virgule {' '.join(said)}"


def part_words(top: int, bottom: int) -> str:
    """A part of one: 'un tiers', 'trois quarts'."""
    one, many = PARTS[bottom]
    return f"{SMALL[top]} {one if top == 1 else many}"
