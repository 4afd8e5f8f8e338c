"""Answers to forms that write and build a dessert say every word of theirs."""

from __future__ import annotations

from typing import Any

import pytest

from entremetry.web.starter_kitchen import STARTER
from unit.web.conftest import CREAM
from unit.web.marked_language import unsaid, words

Client = Any

AUTHORS = words(CREAM) | words(STARTER) | {"entremetry", "français", "min"}
BUILD = "/desserts/plain-cream/build"
LINES = """\
Makes: 6 slices
Cassis:
240 g blackcurrant purée
1 egg
3 zorgles
salt
Biscuit:
50 g flour

Method:
Warm the purée.
Roll it out.
Do a thing.
"""
DRAFT = {"name": "Cassis", "pieces": "6", "mould": "weighed", "holds": "92", "text": LINES}
SENT = [
    (BUILD, {"do": "paste", "component": "cream", "lines": "20 g flour"}),
    (BUILD, {"do": "nothing"}),
    (BUILD, {"set:pieces": "many"}),
    ("/kitchen/walk/5", {"do": "add-mould", "name": ""}),
    ("/new", DRAFT),
    ("/new", {**DRAFT, "answer:cassis-kind": "mousse", "answer:biscuit-kind": "zorgles"}),
    ("/new", {**DRAFT, "answer:cassis-place": "coating", "typed:cassis-size": "zorgles"}),
]
"""Forms that come back with questions, or with a reason why they are not kept."""


@pytest.mark.parametrize(("path", "form"), SENT)
def test_every_word_of_an_answer_to_a_form_is_said(
    marked: Client, path: str, form: dict[str, str]
) -> None:
    answer = marked.post(path, {"started_from": "1", **form})
    assert answer.status in (200, 422)
    assert unsaid(answer.html, AUTHORS | words(LINES)) == []
