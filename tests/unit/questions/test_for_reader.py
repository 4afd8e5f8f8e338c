"""Questions that the published page answers of itself."""

from __future__ import annotations

import pytest

from demo_pages import demo_page
from entremetry.publish.recipe_page import LARGEST
from entremetry.quantities import format_mass
from entremetry.questions.for_reader import reader_questions
from entremetry.store.demo import demo_texts
from entremetry.usecases.batch import batch_of_text, reckoned, surroundings
from entremetry.words import speaking

AROUND = surroundings(None, "kitchen")
DEMOS = demo_texts()


def told(demo: str) -> dict[str, tuple[str, ...]]:
    text = DEMOS[demo]
    found = reader_questions(
        text, reckoned(text, demo, AROUND), lambda new: reckoned(new, demo, AROUND)
    )
    return {each.question: each.answers for each in found}


@pytest.mark.parametrize("demo", DEMOS)
def test_every_component_may_be_left_out_or_not(demo: str) -> None:
    answers = told(demo)["Can I leave something out?"]
    assert len(answers) == len(reckoned(DEMOS[demo], demo, AROUND).dessert.components)


def test_gelatine_is_told_for_the_batch_by_both_rules() -> None:
    answers = told("blackcurrant-vanilla-dome")[
        "I have powder instead of sheets, or another gelatine"
    ]
    assert answers[1] == (
        "Blackcurrant mousse: for 4.0 g of Gelatine sheet gold 200 Bloom take 4.0 g of Gelatine "
        "powder 200 Bloom, or 5.0 g of Gelatine sheet silver 160 Bloom (4.5 g by gel strength)."
    )


def test_another_agent_is_told_by_its_dose_on_the_water() -> None:
    answers = told("mango-coconut-lime-glass")[
        "I have powder instead of sheets, or another gelatine"
    ]
    compote = batch_of_text(DEMOS["mango-coconut-lime-glass"]).components[0]
    mass = next(line.mass for line in compote.lines if line.id == "pectin-nh")
    assert answers[0].startswith(f"Mango compote: {format_mass(mass)} of Pectin NH are ")
    assert "where 0.8 % to 2 % are usual" in answers[0]


def test_what_spoils_is_not_said_to_keep_outside_the_fridge() -> None:
    answers = told("mango-coconut-lime-glass")["How long can it wait?"]
    outside = [each for each in answers if "outside the fridge" in each]
    assert outside and all("crumble" in each for each in outside)


def test_they_are_said_in_french() -> None:
    with speaking("fr"):
        answers = told("blackcurrant-vanilla-dome")
    assert "Combien de temps cela peut-il attendre ?" in answers


def test_the_page_has_them_and_stays_small() -> None:
    page = demo_page("blackcurrant-vanilla-dome")
    assert "Can I leave something out?" in page and 'href="#pitfalls"' in page
    assert len(page.encode()) < LARGEST
