from __future__ import annotations

import math

import numpy as np
import pytest

from entremetry.checks.symptoms import SYMPTOMS
from entremetry.dessert.household_amount import household_amount
from entremetry.publish.days_ahead import days_ahead
from entremetry.publish.pitfalls import pitfalls
from entremetry.publish.reader_measures import measure_words
from entremetry.publish.reader_model import reader_model
from entremetry.publish.reader_text import method_parts
from entremetry.quantities import format_mass
from entremetry.store.demo import demo_texts
from entremetry.store.larder_file import open_larder
from entremetry.usecases.batch import reckoned_sheet, surroundings
from entremetry.words import speaking

AROUND = surroundings(None, "kitchen")
DEMOS = demo_texts()


@pytest.mark.parametrize("name", ["caster-sugar", "cream-35", "gelatine-sheet-gold", "egg-yolk"])
def test_words_of_a_measure_are_those_of_a_mass_very_near(name: str) -> None:
    ingredient = open_larder().find(name)
    words = measure_words(ingredient, (0.004, 0.120), "us")
    assert list(words.masses) == sorted(words.masses)
    for number in range(200):
        mass = 0.001 * 1.04**number
        if not words.masses[0] <= mass <= words.masses[-1]:
            continue
        at = max(n for n, low in enumerate(words.masses) if low <= mass)
        near = [mass * math.exp(0.0151 * step) for step in np.linspace(-1.0, 1.0, 41)]
        accepted = {
            household_amount(m, ingredient, "us").text.replace(
                f"weigh: {format_mass(m)}", "weigh: {}"
            )
            for m in near
        }
        assert words.texts[at] in accepted


@pytest.mark.parametrize("demo", DEMOS)
def test_parts_of_a_method_are_the_method(demo: str) -> None:
    reckoning, sheet = reckoned_sheet(DEMOS[demo], demo, AROUND)
    marked = 0
    for batch in sheet.components:
        component = next(c for c in reckoning.dessert.components if c.id == batch.id)
        told = method_parts(reckoning, component, pieces=sheet.pieces, fan=None)
        assert tuple("".join(p.text for p in parts) for parts in told) == batch.method
        for part in (part for parts in told for part in parts if part.mass is not None):
            marked += 1
            assert format_mass((part.mass or 0.0) * batch.factor) == part.text
    assert marked >= 2


@pytest.mark.parametrize("demo", DEMOS)
def test_the_model_gives_back_the_published_masses(demo: str) -> None:
    reckoning, sheet = reckoned_sheet(DEMOS[demo], demo, AROUND)
    model = reader_model(reckoning, sheet, "us")
    for told, batch in zip(model["components"], sheet.components, strict=True):
        assert told["made"] * batch.factor == pytest.approx(batch.mass.value)
        for line, amount in zip(told["lines"], batch.lines, strict=True):
            assert line["mass"] * batch.factor == pytest.approx(amount.mass)


def test_what_keeps_longest_may_be_made_first() -> None:
    reckoning, _ = reckoned_sheet(DEMOS["blackcurrant-vanilla-dome"], "dome", AROUND)
    rows = {row.name: row for row in days_ahead(reckoning)}
    day = 1440.0
    assert rows["Vanilla cream insert"].earliest >= 14 * day  # it says: keeps 14 days
    assert rows["Blackcurrant mirror glaze"].earliest >= 5 * day  # it says: keeps 5 days
    assert rows["Blackcurrant mousse"].earliest - rows["Blackcurrant mousse"].latest < 120
    assert rows["Thawed"].latest == 0.0
    for row in rows.values():
        assert row.earliest >= row.latest >= 0.0
    assert rows["Blackcurrant mirror glaze"].words == "5 days to 6 h before serving"


def test_the_pitfalls_are_symptoms_with_a_remedy() -> None:
    reckoning, _ = reckoned_sheet(DEMOS["blackcurrant-vanilla-dome"], "dome", AROUND)
    found = pitfalls(reckoning)
    assert len(found) == 6
    assert all(p.seen and p.cause and p.advice for p in found)
    assert len({p.seen for p in found}) == 6


def test_pitfalls_and_days_ahead_are_said_in_the_language_that_is_spoken() -> None:
    reckoning, _ = reckoned_sheet(DEMOS["blackcurrant-vanilla-dome"], "dome", AROUND)
    english = (pitfalls(reckoning), days_ahead(reckoning))
    with speaking("fr"):
        french = (pitfalls(reckoning), days_ahead(reckoning))
        words = [row.words for row in french[1]]
    known = {symptom.name for symptom in SYMPTOMS}
    told = [
        (one, other) for one, other in zip(english[0], french[0], strict=True) if one.seen in known
    ]
    assert len(told) >= 3
    for one, other in told:
        assert (one.seen, one.cause, one.advice) != (other.seen, other.cause, other.advice)
        assert other.seen not in known
    assert any("avant" in text and "jours" in text for text in words)
    assert not any("before" in text for text in words)
