"""What colour a part of the drawing has: by what it is, and by the flavour in its name."""

from __future__ import annotations

import re
from collections.abc import Sequence
from types import MappingProxyType

from entremetry.dessert.batch_sheet import DrawnPart, Position
from entremetry.publish.colour import Colour, darker, difference, lighter, mixed

KIND_COLOURS = MappingProxyType(
    {
        "mousse": (236, 219, 194),
        "insert": (222, 160, 92),
        "base": (184, 130, 74),
        "glaze": (122, 42, 58),
        "soak": (214, 178, 120),
        "crumble": (190, 138, 82),
        "garnish": (150, 92, 58),
    }
)
UNKNOWN_KIND: Colour = (212, 190, 160)
BAKED: Colour = (190, 136, 76)
CREAM: Colour = (252, 243, 226)

FLAVOUR_COLOURS = MappingProxyType(
    {
        "blackcurrant": (104, 22, 76),
        "blackberry": (80, 26, 70),
        "blueberry": (74, 58, 120),
        "raspberry": (196, 38, 74),
        "strawberry": (218, 62, 72),
        "redcurrant": (200, 36, 46),
        "cherry": (140, 22, 44),
        "plum": (120, 44, 84),
        "cranberry": (176, 30, 54),
        "rhubarb": (222, 110, 116),
        "apricot": (240, 158, 72),
        "peach": (246, 174, 116),
        "mango": (246, 168, 42),
        "passion": (240, 180, 50),
        "orange": (240, 140, 48),
        "mandarin": (240, 132, 42),
        "lemon": (246, 216, 88),
        "lime": (176, 200, 88),
        "yuzu": (236, 212, 96),
        "pineapple": (246, 208, 90),
        "pear": (226, 214, 148),
        "apple": (206, 208, 122),
        "banana": (244, 222, 140),
        "quince": (232, 186, 96),
        "fig": (140, 70, 84),
        "coconut": (250, 246, 238),
        "vanilla": (250, 234, 196),
        "cream": (252, 240, 216),
        "yogurt": (252, 246, 236),
        "milk": (248, 236, 220),
        "almond": (232, 206, 164),
        "joconde": (226, 184, 120),
        "hazelnut": (176, 122, 72),
        "dacquoise": (222, 188, 138),
        "walnut": (158, 108, 68),
        "pecan": (150, 92, 52),
        "pistachio": (160, 176, 88),
        "sesame": (86, 80, 76),
        "praline": (186, 122, 62),
        "caramel": (190, 106, 34),
        "toffee": (176, 96, 36),
        "honey": (226, 162, 50),
        "coffee": (142, 86, 46),
        "espresso": (94, 54, 32),
        "cocoa": (92, 48, 30),
        "chocolate": (102, 54, 30),
        "dark": (92, 46, 26),
        "white": (248, 240, 224),
        "tea": (160, 116, 60),
        "matcha": (134, 162, 84),
        "mint": (150, 204, 168),
        "rose": (236, 160, 172),
        "violet": (132, 98, 168),
        "lavender": (176, 160, 208),
        "sponge": (228, 190, 124),
        "biscuit": (206, 158, 96),
        "shortcrust": (212, 166, 102),
        "meringue": (252, 246, 236),
        "cheese": (250, 238, 208),
    }
)

FRENCH_FLAVOURS = MappingProxyType(
    {
        "cassis": "blackcurrant",
        "mûre": "blackberry",
        "myrtille": "blueberry",
        "framboise": "raspberry",
        "fraise": "strawberry",
        "groseille": "redcurrant",
        "cerise": "cherry",
        "prune": "plum",
        "rhubarbe": "rhubarb",
        "abricot": "apricot",
        "pêche": "peach",
        "mangue": "mango",
        "mandarine": "mandarin",
        "citron": "lemon",
        "ananas": "pineapple",
        "poire": "pear",
        "pomme": "apple",
        "banane": "banana",
        "coing": "quince",
        "figue": "fig",
        "coco": "coconut",
        "vanille": "vanilla",
        "amande": "almond",
        "noisette": "hazelnut",
        "noix": "walnut",
        "pistache": "pistachio",
        "sésame": "sesame",
        "praliné": "praline",
        "miel": "honey",
        "café": "coffee",
        "cacao": "cocoa",
        "chocolat": "chocolate",
        "thé": "tea",
        "menthe": "mint",
        "violette": "violet",
        "lavande": "lavender",
        "sablé": "shortcrust",
    }
)
"""The same flavours as a French name says them."""
TWO_WORDS = MappingProxyType({"citron vert": "lime", "noix de coco": "coconut"})


def flavour(name: str) -> Colour | None:
    """Colour of the first flavour named, or None."""
    folded = name.casefold()
    for words, one in TWO_WORDS.items():
        folded = folded.replace(words, one)
    for word in re.findall(r"[^\W\d_]+", folded):
        for candidate in (word, word.removesuffix("s"), word.removesuffix("ies") + "y"):
            known = FRENCH_FLAVOURS.get(candidate, candidate)
            if known in FLAVOUR_COLOURS:
                return FLAVOUR_COLOURS[known]
    return None


def own_colour(part: DrawnPart) -> Colour:
    """Colour of one part before its neighbours are looked at."""
    taste = flavour(f"{part.name} {part.component}")
    if taste is None:
        return KIND_COLOURS.get(part.kind, UNKNOWN_KIND)
    if part.kind == "mousse":
        return mixed(taste, CREAM, 0.24)
    if part.kind in {"base", "crumble"}:
        return mixed(taste, BAKED, 0.42)
    if part.position is Position.COATING:
        return darker(taste, 0.12)
    return taste


def glaze_over(parts: Sequence[DrawnPart]) -> Colour:
    """Colour of a glaze whose name tells no flavour: a deeper tone of what it covers."""
    for part in parts:
        if part.position is Position.FILLING:
            return darker(flavour(f"{part.name} {part.component}") or own_colour(part), 0.34)
    return KIND_COLOURS["glaze"]


def colours(parts: Sequence[DrawnPart]) -> tuple[Colour, ...]:
    """Colour of each part; neighbours that would look alike are moved apart."""
    chosen: list[Colour] = []
    for part in parts:
        if part.position is Position.COATING and flavour(f"{part.name} {part.component}") is None:
            colour = glaze_over(parts)
        else:
            colour = own_colour(part)
        chosen.append(apart(colour, chosen))
    return tuple(chosen)


def apart(colour: Colour, others: Sequence[Colour], *, least: float = 42.0) -> Colour:
    """Colour itself, or the nearest tone of it that differs from all others."""
    tones = [colour]
    for share in (0.14, 0.24, 0.34, 0.44):
        tones += [darker(colour, share), lighter(colour, share)]
    for tone in tones:
        if all(difference(tone, other) >= least for other in others):
            return tone
    return colour
