"""Answers beside numbers from outside: what one gelatine is of another, by both printed rules."""

from __future__ import annotations

import pytest

from entremetry.questions import Instead
from entremetry.usecases.questions import ask_of_text

PANNA = """\
entremetry: 1
id: plain
name: Plain
pieces: 6
mould: cylinder-60
components:
  cream:
    name: Set cream
    kind: mousse
    formula: {cream-35: 1000 g, gelatine-sheet-gold: 12 g}
    density: 1 g/ml
placement: [{component: cream, as: filling}]
"""


@pytest.mark.parametrize(
    ("have", "linear", "root"),
    [
        ("gelatine-sheet-silver", "15 g", "13 g"),  # 12 g of 200 as 160: 15.0 and 13.4
        ("gelatine-powder-220", "11 g", "11 g"),  # factors 0.909 and 0.953: 10.9 and 11.4
        ("gelatine-sheet-bronze", "18 g", "15 g"),  # factors 1.538 and 1.240: 18.5 and 14.9
    ],
)
def test_both_rules_are_told(have: str, linear: str, root: str) -> None:
    answer = ask_of_text(PANNA, Instead(old="gelatine-sheet-gold", have=have))
    told = next(fact.text for fact in answer.facts if "by gel strength" in fact.text)
    assert f"are {linear} of" in told and f"and {root} by gel strength" in told
