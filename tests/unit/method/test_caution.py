"""Cautions come when they should, and never promise anything."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.larder.constituents import Constituents
from entremetry.method import (
    DEFERENCE,
    AnyStep,
    Caution,
    Portion,
    Step,
    cautions,
    gathered,
)
from entremetry.sources import cite
from entremetry.words import speaking

STEPS: TypeAdapter[tuple[AnyStep, ...]] = TypeAdapter(tuple[Step, ...])
MILK = Portion(
    name="Whole milk", constituents=Constituents(water=0.18, milk_fat=0.01, lactose=0.01)
)
YOLK = Portion(name="Egg yolk", constituents=Constituents(water=0.03), tags=frozenset({"raw-egg"}))
FLOUR = Portion(
    name="Plain flour", constituents=Constituents(starch=0.1), tags=frozenset({"raw-flour"})
)
KIWI = Portion(
    name="Kiwi", constituents=Constituents(water=0.2), tags=frozenset({"fruit", "proteolytic"})
)
SHEET = Portion(
    name="Gelatine", constituents=Constituents(protein=0.004), tags=frozenset({"gelling", "animal"})
)
RUM = Portion(name="Rum", constituents=Constituents(water=0.006, alcohol=0.004))
SUGAR = Portion(name="Sugar", constituents=Constituents(sucrose=0.1))
HEAT = {"step": "cook-to", "temperature": "84 °C"}
MIX = {"step": "mix"}


def told(lines: dict[str, Portion], *steps: dict[str, Any]) -> tuple[Caution, ...]:
    return cautions(lines, STEPS.validate_python(steps), component="x")


def texts(lines: dict[str, Portion], *steps: dict[str, Any]) -> str:
    return "\n".join(caution.text for caution in told(lines, *steps))


def test_a_harmless_mix_gets_the_deference_alone() -> None:
    assert told({"a": SUGAR}, MIX) == (DEFERENCE,)


@pytest.mark.parametrize(("celsius", "warned"), [(109, False), (110, True), (170, True)])
def test_hot_sugar_is_warned_of_from_110(celsius: int, warned: bool) -> None:
    step = {"step": "cook-to", "temperature": f"{celsius} °C"}
    assert ("burns deep" in texts({"a": SUGAR}, step)) is warned


@pytest.mark.parametrize(("celsius", "warned"), [(70, True), (71, False), (84, False)])
def test_egg_is_warned_of_below_71(celsius: int, warned: bool) -> None:
    step = {"step": "cook-to", "temperature": f"{celsius} °C"}
    text = texts({"milk": MILK, "yolk": YOLK}, step)
    assert ("egg yolk reaches 71 °C (160 °F)" in text) is warned


def test_egg_added_after_the_heat_is_raw() -> None:
    text = texts(
        {"milk": MILK, "yolk": YOLK}, {**HEAT, "what": ["milk"]}, {**MIX, "what": ["yolk"]}
    )
    assert "pasteurised egg" in text


def test_flour_is_raw_until_it_is_baked() -> None:
    assert "Raw plain flour" in texts({"a": FLOUR}, MIX)
    assert "Raw plain flour" not in texts({"a": FLOUR}, {"step": "bake", "at": "170 °C"})


def test_raw_enzymes_meet_gelatine() -> None:
    assert "Raw kiwi cuts gelatine" in texts({"k": KIWI, "g": SHEET}, MIX)
    assert "Raw kiwi cuts gelatine" in texts({"k": KIWI, "g": SHEET}, HEAT)


def test_enzymes_heated_to_85_or_without_gelatine_do_no_harm() -> None:
    hot = {"step": "cook-to", "temperature": "85 °C"}
    assert "cuts gelatine" not in texts({"k": KIWI, "g": SHEET}, hot)
    assert "cuts gelatine" not in texts({"k": KIWI}, MIX)


def test_alcohol_is_told_as_a_share_of_the_mass() -> None:
    assert "Holds 1.9 % alcohol by mass" in texts({"rum": RUM, "kiwi": KIWI}, MIX)


def test_cooked_custard_is_to_be_cooled_in_two_stages() -> None:
    assert "within 2 hours" in texts({"milk": MILK, "yolk": YOLK}, HEAT)
    assert "within 2 hours" not in texts({"milk": MILK}, MIX)
    assert "within 2 hours" not in texts({"sugar": SUGAR}, HEAT)


def test_a_biscuit_needs_no_cooling_in_stages() -> None:
    oven = {"step": "bake", "at": "170 °C"}
    assert "within 2 hours" not in texts({"y": YOLK, "f": FLOUR}, oven)
    assert "within 2 hours" in texts({"y": YOLK, "milk": MILK}, oven)


def test_the_word_that_promises_is_never_used_and_every_source_exists() -> None:
    everything = told(
        {"y": YOLK, "f": FLOUR, "k": KIWI, "g": SHEET, "rum": RUM, "milk": MILK, "s": SUGAR},
        {"step": "cook-to", "what": ["s"], "bowl": "pan", "temperature": "121 °C"},
        {"step": "cook-to", "what": ["milk"], "temperature": "60 °C"},
        {"step": "fold", "what": ["pan"]},
    )
    assert len(everything) == 7
    for caution in everything:
        assert "safe" not in caution.text.casefold()
        assert cite(caution.source).text


def test_the_last_caution_defers_to_the_rules_of_the_place() -> None:
    assert told({"y": YOLK}, MIX)[-1] == DEFERENCE
    assert "rules of your place" in DEFERENCE.text


def test_gathered_cautions_are_said_once_with_the_deference_last() -> None:
    egg, milk = told({"y": YOLK}, MIX), told({"milk": MILK}, HEAT)
    assert gathered([egg, milk, egg]) == (egg[0], milk[0], DEFERENCE)
    assert gathered([]) == (DEFERENCE,)


def test_cautions_are_said_in_the_language_that_is_spoken() -> None:
    with speaking("fr"):
        found = texts({"a": KIWI, "b": SHEET}, MIX)
        said = told({"a": RUM}, MIX)
        assert gathered([said, said]) == said
    assert found.startswith("À l’état cru, kiwi détruit la gélatine")
    assert said[0].text.startswith("Contient 40 % d’alcool")
    assert said[-1].text.startswith("Ces mises en garde")
    assert told({"a": SUGAR}, MIX) == (DEFERENCE,)


def test_two_raw_things_are_named_together_in_french() -> None:
    with speaking("fr"):
        assert "pour : egg yolk et œuf." in texts({"a": YOLK, "b": replace(YOLK, name="Œuf")}, MIX)
