from __future__ import annotations

import pytest

from entremetry.publish.french_spacing import french
from entremetry.publish.typography import grams, hours, millilitres, millimetres, per_cent, typeset
from entremetry.words import speaking

TEXTS = [
    ("Moule : rond", "Moule\u00a0: rond"),
    ("Moule: rond", "Moule\u00a0: rond"),
    ("à 18:30 précises", "à 18:30 précises"),
    ("un rapport de 1:1", "un rapport de 1:1"),
    ("voir https://exemple.test/?a=1;b=2", "voir https://exemple.test/?a=1;b=2"),
    ("Chaud ; froid !", "Chaud\u202f; froid\u202f!"),
    ("Chaud; froid!", "Chaud\u202f; froid\u202f!"),
    ("Vraiment ?!", "Vraiment\u202f?!"),
    ("Prêt (vraiment ?) demain", "Prêt (vraiment\u202f?) demain"),
    ("dit « oui »", "dit «\u00a0oui\u00a0»"),
    ("dit «oui»", "dit «\u00a0oui\u00a0»"),
    ("35 % ou 35%", "35\u00a0% ou 35\u00a0%"),
    ("l'eau d'orge", "l’eau d’orge"),
    ("un 'mot' seul", "un 'mot' seul"),
    ("1½ c. à s. rase", "1½\u00a0c.\u00a0à\u00a0s. rase"),
    ("6 pièces", "6\u00a0pièces"),
    ("{number} pièces", "{number}\u00a0pièces"),
]


@pytest.mark.parametrize(("found", "printed"), TEXTS)
def test_spaces_are_those_of_french_print(found: str, printed: str) -> None:
    assert french(found) == printed


@pytest.mark.parametrize("text", [text for pair in TEXTS for text in pair])
def test_what_is_set_stays_as_it_is(text: str) -> None:
    assert french(french(text)) == french(text)


def test_the_page_sets_french_only_where_it_is_spoken() -> None:
    assert typeset("Mould: 35 % full; l'eau") == "Mould: 35\u00a0% full; l'eau"
    with speaking("fr"):
        assert typeset("à -18 °C : 2 x 3 !") == "à \u221218\u00a0°C\u00a0: 2 × 3\u202f!"


def test_numbers_have_a_comma_and_groups_of_three() -> None:
    with speaking("fr"):
        assert grams(0.0025) == "2,5\u00a0g"
        assert grams(1.2344) == "1\u202f234\u00a0g"
        assert millilitres(89.8e-6) == "89,8\u00a0ml"
        assert millilitres(1.2e-3) == "1\u202f200\u00a0ml"
        assert millimetres(0.0035) == "3,5\u00a0mm"
        assert per_cent(-0.046) == "\u22124,6\u00a0%"
        assert hours(7800) == "2\u00a0h 10\u00a0min"
