"""Pairs of measures that disagree in the author's own words are found, with the right value."""

from __future__ import annotations

from dessert_texts import DOME, sheet_of


def test_a_slip_in_a_note_is_found_with_its_place() -> None:
    text = DOME.replace("{step: mix, what", "{step: mix, note: Warm to 60 °C (150 °F)., what")
    (slip,) = sheet_of(text).slips
    assert slip.place == "mousse, step 2"
    assert "150 °F" in slip.found and "140" in slip.right


def test_a_weight_and_a_cup_are_compared_by_the_ingredient() -> None:
    said = "note: Then add 300 g (1 us cup) of the plain flour, and stir.\npieces: 6"
    (slip,) = sheet_of(DOME.replace("pieces: 6", said)).slips
    assert (slip.place, slip.found, slip.right) == ("note", "1 us cup", "2⅜ us cups")  # 125 g


def test_a_cup_that_weighs_what_the_larder_says_is_no_slip() -> None:
    said = "note: Then add 125 g (1 us cup) plain flour, and stir.\npieces: 6"
    assert sheet_of(DOME.replace("pieces: 6", said)).slips == ()


def test_measures_that_agree_are_no_slip() -> None:
    text = DOME.replace(
        "pieces: 6", "about: Bake at 180 °C (350 °F), then 60 °C (140 °F).\npieces: 6"
    )
    assert sheet_of(text).slips == ()
