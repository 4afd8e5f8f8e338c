"""Which mould a draft is for, and what is refused before anything is asked."""

from __future__ import annotations

import pytest

from entremetry.dessert.draft import DraftRequest
from entremetry.documents import read_tree
from entremetry.errors import QuantityError, UnknownName
from entremetry.usecases.drafting import chosen_mould, draft_text


def test_a_mould_weighed_with_water_is_like_one_of_the_shelf() -> None:
    mould = chosen_mould(None, "1130 g", "ring-180")
    assert isinstance(mould, dict)
    assert mould["shape"]["holds"] == "1130 g"
    assert mould["shape"]["like"] == {"kind": "cylinder", "diameter": "180 mm", "height": "50 mm"}


def test_a_mould_of_the_shelf_is_named() -> None:
    assert chosen_mould("ring-180", None, None) == "ring-180"


@pytest.mark.parametrize(
    ("mould", "holds", "like"),
    [
        (None, None, None),
        ("", None, None),
        ("ring-180", "75 ml", "cap-80"),
        (None, "75 ml", None),
        (None, "75", "cap-80"),
    ],
)
def test_half_a_mould_is_refused(mould: str | None, holds: str | None, like: str | None) -> None:
    with pytest.raises(QuantityError):
        chosen_mould(mould, holds, like)


def test_an_unknown_mould_is_answered_with_the_nearest() -> None:
    with pytest.raises(UnknownName, match="ring-180"):
        chosen_mould("ring-181", None, None)
    with pytest.raises(UnknownName, match="ring-180"):
        chosen_mould(None, "75 ml", "ring-181")


@pytest.mark.parametrize(
    "changed", [{"name": ""}, {"name": "x" * 121}, {"name": "a\nb"}, {"pieces": 0}]
)
def test_a_request_without_name_or_pieces_is_refused(changed: dict[str, object]) -> None:
    known: dict[str, object] = {"name": "Dome", "pieces": 6, "mould": "cap-80", "text": "5 g salt"}
    with pytest.raises(QuantityError):
        draft_text(DraftRequest(**(known | changed)))  # type: ignore[arg-type]


def test_a_glass_of_the_shelf_is_filled_from_its_bottom() -> None:
    text = "Mousse:\n100 g caster sugar\nBase:\n50 g caster sugar"
    answers = {"mousse-place": "filling", "base-place": "base", "base-size": "50 mm × 5 mm"}
    for mould, first in (("glass-straight", "base"), ("hemisphere-70", "mousse")):
        request = DraftRequest(name="D", pieces=1, mould=mould, text=text, answers=answers)
        data = read_tree(draft_text(request).document, file="draft").data
        assert data["placement"][0]["component"] == first
