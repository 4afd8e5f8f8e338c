"""Steps as a cook would say them."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter

from entremetry.method import KINDS, AnyStep, Step, sentence, sentences
from entremetry.method.phrases import spoken
from entremetry.words import speaking

ONE: TypeAdapter[AnyStep] = TypeAdapter(Step)
NAMES = {
    "gelatine": "Gelatine sheet, gold",
    "cream": "Cream 35 %",
    "milk": "Whole milk",
    "vanilla": "Vanilla pod",
    "sugar": "Sugar",
    "hfcs": "HFCS",
}


def said(kind: str, *, oven_fan: bool | None = None, factor: float = 1.0, **fields: Any) -> str:
    step = ONE.validate_python({"step": kind, **fields})
    return sentence(step, names=NAMES, factor=factor, oven_fan=oven_fan)


def method(lines: list[str], *steps: dict[str, Any], **options: Any) -> tuple[str, ...]:
    written = tuple(ONE.validate_python(step) for step in steps)
    return sentences(lines, written, component="x", names=NAMES, **options)


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        ({"step": "weigh"}, "Weigh out everything."),
        (
            {"step": "soak", "what": ["gelatine"], "water": "20 g", "time": "10 min"},
            "Soak the gelatine sheet in 20 g cold water for 10 minutes.",
        ),
        ({"step": "mix", "what": ["milk", "sugar"]}, "Mix the whole milk and sugar."),
        ({"step": "mix", "time": "1 min"}, "Mix well for 1 minute."),
        ({"step": "melt", "temperature": "45 °C"}, "Melt to 45 °C (113 °F)."),
        (
            {"step": "cook-to", "what": ["cream", "milk", "vanilla"], "temperature": "82 °C"},
            "Heat the cream 35 %, whole milk and vanilla pod to 82 °C (180 °F), stirring.",
        ),
        (
            {"step": "cook-to", "what": ["sugar"], "temperature": "118 °C"},
            "Boil the sugar to 118 °C (244 °F).",
        ),
        (
            {"step": "simmer", "to_mass": "180 g", "time": "10 min"},
            "Simmer for 10 minutes, until 180 g is left.",
        ),
        ({"step": "simmer", "to_brix": 65}, "Simmer until it has 65 °Brix."),
        (
            {"step": "simmer", "temperature": "90 °C", "evaporates": "40 g"},
            "Simmer at 90 °C (194 °F); about 40 g of water boils away.",
        ),
        ({"step": "simmer", "evaporates": "12 %"}, "Simmer until it has lost 12 % of its weight."),
        ({"step": "cool-to", "temperature": "24 °C"}, "Cool to 24 °C (75 °F)."),
        ({"step": "strain"}, "Strain."),
        (
            {"step": "strain", "removes": ["vanilla"]},
            "Strain, taking out the vanilla pod.",
        ),
        (
            {"step": "whip", "what": ["cream"], "overrun": "90 %"},
            "Whip the cream 35 % to 1.9 times the volume.",
        ),
        ({"step": "whip", "density": "0.5 g/ml"}, "Whip until 100 ml weighs 50 g."),
        ({"step": "whip"}, "Whip."),
        ({"step": "fold", "what": ["cream"]}, "Fold in the cream 35 %."),
        (
            {"step": "fold", "what": ["cream", "hfcs"]},
            "Fold the cream 35 % and HFCS together.",
        ),
        ({"step": "roll", "thickness": "3 mm"}, "Roll out 3 mm thick."),
        ({"step": "cut"}, "Cut to shape."),
        ({"step": "cut", "trim": "10 %"}, "Cut to shape, trimming off about 10 %."),
        (
            {"step": "bake", "at": "180 °C", "time": "90 min", "loss": "11 %"},
            "Bake at 180 °C / 350 °F (160 °C fan) for 1 hour 30 minutes, "
            "until it weighs 11 % less.",
        ),
        ({"step": "pour"}, "Pour out, ready for use."),
        ({"step": "place"}, "Put it in place."),
        ({"step": "fill"}, "Fill the mould."),
        (
            {"step": "freeze-until", "temperature": "-18 °C", "time": "6 h"},
            "Freeze until the centre is at -18 °C (0 °F), about 6 hours.",
        ),
        ({"step": "freeze-until", "time": "30 min"}, "Freeze for 30 minutes."),
        ({"step": "unmould"}, "Unmould."),
        (
            {"step": "glaze-at", "temperature": "32 °C", "within": "3 min"},
            "Within 3 minutes, glaze at 32 °C (90 °F).",
        ),
        (
            {"step": "thaw-until", "temperature": "4 °C", "time": "4 h"},
            "Thaw until the centre is at 4 °C (39 °F), about 4 hours.",
        ),
        (
            {"step": "rest", "temperature": "4 °C", "time": "1 h"},
            "Leave to rest at 4 °C (39 °F) for 1 hour.",
        ),
        (
            {"step": "hold", "temperature": "4 °C", "time": "2 days"},
            "Keep it at 4 °C (39 °F) for up to 2 days.",
        ),
        ({"step": "serve"}, "Serve."),
    ],
)
def test_a_step_is_one_plain_sentence(fields: dict[str, Any], expected: str) -> None:
    step = ONE.validate_python(fields)
    assert sentence(step, names=NAMES) == expected


def test_the_note_follows_as_it_was_written() -> None:
    assert said("mix", note="stir gently, NO bubbles") == "Mix well. stir gently, NO bubbles"


def test_masses_grow_with_the_batch_and_temperatures_do_not() -> None:
    text = said("simmer", to_mass="180 g", temperature="90 °C", factor=2.5)
    assert text == "Simmer at 90 °C (194 °F), until 450 g is left."


@pytest.mark.parametrize(
    ("fan", "oven_fan", "expected"),
    [
        (True, None, "160 °C fan (180 °C / 350 °F conventional)"),
        (True, False, "180 °C / 350 °F (160 °C fan)"),
        (True, True, "160 °C fan (180 °C / 350 °F conventional)"),
        (False, True, "140 °C fan (160 °C / 325 °F conventional)"),
    ],
)
def test_the_oven_is_the_readers(fan: bool, oven_fan: bool | None, expected: str) -> None:
    assert said("bake", at="160 °C", fan=fan, oven_fan=oven_fan) == f"Bake at {expected}."


def test_an_insert_from_start_to_end() -> None:
    told = method(
        ["gelatine", "milk", "vanilla", "sugar", "cream"],
        {"step": "soak", "what": ["gelatine"], "water": "20 g"},
        {"step": "cook-to", "what": ["milk", "vanilla"], "temperature": "82 °C"},
        {"step": "strain", "removes": ["vanilla"]},
        {"step": "whip", "what": ["cream"], "bowl": "foam", "overrun": "90 %"},
        {"step": "cool-to", "temperature": "24 °C"},
        {"step": "fold", "what": ["foam"]},
        factor=2.0,
    )
    assert told == (
        "Soak the gelatine sheet in 40 g cold water.",
        "Heat the whole milk, vanilla pod and sugar to 82 °C (180 °F), stirring; off the heat, "
        "stir in the soaked gelatine sheet.",
        "Strain, taking out the vanilla pod.",
        "Whip the cream 35 % to 1.9 times the volume.",
        "Cool to 24 °C (75 °F).",
        "Fold in the foam.",
    )


def test_what_joins_a_full_bowl_is_added_or_stirred_in() -> None:
    told = method(
        ["milk", "sugar", "vanilla", "cream"],
        {"step": "cook-to", "what": ["milk"], "temperature": "60 °C"},
        {"step": "mix", "what": ["sugar"]},
        {"step": "cook-to", "what": ["vanilla", "cream"], "temperature": "82 °C"},
    )
    assert told[1] == "Stir in the sugar."
    assert told[2].startswith("Add the vanilla pod and cream 35 % and heat to 82 °C")


def test_soaked_gelatine_can_be_melted_alone_or_mixed_in() -> None:
    soak = {"step": "soak", "what": ["gelatine"], "water": "20 g"}
    assert method(["gelatine"], soak, {"step": "melt"})[1] == "Melt the soaked gelatine sheet."
    mixed = method(["gelatine", "milk"], soak, {"step": "mix", "what": ["milk"]})
    assert mixed[1] == "Mix the whole milk and the soaked gelatine sheet."


def test_assumed_soaking_water_is_told_and_scaled() -> None:
    soak = {"step": "soak", "what": ["gelatine"]}
    told = method(["gelatine"], soak, soaking_water={"gelatine": 0.02}, factor=1.5)
    assert told == ("Soak the gelatine sheet in 30 g cold water.",)


def test_two_names_alike_before_the_comma_stay_whole() -> None:
    names = {"a": "Sugar, brown", "b": "Sugar, white"}
    step = ONE.validate_python({"step": "mix", "what": ["a", "b"]})
    assert sentence(step, names=names) == "Mix the sugar, brown and sugar, white."


def test_a_name_that_nobody_prints_is_its_own_word() -> None:
    assert said("mix", what=["dark-rum"]) == "Mix the dark rum."


FRENCH_NAMES = {
    "gelatine": "Gélatine feuille, or",
    "cream": "Crème 35 %",
    "milk": "Lait entier",
    "vanilla": "Gousse de vanille",
    "sugar": "Sucre",
}


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        ({"step": "weigh"}, "Tout peser."),
        ({"step": "weigh", "what": ["sugar"]}, "Peser sucre."),
        (
            {"step": "soak", "what": ["gelatine"], "water": "24.5 g", "time": "10 min"},
            "Faire tremper gélatine feuille dans 25 g d’eau froide pendant 10 min.",
        ),
        ({"step": "mix", "what": ["milk", "sugar"]}, "Mélanger lait entier et sucre."),
        ({"step": "mix", "time": "1 min"}, "Bien mélanger pendant 1 min."),
        ({"step": "melt", "temperature": "45 °C"}, "Faire fondre à 45 °C (113 °F)."),
        (
            {"step": "cook-to", "what": ["cream", "milk", "vanilla"], "temperature": "82 °C"},
            "Chauffer crème 35 %, lait entier et gousse de vanille à 82 °C (180 °F) en remuant.",
        ),
        (
            {
                "step": "cook-to",
                "what": ["sugar"],
                "temperature": "118 °C",
                "time": "6 min",
                "evaporates": "4.9 g",
            },
            "Cuire sucre à 118 °C (244 °F), environ 6 min ; environ 4,9 g d’eau s’évaporent.",
        ),
        (
            {"step": "simmer", "to_mass": "180 g", "time": "10 min"},
            "Laisser frémir pendant 10 min, jusqu’à ce qu’il reste 180 g.",
        ),
        ({"step": "simmer", "to_brix": 65.5}, "Laisser frémir jusqu’à 65,5 °Brix."),
        (
            {"step": "simmer", "evaporates": "12 %"},
            "Laisser frémir jusqu’à une perte de 12 % du poids.",
        ),
        (
            {"step": "simmer", "evaporates": "2.5 %", "time": "3 min"},
            "Laisser frémir pendant 3 min ; environ 2,5 % du poids sont perdus.",
        ),
        (
            {"step": "cool-to", "temperature": "24 °C", "where": "fridge", "covered": True},
            "Refroidir à 24 °C (75 °F) au réfrigérateur, à couvert.",
        ),
        (
            {"step": "cool-to", "temperature": "24 °C", "ice_bath": True, "time": "5 min"},
            "Refroidir à 24 °C (75 °F) dans un bain d’eau glacée, environ 5 min.",
        ),
        ({"step": "strain", "removes": ["vanilla"]}, "Filtrer en retirant gousse de vanille."),
        (
            {"step": "whip", "what": ["cream"], "overrun": "90 %"},
            "Monter crème 35 % jusqu’à 1,9 fois le volume.",
        ),
        (
            {"step": "whip", "density": "0.45 g/ml", "time": "5 min"},
            "Monter pendant 5 min jusqu’à ce que 100 ml pèsent 45 g.",
        ),
        ({"step": "fold", "what": ["cream"]}, "Incorporer délicatement crème 35 %."),
        (
            {"step": "fold", "what": ["cream", "sugar"]},
            "Mélanger délicatement crème 35 % et sucre.",
        ),
        ({"step": "roll", "thickness": "2.5 mm"}, "Abaisser à 2,5 mm."),
        ({"step": "cut", "trim": "8 %"}, "Détailler, avec environ 8 % de parures."),
        (
            {"step": "bake", "at": "160 °C", "fan": True, "time": "12 min", "loss": "11 %"},
            "Cuire au four à 160 °C chaleur tournante (180 °C / 350 °F statique) pendant 12 min, "
            "jusqu’à une perte de 11 % du poids.",
        ),
        ({"step": "pour"}, "Débarrasser, prêt à l’emploi."),
        ({"step": "place", "what": ["sugar"]}, "Mettre en place sucre."),
        ({"step": "fill", "what": ["cream"]}, "Garnir le moule avec crème 35 %."),
        (
            {"step": "freeze-until", "temperature": "-18 °C", "time": "12 h"},
            "Congeler jusqu’à -18 °C (0 °F) à cœur, environ 12 h.",
        ),
        ({"step": "freeze-until", "time": "3 h"}, "Congeler pendant 3 h."),
        ({"step": "unmould"}, "Démouler."),
        (
            {"step": "glaze-at", "temperature": "32 °C", "within": "3 min"},
            "Dans les 3 min, glacer à 32 °C (90 °F).",
        ),
        ({"step": "thaw-until", "temperature": "4 °C"}, "Décongeler jusqu’à 4 °C (39 °F) à cœur."),
        (
            {"step": "rest", "temperature": "4 °C", "time": "12 h", "keeps": "2 days"},
            "Laisser reposer à 4 °C (39 °F) pendant 12 h. Se conserve 2 jours.",
        ),
        ({"step": "hold", "time": "3 days"}, "Conserver pendant 3 jours au plus."),
        ({"step": "serve", "time": "1 min", "note": "Cold!"}, "Servir pendant 1 min. Cold!"),
    ],
)
def test_every_kind_of_step_speaks_french(fields: dict[str, Any], expected: str) -> None:
    with speaking("fr"):
        assert sentence(ONE.validate_python(fields), names=FRENCH_NAMES) == expected


def test_what_was_soaked_goes_into_the_heat_in_french() -> None:
    steps = (
        {"step": "soak", "what": ["gelatine"], "water": "20 g"},
        {"step": "cook-to", "what": ["milk"], "temperature": "60 °C"},
        {"step": "melt", "what": ["sugar"]},
    )
    written = tuple(ONE.validate_python(step) for step in steps)
    lines = ["gelatine", "milk", "sugar"]
    with speaking("fr"):
        told = sentences(lines, written, component="x", names=FRENCH_NAMES)
    assert told[1].endswith("; hors du feu, incorporer gélatine feuille après trempage.")
    assert told[2] == "Ajouter sucre et faire fondre."


@pytest.mark.parametrize(
    ("into", "expected"),
    [
        ("mould", "Garnir le moule."),
        ("moulds", "Garnir les moules."),
        ("glasses", "Garnir les verres."),
        ("vessels", "Garnir les contenants."),
    ],
)
def test_what_is_filled_is_said_in_french(into: str, expected: str) -> None:
    with speaking("fr"):
        assert sentence(ONE.validate_python({"step": "fill"}), names={}, into=into) == expected


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (1.0, "1 second"),
        (45.0, "45 seconds"),
        (60.0, "1 minute"),
        (5400.0, "1 hour 30 minutes"),
        (2 * 86400.0, "2 days"),
        (86400.0 * 2 + 4 * 3600.0, "2 days 4 hours"),
    ],
)
def test_durations_are_spoken(seconds: float, words: str) -> None:
    assert spoken(seconds) == words


def test_every_kind_has_a_sentence_of_its_own() -> None:
    needed = {
        "soak": {"what": ["gelatine"]},
        "fold": {"what": ["cream"]},
        "roll": {"thickness": "3 mm"},
        "bake": {"at": "170 °C"},
    }
    warm = {"cook-to", "cool-to", "freeze-until", "glaze-at", "thaw-until"}
    told = set()
    for kind in KINDS:
        extra = {"temperature": "30 °C"} if kind in warm else needed.get(kind, {})
        told.add(said(kind, **extra))
    assert len(told) == len(KINDS)
