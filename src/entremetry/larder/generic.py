"""Words that name no one ingredient: what must be asked before they can be weighed."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.larder.spelling import plain
from entremetry.words import say_later

EGG_SIZES = (
    "small egg (EU)",
    "medium egg (EU)",
    "large egg (EU)",
    "extra large egg (EU)",
    "small egg (US)",
    "medium egg (US)",
    "large egg (US)",
    "extra large egg (US)",
    "jumbo egg (US)",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Generic:
    """A word that several ingredients bear, the question to ask, and the answers.

    The question is still to be said. `choices` are ids. `measures` is filled where the
    ingredient is clear but what one of it weighs is not: an egg of which size?
    """

    words: tuple[str, ...]
    question: str
    choices: tuple[str, ...]
    measures: tuple[str, ...] = ()


_SHEETS = (
    "gelatine-sheet-bronze",
    "gelatine-sheet-silver",
    "gelatine-sheet-gold",
    "gelatine-sheet-platinum",
)
_POWDERS = (
    "gelatine-powder-140",
    "gelatine-powder-180",
    "gelatine-powder-200",
    "gelatine-powder-220",
    "gelatine-powder-250",
)
_DARK = tuple(f"couverture-dark-{cocoa}" for cocoa in (55, 56, 61, 64, 66, 70, 75, 85))
_MILK = ("couverture-milk-33", "couverture-milk-35", "couverture-milk-40")
_WHITE = tuple(f"couverture-white-{cocoa}" for cocoa in (28, 30, 33, 35))

GENERICS: tuple[Generic, ...] = (
    Generic(
        words=("gelatine", "gelatin", "gélatine", "unflavored gelatin", "gelatine bloom"),
        question=say_later("Gelatine in sheets or as powder, and of what strength?"),
        choices=(*_SHEETS, *_POWDERS),
    ),
    Generic(
        words=(
            "gelatine sheets",
            "gelatine leaves",
            "leaf gelatine",
            "sheet gelatine",
            "gelatin sheets",
            "gelatin leaves",
            "leaf gelatin",
            "sheet gelatin",
            "leaves gelatine",
            "leaves of gelatine",
            "sheets of gelatine",
            "sheets gelatine",
            "leaves gelatin",
            "feuilles de gélatine",
            "gélatine en feuilles",
        ),
        question=say_later("Gelatine sheets of what strength?"),
        choices=_SHEETS,
    ),
    Generic(
        words=(
            "gelatine powder",
            "powdered gelatine",
            "powdered gelatin",
            "gelatin powder",
            "gélatine en poudre",
        ),
        question=say_later("Gelatine powder of how many Bloom?"),
        choices=_POWDERS,
    ),
    Generic(
        words=("chocolate", "couverture", "chocolat", "melted chocolate"),
        question=say_later("Dark, milk or white chocolate, and with how much cocoa?"),
        choices=(*_DARK, *_MILK, *_WHITE),
    ),
    Generic(
        words=("dark chocolate", "chocolat noir", "bittersweet", "plain chocolate"),
        question=say_later("Dark chocolate with how much cocoa?"),
        choices=_DARK,
    ),
    Generic(
        words=("milk chocolate", "chocolat au lait"),
        question=say_later("Milk chocolate with how much cocoa?"),
        choices=_MILK,
    ),
    Generic(
        words=("white chocolate", "chocolat blanc"),
        question=say_later("White chocolate with how much cocoa butter?"),
        choices=_WHITE,
    ),
    Generic(
        words=("cream", "crème", "liquid cream", "fresh cream", "crème liquide"),
        question=say_later("Cream of what fat content?"),
        choices=(
            "cream-19",
            "cream-30",
            "cream-33",
            "cream-35",
            "cream-36",
            "cream-40",
            "cream-48",
        ),
    ),
    Generic(
        words=("flour", "farine", "white flour"),
        question=say_later("Which flour?"),
        choices=(
            "plain-flour",
            "cake-flour",
            "bread-flour",
            "self-raising-flour",
            "wholemeal-flour",
        ),
    ),
    Generic(
        words=("cocoa", "cocoa powder", "cacao", "unsweetened cocoa", "cacao powder"),
        question=say_later("Cocoa powder of what fat content, natural or alkalised?"),
        choices=(
            "cocoa-powder-natural",
            "cocoa-powder-alkalised",
            "cocoa-powder-22",
            "cocoa-powder-high-fat",
            "cocoa-powder-high-fat-alkalised",
        ),
    ),
    Generic(
        words=("pectin", "pectine"),
        question=say_later("Which pectin?"),
        choices=("pectin-hm", "pectin-lm", "pectin-nh"),
    ),
    Generic(
        words=("carrageenan", "carraghénane"),
        question=say_later("Kappa or iota carrageenan?"),
        choices=("carrageenan-kappa", "carrageenan-iota"),
    ),
    Generic(
        words=("starch", "amidon"),
        question=say_later("Which starch?"),
        choices=("corn-starch", "potato-starch", "tapioca-starch", "wheat-starch"),
    ),
    Generic(
        words=("egg", "eggs", "whole egg", "whole eggs"),
        question=say_later("Eggs of which size?"),
        choices=("egg-whole",),
        measures=EGG_SIZES,
    ),
    Generic(
        words=("egg yolk", "egg yolks", "yolk", "yolks"),
        question=say_later("Yolks of eggs of which size?"),
        choices=("egg-yolk",),
        measures=EGG_SIZES,
    ),
    Generic(
        words=("egg white", "egg whites"),
        question=say_later("Whites of eggs of which size?"),
        choices=("egg-white",),
        measures=EGG_SIZES,
    ),
)
QUESTION_OF = {
    "raspberry": say_later("Raspberry purée with 10 % sugar or unsweetened?"),
    "strawberry": say_later("Strawberry purée with 10 % sugar or unsweetened?"),
    "blackcurrant": say_later("Blackcurrant purée with 10 % sugar or unsweetened?"),
    "blackberry": say_later("Blackberry purée with 10 % sugar or unsweetened?"),
    "mango": say_later("Mango purée with 10 % sugar or unsweetened?"),
    "passion-fruit": say_later("Passion fruit purée with 10 % sugar or unsweetened?"),
    "pear": say_later("Pear purée with 10 % sugar or unsweetened?"),
    "apricot": say_later("Apricot purée with 10 % sugar or unsweetened?"),
    "cherry-sour": say_later("Sour cherry purée with 10 % sugar or unsweetened?"),
}
"""Fruit whose purée is sold with and without sugar, and what is asked of it."""


def _puree(fruit: str) -> Generic:
    """A purée that is sold with and without sugar."""
    spoken = {"cherry-sour": "sour cherry"}.get(fruit, fruit.replace("-", " "))
    return Generic(
        words=(f"{spoken} purée", f"{spoken} puree", f"purée of {spoken}"),
        question=QUESTION_OF[fruit],
        choices=(f"{fruit}-puree", f"{fruit}-puree-unsweetened"),
    )


_BY_WORD = {
    plain(word): generic
    for generic in (*GENERICS, *(_puree(fruit) for fruit in QUESTION_OF))
    for word in generic.words
}


def generic_for(name: str) -> Generic | None:
    """Return what must be asked about a name that is not one ingredient, or None."""
    return _BY_WORD.get(plain(name))


def all_generics() -> tuple[Generic, ...]:
    """Every word that is asked about, each once."""
    return tuple(dict.fromkeys(_BY_WORD.values()))
