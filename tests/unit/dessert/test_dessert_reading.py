"""A dessert document that was read is nobody's to change."""

from __future__ import annotations

import pytest

from entremetry.dessert.reading import read_dessert
from entremetry.dessert.translating import settled
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text
from entremetry.usecases.checking import checks_of_text
from entremetry.words import speaking


@pytest.mark.parametrize("name", demo_texts())
def test_what_is_worked_out_of_a_document_leaves_it_as_it_was(name: str) -> None:
    text = demo_texts()[name]
    document, tree = read_dessert(text, file=name)
    before, lines = repr(document), dict(tree.lines)
    for code in ("en", "fr"):
        with speaking(code):
            batch_of_text(text, file=name)
            checks_of_text(text, file=name, times=False)
    settled(text)
    assert read_dessert(text, file="again")[0] is document
    assert (repr(document), dict(tree.lines)) == (before, lines)
