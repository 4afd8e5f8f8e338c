"""Numbers as they are said aloud."""

from __future__ import annotations

SMALL = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen"),
    *("eighteen", "nineteen"),
)
TENS = ("", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
LARGEST = 999_999
"""Numbers beyond are nothing that a kitchen weighs, and stay as they are written."""
PARTS = {
    2: ("half", "halves"),
    3: ("third", "thirds"),
    4: ("quarter", "quarters"),
    5: ("fifth", "fifths"),
    6: ("sixth", "sixths"),
    8: ("eighth", "eighths"),
}


def whole_words(value: int) -> str:
    """A whole number from 0 to 999 999: 1050 is 'one thousand and fifty'."""
    if value < 20:
        return SMALL[value]
    if value < 100:
        ten, one = divmod(value, 10)
        return TENS[ten] + (f"-{SMALL[one]}" if one else "")
    if value < 1000:
        hundreds, rest = divmod(value, 100)
        return f"{SMALL[hundreds]} hundred" + (f" and {whole_words(rest)}" if rest else "")
    thousands, rest = divmod(value, 1000)
    joint = " and " if 0 < rest < 100 else " " if rest else ""
    return f"{whole_words(thousands)} thousand{joint}" + (whole_words(rest) if rest else "")


def decimal_words(digits: str) -> str:
    """A number as written, '4.9' or '0.39', digit by digit behind the point; '2.0' is 'two'."""
    whole, _, behind = digits.partition(".")
    behind = behind.rstrip("0")
    words = whole_words(int(whole or "0"))
    return f"{words} point {' '.join(SMALL[int(digit)] for digit in behind)}" if behind else words


def fraction_words(top: int, bottom: int) -> str:
    """A part of one before 'a cup': 'half', 'a quarter of', 'two thirds of'."""
    one, many = PARTS[bottom]
    if bottom == 2:
        return one
    return f"a {one} of" if top == 1 else f"{SMALL[top]} {many} of"


def mixed_words(whole: int, top: int, bottom: int) -> str:
    """A whole number and a part: 'two and a half', 'one and two thirds'."""
    one, many = PARTS[bottom]
    part = f"a {one}" if top == 1 else f"{SMALL[top]} {many}"
    return f"{whole_words(whole)} and {part}"
