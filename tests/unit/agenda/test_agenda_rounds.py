"""One tray and many pieces: rounds, each with its own mousse, and what comes from the freezer."""

from __future__ import annotations

import pytest

from entremetry.agenda.menu import Menu
from entremetry.errors import QuantityError
from entremetry.usecases.plans import Course
from unit.agenda.menus import HOME, LAYERS, ONE_TRAY, delays, menu, spans, swapped, task

MOUSSE = [f"mousse-{number}" for number in range(1, 6)]


def pieces(number: int, moulds: str = ONE_TRAY, text: str = LAYERS) -> Menu:
    """The layered dessert in some number, in a kitchen with some moulds."""
    return menu(Course(text=text, pieces=number), kitchen=HOME + moulds)


@pytest.fixture(scope="module")
def eighteen() -> Menu:
    """Eighteen pieces: one tray of six for the domes, one of twelve for the hearts."""
    return pieces(18)


def ids(found: Menu) -> set[str]:
    """Ids of all tasks without the key of the dessert."""
    return {each.id.split("/", 1)[1] for each in found.problem.tasks}


def test_six_pieces_take_one_round(eighteen: Menu) -> None:
    assert not [name for name in ids(pieces(6)) if "#" in name]
    assert [name for name in ids(eighteen) if "#" in name]


@pytest.mark.parametrize("name", [*MOUSSE, "assembly-1", "assembly-2", "assembly-3"])
def test_the_mousse_of_each_round_is_made_fresh(eighteen: Menu, name: str) -> None:
    assert {f"{name}#1", f"{name}#2", f"{name}#3"} <= ids(eighteen)
    assert f"{name}#4" not in ids(eighteen)


def test_glazing_base_and_glaze_are_done_once_for_all(eighteen: Menu) -> None:
    assert {"assembly-4", "crust-1", "crust-2", "glaze-1", "glaze-2"} <= ids(eighteen)


def test_hearts_are_made_in_two_rounds_of_their_own_mould(eighteen: Menu) -> None:
    assert {"heart-3#1", "heart-3#2"} <= ids(eighteen)
    assert "heart-3#3" not in ids(eighteen)


def test_a_round_takes_hearts_of_the_rounds_that_are_made_by_then(eighteen: Menu) -> None:
    fed = {
        (made, taken)
        for made in (1, 2)
        for taken in (1, 2, 3)
        if delays(eighteen, f"heart-3#{made}", f"assembly-1#{taken}")
    }
    assert fed == {(1, 1), (1, 2), (1, 3), (2, 3)}  # twelve hearts serve the first two rounds


def test_what_leaves_its_mould_lies_in_the_freezer_for_two_weeks_at_most(eighteen: Menu) -> None:
    for number in (1, 2, 3):
        (delay,) = delays(eighteen, f"assembly-3#{number}", "assembly-4")
        assert (delay.most, delay.firm) == (14 * 1440, False)


def test_hands_go_by_the_pieces_of_the_round() -> None:
    ten = pieces(10)  # six and four
    # 10 min for 6 pieces: 2 whatever the number, 80 s a piece; 4 · 80 s = 5 min 20 s
    assert task(ten, "assembly-1#1").hands_on == 2 + 8
    assert task(ten, "assembly-1#2").hands_on == 2 + 6
    assert ten.dishes[0].pieces == 10


def test_amounts_go_by_the_pieces_of_the_round() -> None:
    words = dict(pieces(10).words)
    whole = dict(pieces(6).words)["layers/mousse-4"].amounts[0]
    first, second = (words[f"layers/mousse-4#{number}"] for number in (1, 2))
    grams = [float(each.amounts[0].split(" g ")[0]) for each in (first, second)]
    assert grams[0] == pytest.approx(float(whole.split(" g ")[0]), abs=1.0)
    assert grams[1] / grams[0] == pytest.approx(4 / 6, abs=0.02)
    assert (second.round, second.rounds) == (2, 2)
    assert words["layers/assembly-1#2"].amounts[0].startswith("4 cavities")


def test_a_mould_is_taken_from_filling_to_unmoulding_in_each_round(eighteen: Menu) -> None:
    taken = spans(eighteen, "mould hemisphere-70")
    assert {(span.first, span.last) for span in taken.values()} == {
        (f"layers/assembly-1#{n}", f"layers/assembly-3#{n}") for n in (1, 2, 3)
    }
    hearts = spans(eighteen, "mould small")
    assert {(span.first, span.last) for span in hearts.values()} == {
        (f"layers/heart-2#{n}", f"layers/heart-3#{n}") for n in (1, 2)
    }


def test_three_trays_take_eighteen_at_once() -> None:
    three = pieces(18, ONE_TRAY.replace("cavities: 6}", "cavities: 6, owned: 3}"))
    assert "assembly-1" in ids(three)
    assert spans(three, "mould hemisphere-70")["assembly-1"].amount == 3


def test_two_desserts_share_the_trays_of_one_mould() -> None:
    both = menu(LAYERS, swapped(("id: layers", "id: others")), kitchen=HOME + ONE_TRAY)
    (mould,) = [r for r in both.problem.resources if r.id == "mould hemisphere-70"]
    assert mould.capacity == 1
    users = [s.first for s in both.problem.spans if s.resource == mould.id]
    assert users == ["layers/assembly-1", "others/assembly-1"]


def test_the_last_custard_that_a_round_needs_is_the_one_that_may_not_stand(eighteen: Menu) -> None:
    limits = [d for d in eighteen.problem.delays if "custard-2" in d.before and "mousse" in d.after]
    assert limits
    assert all(delay.most is not None and delay.most <= 24 * 60 for delay in limits)


def test_a_kitchen_without_the_moulds_says_what_is_assumed() -> None:
    told = " ".join(pieces(6, "").assumptions)
    assert "does not list the mould 'Half-sphere 70 mm': 1 tray" in told
    assert "Heart: the kitchen lists no mould of its shape" in told
    assert "mould" not in " ".join(pieces(6).assumptions)


def test_more_rounds_than_anybody_makes_are_refused_with_the_trays_that_would_do() -> None:
    assert "assembly-1#50" in ids(pieces(300))
    with pytest.raises(QuantityError, match=r"51 rounds.*50 rounds at most.*owned 2 times"):
        pieces(301)
    with pytest.raises(QuantityError, match=r"rounds of the mould .* for 10000 cavities"):
        pieces(10_000)


@pytest.mark.parametrize("number", [0, -1, 10_001])
def test_a_number_of_pieces_that_cannot_be_is_refused(number: int) -> None:
    with pytest.raises(QuantityError, match=r"1 to 10000 pieces"):
        pieces(number)
