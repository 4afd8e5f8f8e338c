"""Names of counted things and packs, one and many, in the language that is spoken."""

from __future__ import annotations

from entremetry.words import say, say_count, say_count_later, say_later

_THINGS: dict[str, tuple[str, str]] = dict(
    (names[0], names)
    for names in (
        say_count_later("almond", "almonds"),
        say_count_later("apricot", "apricots"),
        say_count_later("bag", "bags"),
        say_count_later("bean", "beans"),
        say_count_later("berry", "berries"),
        say_count_later("biscuit", "biscuits"),
        say_count_later("block", "blocks"),
        say_count_later("bottle", "bottles"),
        say_count_later("bulb", "bulbs"),
        say_count_later("cake", "cakes"),
        say_count_later("carton", "cartons"),
        say_count_later("cherry", "cherries"),
        say_count_later("cracker", "crackers"),
        say_count_later("croissant", "croissants"),
        say_count_later("date", "dates"),
        say_count_later("egg", "eggs"),
        say_count_later("envelope", "envelopes"),
        say_count_later("extra large egg", "extra large eggs"),
        say_count_later("fruit", "fruits"),
        say_count_later("jumbo egg", "jumbo eggs"),
        say_count_later("kernel", "kernels"),
        say_count_later("large egg", "large eggs"),
        say_count_later("large fruit", "large fruits"),
        say_count_later("leaf", "leaves"),
        say_count_later("lemon", "lemons"),
        say_count_later("lime", "limes"),
        say_count_later("medium egg", "medium eggs"),
        say_count_later("medium fruit", "medium fruits"),
        say_count_later("nut", "nuts"),
        say_count_later("orange", "oranges"),
        say_count_later("packet", "packets"),
        say_count_later("peanut", "peanuts"),
        say_count_later("piece", "pieces"),
        say_count_later("pinch", "pinches"),
        say_count_later("pod", "pods"),
        say_count_later("prune", "prunes"),
        say_count_later("raspberry", "raspberries"),
        say_count_later("sachet", "sachets"),
        say_count_later("sheet", "sheets"),
        say_count_later("small egg", "small eggs"),
        say_count_later("small fruit", "small fruits"),
        say_count_later("stalk", "stalks"),
        say_count_later("star", "stars"),
        say_count_later("stick", "sticks"),
        say_count_later("tin", "tins"),
        say_count_later("tub", "tubs"),
        say_count_later("wafer", "wafers"),
    )
)
"""What the larder counts and buys. A thing that a cook has named stays as it is written."""

_REGIONS = {"US": say_later("US"), "EU": say_later("EU")}
"""Whose size classes are meant, as the larder marks them behind an egg."""


def things(thing: str, number: float = 1.0) -> str:
    """Name of a thing for a number of them; what stands in brackets stays behind it."""
    name, bracket, rest = thing.partition(" (")
    if not bracket:
        return _things(thing, number)
    mark = rest.removesuffix(")")
    region = say(_REGIONS[mark]) if mark in _REGIONS else mark
    return f"{_things(name, number)} ({region}{rest[len(mark) :]}"


def _things(name: str, number: float) -> str:
    """One or many by the rule of the language; a half is one."""
    if name in _THINGS:
        return say_count(*_THINGS[name], max(number, 1.0))
    return _many(name) if number > 1 else name


def _many(name: str) -> str:
    """Plural of a word that the larder does not know."""
    if not name[-1:].isalpha() or name.endswith("s"):
        return name
    if name.endswith("leaf"):
        return f"{name[:-1]}ves"
    return f"{name}es" if name.endswith(("ch", "sh", "x")) else f"{name}s"
