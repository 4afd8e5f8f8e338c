"""A draft asks about what is unknown or ambiguous, and takes what is certain."""

from __future__ import annotations

import re
from typing import Any

import pytest

from entremetry.dessert import Draft, DraftRequest, draft, read_dessert
from entremetry.documents import read_tree
from entremetry.errors import DocumentError
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_shapes

SURE = {"dome-kind": "insert"}


def drafted(text: str, answers: dict[str, str] | None = None, **known: Any) -> Draft:
    """Draft a dessert called Dome."""
    request = {"name": "Dome", "pieces": 6, "mould": "hemisphere-70"} | known
    return draft(
        DraftRequest(text=text, answers=answers or {}, **request), open_larder(), built_in_shapes()
    )


def formula(found: Draft, component: str = "dome") -> dict[str, Any]:
    """Formula of a component of a draft."""
    content: dict[str, Any] = read_tree(found.document, file="draft").data
    return dict(content["components"][component]["formula"])


def keys(found: Draft) -> set[str]:
    """Keys of the open questions."""
    return {question.key for question in found.questions}


@pytest.mark.parametrize(
    ("line", "ingredient", "amount"),
    [
        ("2 gold leaves gelatine", "gelatine-sheet-gold", "2 leaves"),
        ("2 sheets gold gelatine", "gelatine-sheet-gold", "2 sheets"),
        ("4 g gelatine powder 200 bloom", "gelatine-powder-200", "4 g"),
        ("150 g dark chocolate (70 %)", "couverture-dark-70", "150 g"),
        ("100 g dark chocolate, 64 % cocoa", "couverture-dark-64", "100 g"),
        ("240 g blackcurrant purée, unsweetened", "blackcurrant-puree-unsweetened", "240 g"),
        ("1 vanilla pod", "vanilla-bean", "1 pod"),
        ("2 gousses de vanille", "vanilla-bean", "2 pods"),
        ("a pinch of salt", "salt", "1 pinch"),
        ("juice of 2 limes", "lime-juice", "2 lime"),
        ("200 ml whipping cream", "cream-35", "200 ml"),
    ],
)
def test_what_the_line_makes_certain_is_taken(line: str, ingredient: str, amount: str) -> None:
    found = drafted(line, SURE)
    assert found.complete, [question.text for question in found.questions]
    value = formula(found)[ingredient]
    assert (value if isinstance(value, str) else value["amount"]) == amount


@pytest.mark.parametrize(
    ("line", "topic", "choice"),
    [
        ("2 leaves gelatine", "ingredient", "gelatine-sheet-silver"),
        ("8 g gelatine", "ingredient", "gelatine-powder-140"),
        ("200 ml cream", "ingredient", "cream-35"),
        ("100 g dark chocolate", "ingredient", "couverture-dark-55"),
        ("100 g dark chocolate, 70 g more for the top", "ingredient", "couverture-dark-70"),
        ("240 g blackcurrant purée", "ingredient", "blackcurrant-puree"),
        ("100 g blackcurant pure", "ingredient", "blackcurrant-puree"),
        ("100 g flubber", "ingredient", "leave-out"),
        ("3 eggs", "amount", "3 medium egg (EU)"),
        ("2 large eggs", "amount", "2 large egg (US)"),
        ("3 egg yolks", "amount", "3 large egg (EU)"),
        ("100-120 g raspberries", "amount", "120 g"),
        ("1 can condensed milk", "amount", "397 g"),
    ],
)
def test_what_could_mean_several_things_is_asked(line: str, topic: str, choice: str) -> None:
    found = drafted(line, SURE)
    (question,) = found.questions
    assert question.key == f"dome-1-{topic}"
    assert question.about == line
    assert choice in dict(question.choices)
    (value,) = formula(found).values()
    assert value["ask"] == question.text


def test_large_eggs_are_large_in_the_choices() -> None:
    (question,) = drafted("2 large eggs", SURE).questions
    assert {answer for answer, _ in question.choices} == {"2 large egg (EU)", "2 large egg (US)"}


def test_an_amount_that_is_not_said_is_asked() -> None:
    (question,) = drafted("salt", SURE).questions
    assert question.text == "How much Salt? The line does not say."
    assert formula(drafted("salt", SURE | {"dome-1-amount": "2 g"})) == {"salt": "2 g"}


def test_whose_spoons_is_asked_once_for_all_lines() -> None:
    found = drafted("1 tbsp honey\n2 tsp honey\n1 cup milk, whole", SURE)
    assert [question.key for question in found.questions].count("measures") == 1
    answered = drafted("1 tbsp honey", SURE, measures="au")
    assert answered.complete and "measures: au" in answered.document


def test_the_same_ingredient_twice_keeps_its_name() -> None:
    found = formula(drafted("100 g caster sugar\n50 g caster sugar", SURE))
    assert found == {
        "caster-sugar": "100 g",
        "caster-sugar-2": {"ingredient": "caster-sugar", "amount": "50 g"},
    }


def test_a_line_that_is_no_ingredient_can_be_left_out() -> None:
    text = "100 g caster sugar\nBest on the day."
    found = drafted(text, SURE | {"dome-2-ingredient": "leave-out"})
    assert found.complete and list(formula(found)) == ["caster-sugar"]


def test_a_mousse_is_asked_for_its_density() -> None:
    found = drafted("Mousse:\n100 g caster sugar")
    assert keys(found) == {"mousse-density"}
    assert drafted("Mousse:\n100 g caster sugar", {"mousse-density": "0.6 g/ml"}).complete


def test_a_refused_answer_is_named_and_asked_again() -> None:
    (question,) = drafted("2 leaves gelatine", SURE | {"dome-1-ingredient": "blue"}).questions
    assert question.refused == "blue"
    assert re.match(r"The larder knows no 'blue'\. Gelatine sheets", question.text)
    assert "gelatine-sheet-gold" in dict(question.choices)


def test_an_answer_that_is_ambiguous_itself_is_asked_about() -> None:
    (question,) = drafted("100 g flubber", SURE | {"dome-1-ingredient": "gelatine"}).questions
    assert question.text.startswith("Gelatine in sheets or as powder")


def test_answers_to_nothing_are_listed() -> None:
    assert drafted("100 g caster sugar", SURE | {"x": "1"}).unasked == ("x",)


PARTS = "Mousse:\n100 g caster sugar\nBase:\n50 g caster sugar\nSyrup:\n50 g water\n"
PLACED = {
    "mousse-density": "0.6 g/ml",
    "mousse-place": "filling",
    "base-place": "base",
    "base-size": "60 mm × 5 mm",
    "syrup-kind": "soak",
    "syrup-place": "soak",
    "syrup-size": "3 g",
}


def placement(found: Draft) -> list[dict[str, Any]]:
    """Placement of a draft."""
    content: dict[str, Any] = read_tree(found.document, file="draft").data
    return list(content["placement"])


def test_a_syrup_goes_on_the_only_base() -> None:
    found = drafted(PARTS, PLACED)
    assert found.complete
    assert placement(found)[-1] == {"component": "syrup", "as": "soak", "on": "base", "mass": "3 g"}


def test_a_mould_is_filled_from_its_closed_end_and_a_glass_from_its_bottom() -> None:
    base_first = PARTS.replace("Mousse:", "X:").replace("Base:", "Mousse:").replace("X:", "Base:")
    order = [entry["as"] for entry in placement(drafted(base_first, PLACED))]
    assert order == ["filling", "base", "soak"]
    order = [entry["as"] for entry in placement(drafted(PARTS, PLACED, upright=True))]
    assert order == ["base", "filling", "soak"]


def test_a_component_can_go_into_another() -> None:
    used = {"syrup-place": "used", "syrup-into": "mousse", "syrup-size": "20 g"}
    found = drafted(PARTS, PLACED | used)
    assert found.complete
    assert formula(found, "mousse")["syrup"] == {"component": "syrup", "amount": "20 g"}


def test_a_weighed_mould_is_asked_for_its_cavities() -> None:
    like = {"kind": "hemisphere", "diameter": "70 mm"}
    mould = {"id": "m", "name": "M", "shape": {"kind": "measured", "holds": "75 ml", "like": like}}
    assert keys(drafted("100 g caster sugar", SURE, mould=mould)) == {"cavities"}
    found = drafted("100 g caster sugar", SURE | {"cavities": "8"}, mould=mould)
    assert found.complete and "cavities: 8" in found.document


def test_a_complete_draft_reads_as_a_dessert() -> None:
    document, _ = read_dessert(drafted(PARTS, PLACED).document, file="draft.yaml")
    assert list(document.components) == ["mousse", "base", "syrup"]


@pytest.mark.parametrize("text", ["", "\n \n", "Mousse:\n", "1 g salt\n" * 61])
def test_no_lines_or_too_many_are_refused(text: str) -> None:
    with pytest.raises(DocumentError):
        drafted(text)
