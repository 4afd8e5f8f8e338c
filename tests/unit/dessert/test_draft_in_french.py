"""Questions of a draft in French: every word of ours is French, every answer still an id."""

from __future__ import annotations

from entremetry.dessert.draft import Draft, DraftRequest
from entremetry.usecases.drafting import draft_text
from entremetry.words import speaking

TEXT = """\
Mousse au cassis :
240 g de purée de cassis
120 g purée de framboise non sucrée
2 feuilles de gélatine
1 œuf
200 g crème 35 %

Méthode :
Chauffer la purée.
"""


def drafted(**answers: str) -> Draft:
    with speaking("fr"):
        return draft_text(
            DraftRequest(name="Cassis", pieces=6, mould="cube-50", text=TEXT, answers=answers)
        )


def questions(**answers: str) -> dict[str, tuple[str, dict[str, str]]]:
    return {q.key: (q.text, dict(q.choices)) for q in drafted(**answers).questions}


def test_questions_and_choices_are_french_and_answers_are_ids() -> None:
    asked = questions()
    assert asked["mousse-au-cassis-3-ingredient"] == (
        "Feuilles de gélatine de quelle force ?",
        {
            "gelatine-sheet-bronze": "Feuille de gélatine bronze 130 Bloom",
            "gelatine-sheet-silver": "Feuille de gélatine argent 160 Bloom",
            "gelatine-sheet-gold": "Feuille de gélatine or 200 Bloom",
            "gelatine-sheet-platinum": "Feuille de gélatine platine 250 Bloom",
        },
    )
    text, sizes = asked["mousse-au-cassis-4-amount"]
    assert text == "Des œufs de quel calibre ?"
    assert sizes["1 large egg (EU)"] == "1 gros œuf (UE)"


def test_a_french_name_is_known_and_half_of_one_is_asked_with_what_is_alike() -> None:
    asked = questions()
    assert "mousse-au-cassis-2-ingredient" not in asked
    assert "raspberry-puree-unsweetened: 120 g" in drafted().document
    text, choices = asked["mousse-au-cassis-1-ingredient"]
    assert text.startswith("Quel ingrédient est « purée de cassis » ?")
    assert choices["blackcurrant-puree"] == "Purée de cassis 10 % de sucre"


def test_an_answer_may_be_a_french_name() -> None:
    answers = {"mousse-au-cassis-1-ingredient": "purée de cassis non sucrée"}
    assert "blackcurrant-puree-unsweetened: 240 g" in drafted(**answers).document
    refused = questions(**{"mousse-au-cassis-1-ingredient": "licorne"})
    text, _ = refused["mousse-au-cassis-1-ingredient"]
    assert text.startswith("Le garde-manger ne connaît pas « licorne ». Quel ingrédient")
