"""A mould of one's own in a few words: its shape and its sizes, as a document writes it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_line import identifier
from entremetry.errors import QuantityError, UnknownName
from entremetry.quantities import format_length, parse_length
from entremetry.words import decimal, quoted, say, say_as, say_as_later

BETWEEN = re.compile(r"\s*(?:×|\bx\b|(?<=\d)x(?=\d)|\bby\b|\*|/)\s*", re.IGNORECASE)
UNIT = re.compile(r"[a-zA-Zµ\"]+\.?$")
PLAIN = re.compile(r"\d+(?:[.,]\d+)?")

_SIZES = (
    say_as_later("size", "diameter"),
    say_as_later("size", "base diameter"),
    say_as_later("size", "hole diameter"),
    say_as_later("size", "length"),
    say_as_later("size", "width"),
    say_as_later("size", "height"),
)
_WORDS = (
    say_as_later("mould", "dome"),
    say_as_later("mould", "low dome"),
    say_as_later("mould", "sphere"),
    say_as_later("mould", "ring"),
    say_as_later("mould", "cup"),
    say_as_later("mould", "loaf"),
    say_as_later("mould", "frame"),
    say_as_later("mould", "log"),
    say_as_later("mould", "savarin"),
    say_as_later("mould", "glass"),
    say_as_later("mould", "conical glass"),
    say_as_later("mould", "dish"),
)
"""What a shape is called and what it is measured by, as they are said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A shape by the word people use, and the sizes it needs in the order they are said."""

    word: str
    kind: str
    sizes: tuple[str, ...]
    more: Mapping[str, Any] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """The word in the language that is spoken."""
        return say_as("shape of a mould", self.word.replace("-", " "))

    @property
    def asks(self) -> str:
        """The sizes in words: 'diameter × height'."""
        return " × ".join(say_as("size of a mould", size.replace("_", " ")) for size in self.sizes)


_NAMES = (
    say_as_later("shape of a mould", "dome"),
    say_as_later("shape of a mould", "low dome"),
    say_as_later("shape of a mould", "sphere"),
    say_as_later("shape of a mould", "ring"),
    say_as_later("shape of a mould", "cup"),
    say_as_later("shape of a mould", "loaf"),
    say_as_later("shape of a mould", "frame"),
    say_as_later("shape of a mould", "log"),
    say_as_later("shape of a mould", "savarin"),
    say_as_later("shape of a mould", "glass"),
    say_as_later("shape of a mould", "conical glass"),
    say_as_later("shape of a mould", "dish"),
    say_as_later("size of a mould", "diameter"),
    say_as_later("size of a mould", "base diameter"),
    say_as_later("size of a mould", "hole diameter"),
    say_as_later("size of a mould", "length"),
    say_as_later("size of a mould", "width"),
    say_as_later("size of a mould", "height"),
)
"""Shapes and sizes for the catalogues."""
_BOX = ("length", "width", "height")
_GLASS = {"material": "glass", "vessel": True}
SHAPES: Mapping[str, Shape] = {
    shape.word: shape
    for shape in (
        Shape(word="dome", kind="hemisphere", sizes=("diameter",)),
        Shape(word="low-dome", kind="cap", sizes=("diameter", "height")),
        Shape(word="sphere", kind="sphere", sizes=("diameter",)),
        Shape(
            word="ring", kind="cylinder", sizes=("diameter", "height"), more={"material": "metal"}
        ),
        Shape(word="cup", kind="cone", sizes=("diameter", "base_diameter", "height")),
        Shape(word="loaf", kind="box", sizes=_BOX),
        Shape(word="frame", kind="box", sizes=_BOX, more={"material": "metal", "fills": "upright"}),
        Shape(word="log", kind="log", sizes=("length", "width")),
        Shape(word="savarin", kind="ring", sizes=("diameter", "hole_diameter")),
        Shape(word="glass", kind="cylinder", sizes=("diameter", "height"), more=_GLASS),
        Shape(
            word="conical-glass",
            kind="cone",
            sizes=("diameter", "base_diameter", "height"),
            more=_GLASS,
        ),
        Shape(word="dish", kind="box", sizes=_BOX, more={"material": "ceramic", "vessel": True}),
    )
}


def shaped(word: str, size: str, *, cavities: int | None = None) -> dict[str, Any]:
    """A mould as a document writes it: 'ring' and '180 × 45 mm'.

    Raises
    ------
    UnknownName
        If there is no such shape.
    QuantityError
        If the sizes are not those the shape needs.
    """
    if word not in SHAPES:
        raise UnknownName("shape of a mould", word, SHAPES)
    return sized(SHAPES[word], _lengths(SHAPES[word], size), cavities=cavities)


def sized(shape: Shape, lengths: Sequence[float], *, cavities: int | None = None) -> dict[str, Any]:
    """A mould of a shape whose lengths [m] are those that it asks for, in their order."""
    numbers = " × ".join(format_length(each).removesuffix(" mm") for each in lengths)
    words = f"{shape.word.replace('-', ' ')} {numbers} mm"
    name = say("{shape} {sizes} mm", shape=shape.name.capitalize(), sizes=decimal(numbers))
    written = {name: format_length(each) for name, each in zip(shape.sizes, lengths, strict=True)}
    return {
        "id": f"own-{identifier(words)}",
        "name": name,
        "shape": {"kind": shape.kind, **written},
        **shape.more,
        **_counted(cavities),
    }


def measured(
    holds: str, like: Mapping[str, Any], more: Mapping[str, Any], *, cavities: int | None = None
) -> dict[str, Any]:
    """A mould that was filled with water: what it holds, and the shape it is like."""
    return {
        "id": f"weighed-{identifier(holds)}",
        "name": say("Mould that holds {volume} of water", volume=holds),
        "shape": {"kind": "measured", "holds": holds, "like": dict(like)},
        **more,
        **_counted(cavities),
    }


def _counted(cavities: int | None) -> dict[str, Any]:
    return {} if cavities is None else {"cavities": cavities}


def _lengths(shape: Shape, size: str) -> tuple[float, ...]:
    accepted = say(
        "{sizes} of a {shape}, such as {example}",
        sizes=shape.asks,
        shape=say_as("mould", shape.word.replace("-", " ")),
        example=_example(shape),
    )
    parts = [part.strip() for part in BETWEEN.split(size.strip()) if part.strip()]
    if len(parts) != len(shape.sizes):
        raise QuantityError(quoted(size) if size.strip() else say("no size"), accepted)
    found = UNIT.search(parts[-1])
    unit = found.group() if found else "mm"
    lengths = []
    for part in parts:
        text = f"{part} {unit}" if PLAIN.fullmatch(part) else part
        try:
            lengths.append(parse_length(text))
        except QuantityError:
            told = say("'{part}' in '{whole}'", part=part, whole=size)
            raise QuantityError(told, accepted) from None
    return tuple(lengths)


def _example(shape: Shape) -> str:
    usual = {
        "diameter": "80",
        "base_diameter": "50",
        "hole_diameter": "30",
        "length": "250",
        "width": "80",
        "height": "45",
    }
    return f"{' × '.join(usual[size] for size in shape.sizes)} mm"
