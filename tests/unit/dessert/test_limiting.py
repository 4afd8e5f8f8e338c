"""From what there is of an ingredient to how many pieces."""

from __future__ import annotations

import pytest

from dessert_texts import DOME, reckoning_of, sheet_of
from entremetry.dessert import pieces_from
from entremetry.errors import BalanceError, UnknownName


def needed(pieces: int) -> float:
    return sum(
        line.mass
        for part in sheet_of(DOME, pieces).components
        for line in part.lines
        if line.id == "puree"
    )


@pytest.mark.parametrize("have", [0.1, 0.41, 2.0])
def test_the_answer_is_enough_and_one_more_is_not(have: float) -> None:
    pieces = pieces_from(reckoning_of(DOME), "puree", have)
    assert needed(pieces) <= have < needed(pieces + 1)


def test_what_is_exactly_enough_counts() -> None:
    assert pieces_from(reckoning_of(DOME), "puree", needed(7) + 1e-12) == 7


def test_too_little_for_one_piece_says_what_one_takes() -> None:
    with pytest.raises(BalanceError, match="not enough for one piece"):
        pieces_from(reckoning_of(DOME), "puree", 0.001)


def test_an_ingredient_the_dessert_has_not_is_refused_with_the_nearest() -> None:
    with pytest.raises(UnknownName) as caught:
        pieces_from(reckoning_of(DOME), "purée", 0.4)
    assert "puree" in caught.value.nearest
