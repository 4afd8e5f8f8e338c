"""Sentences of filling in English and in French."""

from __future__ import annotations

import pytest

from entremetry.dessert.fill_words import (
    CAVITY,
    GLASS,
    MOULD,
    VESSEL,
    brushed,
    covered,
    filled,
    laid_on,
    laid_on_bottom,
    pressed_in,
    pressed_level,
)
from entremetry.words import speaking


@pytest.mark.parametrize(
    ("kind", "one", "first", "english", "french"),
    [
        (
            "mousse",
            CAVITY,
            True,
            "Pipe 42 g of the mousse into each cavity, to 10 mm below the rim.",
            "Dresser à la poche mousse (42 g) dans chaque empreinte, jusqu’à 10 mm sous le bord.",
        ),
        (
            "crumble",
            GLASS,
            False,
            "Scatter 42 g of the mousse onto each glass, to 10 mm below the rim.",
            "Répartir mousse (42 g) dans chaque verre, jusqu’à 10 mm sous le bord.",
        ),
        (
            "garnish",
            VESSEL,
            True,
            "Scatter 42 g of the mousse into each vessel, to 10 mm below the rim.",
            "Répartir mousse (42 g) dans chaque contenant, jusqu’à 10 mm sous le bord.",
        ),
        (
            "base",
            MOULD,
            True,
            "Spread 42 g of the mousse into the mould, to 10 mm below the rim.",
            "Étaler mousse (42 g) dans le moule, jusqu’à 10 mm sous le bord.",
        ),
        (
            "insert",
            MOULD,
            False,
            "Pour 42 g of the mousse into the mould, to 10 mm below the rim.",
            "Couler mousse (42 g) dans le moule, jusqu’à 10 mm sous le bord.",
        ),
    ],
)
def test_a_kind_is_put_in_in_its_own_way(
    kind: str, one: str, first: bool, english: str, french: str
) -> None:
    def told() -> str:
        return filled(kind, one, "Mousse", 0.042, 0.01, closing=False, first=first)

    assert told() == english
    with speaking("fr"):
        assert told() == french


def test_what_closes_is_levelled_at_the_rim() -> None:
    assert covered("Mousse", 0.015, 0.0, closing=True) == (
        "Cover with 15 g more of the mousse, to the rim; level it."
    )
    with speaking("fr"):
        assert covered("Mousse", 0.0045, 0.0, closing=True) == (
            "Recouvrir avec mousse (4,5 g de plus), jusqu’au bord ; lisser."
        )


def test_parts_are_laid_and_pressed_in_french() -> None:
    with speaking("fr"):
        assert brushed("Biscuit", "Sirop", 0.0045) == "Imbiber biscuit avec sirop (4,5 g)."
        assert pressed_level("Sablé") == "Enfoncer sablé à fleur du bord."
        assert laid_on("Biscuit", 0.012) == "Poser biscuit ; le dessus arrive à 12 mm sous le bord."
        assert pressed_in("Insert", 0.005, flat_down=True) == (
            "Enfoncer insert, côté plat vers le bas, "
            "jusqu’à ce que le dessus soit à 5 mm sous le bord."
        )


@pytest.mark.parametrize(
    ("one", "english", "french"),
    [
        (MOULD, "the mould", "du moule"),
        (CAVITY, "each cavity", "de chaque empreinte"),
        (GLASS, "each glass", "de chaque verre"),
        (VESSEL, "each vessel", "de chaque contenant"),
    ],
)
def test_what_lies_on_the_bottom_says_of_what(one: str, english: str, french: str) -> None:
    assert laid_on_bottom("Sponge", one) == f"Lay the sponge on the bottom of {english}."
    with speaking("fr"):
        assert laid_on_bottom("Biscuit", one) == f"Poser biscuit au fond {french}."
