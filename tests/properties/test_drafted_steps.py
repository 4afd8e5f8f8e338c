"""Laws of drafting from any sentences: nothing is lost, and answers lead to an end."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.dessert import Draft, DraftRequest, draft, read_dessert
from entremetry.dessert.pasted_components import pasted_text
from entremetry.dessert.step_words import clauses
from entremetry.documents import read_tree
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_shapes

LARDER, SHAPES = open_larder(), built_in_shapes()
LINES = "Mousse:\n100 g caster sugar\n200 g 35 % cream\n60 g egg white\n2 gold leaves gelatine\n"
OPENINGS = ("Soak", "Whip", "Fold", "Stir in", "Heat", "Add", "Melt", "Whisk", "Pour", "It is")
THINGS = ("the sugar", "the cream", "the egg white", "the gelatine", "it", "half the sugar")
ENDS = ("", " to 60 °C", " for 10 min", " over the cream", ", then fold it into the egg white")
sentences = st.builds(
    "{} {}{}.".format, st.sampled_from(OPENINGS), st.sampled_from(THINGS), st.sampled_from(ENDS)
)
ANSWERS = {"mousse-density": "0.6 g/ml", "mousse-kind": "mousse"}
MOST_ROUNDS = 25


def drafted(steps: list[str], answers: dict[str, str]) -> Draft:
    """Draft a mousse with these steps."""
    text = LINES + "Method:\n" + "\n".join(steps)
    request = DraftRequest(
        name="D", pieces=1, mould="hemisphere-70", text=text, answers=ANSWERS | answers
    )
    return draft(request, LARDER, SHAPES)


@settings(deadline=None, max_examples=25)
@given(st.lists(sentences, min_size=1, max_size=5), st.integers(0, 3))
def test_answering_what_is_asked_ends_in_a_document_that_reads(steps: list[str], turn: int) -> None:
    answers: dict[str, str] = {}
    for _ in range(MOST_ROUNDS):
        found = drafted(steps, answers)
        read_tree(found.document, file="draft.yaml")
        if found.complete:
            break
        for question in found.questions:
            offered = [answer for answer, _ in question.choices] or [question.example]
            answers[question.key] = offered[turn % len(offered)]
    assert found.complete
    read_dessert(found.document, file="draft.yaml")


@given(st.text(max_size=300))
def test_clauses_lose_no_word(text: str) -> None:
    assert "".join("".join(clauses(text)).split()) == "".join(text.split())


@given(st.text(max_size=400))
def test_any_text_is_sorted_without_harm(text: str) -> None:
    found = pasted_text(text, "D")
    assert all(component.lines for component in found.components)
    places = range(len(found.components))
    assert all(s.owner in (None, "assembly") or s.owner in places for s in found.steps)
