"""Pasted lines are taken apart the way a cook reads them, in English and in French."""

from __future__ import annotations

import pytest

from entremetry.dessert.pasted_line import pasted_line
from entremetry.dessert.pasted_words import is_blank
from entremetry.quantities import Kind


@pytest.mark.parametrize(
    ("text", "amount", "name", "note"),
    [
        ("240 g blackcurrant purée", "240 g", "blackcurrant purée", ""),
        ("- 240 g of sugar", "240 g", "sugar", ""),
        ("• 240g sugar, sifted", "240 g", "sugar", "sifted"),
        ("1. 240 g sugar", "240 g", "sugar", ""),
        ("200ml cream", "200 ml", "cream", ""),
        ("1 1/2 tbsp corn starch", "1 1/2 tbsp", "corn starch", ""),
        ("½ cup sugar", "½ cup", "sugar", ""),
        ("1½ cups milk", "1½ cups", "milk", ""),
        ("3/4 tsp salt", "3/4 tsp", "salt", ""),
        ("1,5 dl milk", "1,5 dl", "milk", ""),
        ("1 kg 200 g pears, peeled", "1 kg 200 g", "pears", "peeled"),
        ("1 cup + 2 tbsp sugar", "1 cup 2 tbsp", "sugar", ""),
        ("240 g (1 cup) flour, sifted", "240 g", "flour", "1 cup, sifted"),
        ("150g dark chocolate (70 %), chopped", "150 g", "dark chocolate", "70 %, chopped"),
        ("about 30 g honey", "30 g", "honey", "about"),
        ("a pinch of salt", "1 pinch", "salt", ""),
        ("2 leaves gelatine", "2 leaves", "gelatine", ""),
        ("3 eggs", "3", "eggs", ""),
        ("12 egg whites", "12", "egg whites", ""),
        ("1 vanilla pod", "1", "vanilla pod", ""),
        ("juice of 2 limes", "2 lime", "lime juice", "juice of 2 limes"),
        ("zest of 1 lemon, grated", "1 lemon", "lemon zest", "zest of 1 lemon, grated"),
        ("Caster sugar: 50 g", "50 g", "Caster sugar", ""),
        ("cream 35 %   200 g", "200 g", "cream 35 %", ""),
        ("25 cl de crème liquide entière", "25 cl", "crème liquide entière", ""),
        ("3 jaunes d'œufs", "3", "egg yolks", ""),
        ("2 gousses de vanille", "2", "vanilla pods", ""),
        ("2 feuilles de gélatine", "2 sheets", "gelatine", ""),
        ("1 c. à soupe de miel", "1 metric tbsp", "miel", ""),
        ("le zeste d'un citron", "", "le zeste d'un citron", ""),
        ("zeste d'un citron", "1 lemon", "lemon zest", "zeste d'un citron"),
        ("salt", "", "salt", ""),
        ("Whisk the eggs for 3 minutes", "", "Whisk the eggs for 3 minutes", ""),
    ],
)
def test_amount_name_and_note(text: str, amount: str, name: str, note: str) -> None:
    line = pasted_line(text)
    assert (line.amount, line.name, line.note) == (amount, name, note)
    assert line.written == text.strip()


@pytest.mark.parametrize("text", ["100-120 g raspberries", "100 to 120 g raspberries"])
def test_a_range_is_left_open(text: str) -> None:
    line = pasted_line(text)
    assert line.either == ("100 g", "120 g")
    assert (line.number, line.name) == ("", "raspberries")


@pytest.mark.parametrize(
    ("text", "needs"),
    [
        ("1 tbsp sugar", True),
        ("1 cup sugar", True),
        ("1 us cup sugar", False),
        ("1 metric tbsp sugar", False),
        ("15 ml milk", False),
        ("1 c. à soupe de sucre", False),
        ("1 leaf gelatine", False),
    ],
)
def test_cups_and_spoons_without_a_country_are_noticed(text: str, needs: bool) -> None:
    assert pasted_line(text).needs_country is needs


@pytest.mark.parametrize(
    ("text", "kind"),
    [("5 g salt", Kind.MASS), ("5 ml milk", Kind.VOLUME), ("5 leaves mint", Kind.COUNT)],
)
def test_kind_of_the_unit(text: str, kind: Kind) -> None:
    assert pasted_line(text).kind is kind


def test_bullets_and_rules_alone_are_blank() -> None:
    assert all(is_blank(text) for text in ("", "  ", "- ", "---", "•", "***"))
    assert not any(is_blank(text) for text in ("salt", "½", "3"))
