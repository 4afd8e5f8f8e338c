"""Sentences become typed steps where they are clear; whatever else they could mean is asked."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.dessert import Draft, DraftRequest, draft, read_dessert
from entremetry.documents import read_tree
from entremetry.errors import DocumentError
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_shapes

LINES = """Plum mousse:
240 g blackcurrant purée, unsweetened
2 gold leaves gelatine
200 g 35 % cream
40 g caster sugar
60 g egg white
"""
KNOWN = {"plum-mousse-density": "0.6 g/ml"}


def drafted(steps: str, answers: dict[str, str] | None = None, **known: Any) -> Draft:
    """Draft one mousse with these steps."""
    request = {"name": "Plum", "pieces": 6, "mould": "hemisphere-70"} | known
    text = f"{LINES}Method:\n{steps}"
    given = KNOWN | (answers or {})
    return draft(
        DraftRequest(text=text, answers=given, **request), open_larder(), built_in_shapes()
    )


def data(found: Draft) -> dict[str, Any]:
    """The drafted document."""
    return dict(read_tree(found.document, file="draft").data)


def method(found: Draft) -> list[dict[str, Any]]:
    """The steps of the mousse, without their notes."""
    steps = data(found)["components"]["plum-mousse"].get("method", [])
    return [{name: value for name, value in step.items() if name != "note"} for step in steps]


def keys(found: Draft) -> list[str]:
    """Keys of what is asked about steps."""
    return [question.key for question in found.questions if question.key.startswith("step.")]


def first_step(sentence: str, answers: dict[str, str] | None = None) -> dict[str, Any]:
    """The first step of a method, which must leave nothing open about it."""
    found = drafted(sentence, answers)
    assert not [key for key in keys(found) if key.startswith("step.1.") and "line" not in key]
    return method(found)[0]


@pytest.mark.parametrize(
    ("sentence", "step"),
    [
        ("Heat everything to 60 °C.", {"step": "cook-to", "temperature": "60 °C"}),
        ("Heat everything to 140 °F (60 °C).", {"step": "cook-to", "temperature": "140 °F"}),
        ("Chauffer tous les ingrédients à 60 °C.", {"step": "cook-to", "temperature": "60 °C"}),
        (
            "Bake everything at 170 °C for 12 min.",
            {"step": "bake", "at": "170 °C", "time": "12 min"},
        ),
        ("Bake everything at gas mark 4 for ½ hour.", {"step": "bake", "time": "30 min"}),
        ("Bake everything in a fan oven at 160 °C for 9 min.", {"step": "bake", "fan": True}),
        ("Roll everything out 3 mm thick.", {"step": "roll", "thickness": "3 mm"}),
        ("Cool everything to 35 °C in an ice bath.", {"step": "cool-to", "ice_bath": True}),
        ("Chill everything for 1 hour 30 minutes.", {"step": "rest", "time": "1 h 30 min"}),
        ("Whisk everything until fluffy.", {"step": "whip"}),
        ("Whisk everything until smooth.", {"step": "mix"}),
        ("Slowly stir everything.", {"step": "mix"}),
        ("Everything is then strained: strain well.", {"step": "strain"}),
    ],
)
def test_clear_words_and_numbers_make_a_typed_step(sentence: str, step: dict[str, Any]) -> None:
    found = first_step(sentence)
    assert {name: found.get(name) for name in step} == step


@pytest.mark.parametrize(
    ("sentence", "key", "choices"),
    [
        ("Heat everything.", "step.1.temperature", set()),
        ("Heat everything to 60–65 °C.", "step.1.temperature", {"60 °C", "65 °C"}),
        ("Heat everything to 60 °C (150 °F).", "step.1.temperature", {"60 °C", "150 °F"}),
        ("Heat everything to 60 °C, never over 70 °C.", "step.1.temperature", {"60 °C", "70 °C"}),
        ("Bake everything at 170 °C for 10-12 min.", "step.1.time", {"10 min", "12 min", "unsaid"}),
        ("Bake everything at 170 °C.", "step.1.time", {"unsaid"}),
        ("Chill everything overnight.", "step.1.time", {"unsaid"}),
        ("Roll everything out thinly.", "step.1.thickness", set()),
        ("Admire everything for a while.", "step.1.kind", {"mix", "note"}),
        ("It is nice to bake or to freeze it.", "step.1.kind", {"bake", "freeze-until"}),
        ("Mix half the sugar with the purée.", "step.1.lines", {"1", "4", "none"}),
    ],
)
def test_what_a_sentence_leaves_open_is_asked(sentence: str, key: str, choices: set[str]) -> None:
    found = drafted(sentence)
    asked = {question.key: question for question in found.questions}
    assert key in asked
    assert choices <= {answer for answer, _ in asked[key].choices}
    assert sentence in asked[key].text


def test_a_disagreeing_pair_says_how_it_disagrees() -> None:
    (question,) = drafted("Heat everything to 60 °C (150 °F).").questions
    assert "140 °F" in question.text and "do not agree" in question.text


WHOLE = """\
Soak the gelatine in 12 g cold water for 10 minutes.
Heat the purée with the sugar to 60 °C and stir in the gelatine.
Cool to 30 °C.
Whip the cream until soft peaks form.
Whisk the egg white until stiff.
Fold the cream into the purée, then fold in the egg white.
Pour into the moulds and freeze for 6 hours.
Unmould. Glaze at 32 °C. Thaw for 2 hours in the fridge, then serve.
"""


def test_a_clear_method_is_followed_bowl_by_bowl() -> None:
    found = drafted(WHOLE)
    assert keys(found) == []
    soak, *steps = method(found)
    gelatine, cream, white = "gelatine-sheet-gold", "cream-35", "egg-white"
    assert soak == {
        "step": "soak",
        "what": [gelatine],
        "bowl": gelatine,
        "water": "12 g",
        "time": "10 min",
    }
    assert [(s["step"], tuple(s.get("what", ())), s.get("bowl")) for s in steps] == [
        ("cook-to", ("blackcurrant-puree-unsweetened", "caster-sugar"), None),
        ("mix", (gelatine,), None),
        ("cool-to", (), None),
        ("whip", (cream,), cream),
        ("whip", (white,), white),
        ("fold", (cream,), None),
        ("fold", (white,), None),
        ("pour", (), None),
    ]
    kinds = [step["step"] for step in data(found)["assembly"]]
    assert kinds == ["freeze-until", "unmould", "glaze-at", "thaw-until", "serve"]
    assert found.complete
    read_dessert(found.document, file="draft.yaml")


def test_every_sentence_stays_as_a_note() -> None:
    content = data(drafted(WHOLE))
    notes = [s["note"] for s in content["components"]["plum-mousse"]["method"]]
    notes += [s["note"] for s in content["assembly"]]
    said = " ".join(notes).casefold()
    assert all(word in said for word in WHOLE.casefold().replace(".", "").replace(",", "").split()
               if word not in ("and", "then"))  # fmt: skip


def test_preparation_is_a_note_and_no_step() -> None:
    found = drafted("Preheat the oven. Mix everything.")
    assert [step["step"] for step in method(found)] == ["mix"]
    assert data(found)["components"]["plum-mousse"]["note"] == "Preheat the oven."


def test_what_it_means_is_asked_and_answered() -> None:
    text = "Heat the purée with the sugar to 60 °C.\nWhip the cream, then fold it into the purée."
    open_draft = drafted(text)
    assert "step.3.it" in keys(open_draft)
    found = drafted(text, {"step.3.it": "cream-35"})
    assert method(found)[2] == {"step": "fold", "what": ["cream-35"]}


def test_a_line_that_no_step_names_is_asked_and_put_where_the_answer_says() -> None:
    text = "Heat the purée to 60 °C.\nStir the gelatine, sugar and egg white into the purée."
    assert keys(drafted(text)) == ["step.1.line-3"]
    found = drafted(text, {"step.1.line-3": "2"})
    assert found.complete and method(found)[1]["what"][0] == "cream-35"


def test_a_bowl_that_never_joins_is_asked_and_poured_where_the_answer_says() -> None:
    text = "Heat the purée, sugar and egg white to 60 °C.\nSoak the gelatine.\nWhip the cream.\n"
    text += "Fold the cream into the purée. Strain."
    assert "step.2.joins" in keys(drafted(text))
    found = drafted(text, {"step.2.joins": "4"})
    assert found.complete
    assert method(found)[3]["what"] == ["cream-35", "gelatine-sheet-gold"]
    read_dessert(found.document, file="draft.yaml")


def test_a_refused_answer_about_a_step_is_asked_again() -> None:
    found = drafted("Heat everything.", {"step.1.temperature": "warm"})
    assert [q.refused for q in found.questions] == ["warm"]
    assert drafted("Heat everything.", {"step.1.temperature": "60 °C"}).complete


TWO = """Makes: 8 pieces
Mousse:
100 g caster sugar
Base:
60 g ground almonds
Method:
Bake the almonds at 170 °C for 9 min. Boil the sugar to 118 °C.
Leave it alone.
To finish:
Fill the moulds.
"""


def test_a_sentence_goes_to_the_component_whose_line_it_names_and_else_is_asked() -> None:
    request = DraftRequest(name="D", pieces=None, mould=None, text=TWO, answers={})
    found = draft(request, open_larder(), built_in_shapes())
    content = data(found)
    assert content["pieces"] == 8
    assert content["components"]["base"]["method"][0]["step"] == "bake"
    assert content["components"]["mousse"]["method"][0]["temperature"] == "118 °C"
    assert content["assembly"] == [{"step": "fill", "note": "Fill the moulds."}]
    asked = {question.key: question for question in found.questions}
    assert {"mould", "step.3.of"} <= set(asked)
    assert dict(asked["step.3.of"].choices)["base"] == "Base"


@pytest.mark.parametrize(
    ("said", "answer", "count"),
    [
        ("Makes 8 domes", "", {"pieces": 8}),
        ("Serves 8", "1 for 8", {"pieces": 1, "serves": 8}),
        ("Serves 8", "8", {"pieces": 8}),
        ("Pour 8 personnes", "8", {"pieces": 8}),
        ("Makes 6 to 8 pieces", "7", {"pieces": 7}),
    ],
)
def test_a_yield_that_counts_people_is_asked(said: str, answer: str, count: dict[str, int]) -> None:
    def found(answers: dict[str, str]) -> Draft:
        text = f"{said}\n5 g salt"
        return draft(
            DraftRequest(name="D", pieces=None, mould="hemisphere-70", text=text, answers=answers),
            open_larder(),
            built_in_shapes(),
        )

    asked = "pieces" in [question.key for question in found({}).questions]
    assert asked is bool(answer)
    content = data(found({"pieces": answer} if answer else {}))
    assert {name: content[name] for name in count} == count


def test_times_that_do_not_add_up_are_told() -> None:
    text = "Total time: 1 h\nPrep time: 50 min\nCook time: 40 min\n5 g salt\nMethod:\nRest for 3 h."
    request = DraftRequest(name="D", pieces=1, mould="hemisphere-70", text=text, answers={})
    found = draft(request, open_larder(), built_in_shapes())
    assert found.remarks == (
        "The text says 1 h in all; preparation and cooking add up to 1 h 30 min.",
        "The text says 1 h in all; the times of its steps add up to 3 h.",
    )


def test_an_amount_stated_twice_that_disagrees_is_asked() -> None:
    text = "8 oz (300 g) caster sugar\n100 g (3 ½ oz) whole milk"
    request = DraftRequest(name="D", pieces=1, mould="hemisphere-70", text=text, answers={})
    found = draft(request, open_larder(), built_in_shapes())
    asked = {question.key: question for question in found.questions}
    assert [answer for answer, _ in asked["d-1-amount"].choices] == ["8 oz", "300 g"]
    assert "d-2-amount" not in asked


def test_more_steps_than_a_method_holds_are_refused() -> None:
    with pytest.raises(DocumentError, match="101 steps"):
        drafted("Mix it.\n" * 101)
