"""Documents of desserts and kitchens: read, edited, drafted, and spoilt in every way."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from entremetry.dessert import DraftRequest, draft, read_dessert
from entremetry.documents import edited, read_tree, removed, written
from entremetry.errors import EntremetryError
from entremetry.kitchen import moulds_of, read_kitchen
from entremetry.larder.own import own_ingredients
from entremetry.store.shelf import no_mesh
from properties.strategies_dessert import case_of, desserts, pasted, texts
from properties.strategies_documents import paths, scalars
from properties.strategies_kitchen import kitchens
from small_larder import SMALL_LARDER

_SPOILT = st.one_of(
    scalars,
    st.sampled_from(
        ["0 g", "-3 g", "1e9 kg", "240 mm", "2 leaves", "900 %", "-40 °C", [], {}, [1]]
    ),
    st.sampled_from(["filling", "insert", "base", "soak", "glaze", "heart", "hemisphere-30"]),
)


@settings(max_examples=40)
@given(st.one_of(desserts(), kitchens), st.data())
def test_a_spoilt_document_is_computed_or_refused(document: Any, draw: st.DataObject) -> None:
    text = written(document)
    for _ in range(draw.draw(st.integers(1, 3))):
        path = draw.draw(st.sampled_from(paths(read_tree(text, file="drawn").data)))
        if len(path) > 1 and draw.draw(st.booleans()):
            text = removed(text, path)
        else:
            text = edited(text, path, draw.draw(_SPOILT))
    try:
        assert case_of(text).sheet.pieces >= 1
    except EntremetryError as error:
        assert str(error)


@settings(max_examples=40)
@given(texts, st.integers(1, 999))
def test_an_edit_keeps_every_comment_and_the_rest(text: str, pieces: int) -> None:
    commented = "# On top.\n" + text.replace("\n", "  # beside it\n", 1)
    changed = edited(commented, ("pieces",), pieces)
    before, _ = read_dessert(text, file="drawn.yaml")
    after, _ = read_dessert(changed, file="drawn.yaml")
    assert changed.count("#") == commented.count("#")
    assert after == before.model_copy(update={"pieces": pieces})


@settings(max_examples=40)
@given(kitchens)
def test_every_kitchen_is_accepted_and_its_moulds_are_made(kitchen: Any) -> None:
    document = read_kitchen(written(kitchen), file="kitchen.yaml")
    moulds = moulds_of(document, file="kitchen.yaml", read_mesh=no_mesh)
    assert [mould.id for mould in document.moulds] == list(moulds)
    assert all(mould.solid.volume > 0.0 for mould in moulds.values())
    own = own_ingredients(document.ingredients, SMALL_LARDER)
    assert [each.id for each in own] == list(document.ingredients)


@settings(max_examples=60)
@given(pasted, st.dictionaries(st.text(max_size=20), st.text(max_size=20), max_size=3))
def test_any_pasted_text_becomes_a_draft_or_a_refusal(text: str, answers: dict[str, str]) -> None:
    request = DraftRequest(name="Drawn", pieces=6, mould="cap-80", text=text, answers=answers)
    try:
        drafted = draft(request, SMALL_LARDER, {})
    except EntremetryError as error:
        assert str(error)
        return
    keys = [question.key for question in drafted.questions]
    assert len(keys) == len(set(keys))
    data = read_tree(drafted.document, file="draft.yaml").data
    assert read_tree(written(data), file="draft.yaml").data == data
    if not drafted.complete:
        assert "ask" in drafted.document


@settings(max_examples=40)
@given(pasted)
def test_first_choices_complete_a_draft_which_then_reads(text: str) -> None:
    answers: dict[str, str] = {}
    for _ in range(12):
        request = DraftRequest(name="Drawn", pieces=6, mould="cap-80", text=text, answers=answers)
        try:
            drafted = draft(request, SMALL_LARDER, {"cap-80": {"kind": "cap"}})
        except EntremetryError:
            return
        if drafted.complete:
            break
        for question in drafted.questions:
            first = question.choices[0][0] if question.choices else question.example
            answers[question.key] = first
    assert drafted.complete and "ask" not in read_tree(drafted.document, file="d").data
    read_again = draft(request, SMALL_LARDER, {"cap-80": {"kind": "cap"}})
    assert read_again.document == drafted.document
