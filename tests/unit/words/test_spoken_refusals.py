"""Refusals speak the language of whoever meets them, down to every part of their sentences."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from dessert_texts import DOME, dessert_of, sheet_of
from entremetry.agenda.local_time import local_time
from entremetry.dessert.document import DessertDocument
from entremetry.dessert.draft import DraftRequest
from entremetry.dessert.starting_place import Room, starting_place, starting_shape
from entremetry.documents import read_tree, renamed
from entremetry.documents.editing import moved
from entremetry.errors import Conflict, EntremetryError, UnknownName
from entremetry.formula.foam import aerate_to, fold, whip
from entremetry.formula.loss import bake, evaporate, leave_behind, reduce_to_brix, reduce_to_mass
from entremetry.formula.mix import Mix
from entremetry.formula.scaling import factor_for_mass
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.reading import read_kitchen
from entremetry.larder.constituents import Constituents
from entremetry.physics.gelatine import BLOOM
from entremetry.quantities import parse_amount, parse_temperature
from entremetry.questions.reading import read_question
from entremetry.shapes.plan_check import require_outlines
from entremetry.shapes.ring import Ring
from entremetry.shapes.stl import mesh_from_stl
from entremetry.shapes.svg import prism_from_svg
from entremetry.store.files import text_of
from entremetry.usecases.building import new_component, weighed_mould
from entremetry.usecases.drafting import chosen_mould, draft_text
from entremetry.words import say, speaking
from unit.quantities.test_parsing import REFUSED
from unit.web.marked_language import MARKED_LANGUAGE, Marking, words

FIELD = re.compile(r"(?<!\{)(\{\w+\})(?!\})")
SYRUP = Mix(constituents=Constituents(water=0.1, sucrose=0.1))
NOW = datetime(2026, 11, 28, 12, tzinfo=UTC)
PARIS = ZoneInfo("Europe/Paris")


class Opening(Marking):
    """Marks a message but for its fields, so that a field that was not said is found too."""

    def gettext(self, message: str) -> str:
        return super().gettext(FIELD.sub(r"⟧\1⟦", message))

    def pgettext(self, context: str, message: str) -> str:
        return self.gettext(message)

    def ngettext(self, one: str, many: str, number: int) -> str:
        return self.gettext(one if number == 1 else many)


@pytest.fixture
def marked(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Speak a language in which every message is marked."""
    module = sys.modules["entremetry.words.language"]  # the package has a function of that name
    language = replace(MARKED_LANGUAGE, messages=Opening())
    monkeypatch.setattr(module, "language", lambda _code: language)
    with speaking("eo"):
        yield


def schema_words(found: Any) -> Iterator[str]:
    """Yield the keys and the fixed values of a schema: words of documents, not of messages."""
    if isinstance(found, dict):
        yield from found.get("properties", ())
        yield from (each for each in found.get("enum", ()) if isinstance(each, str))
        yield from (found[key] for key in ("const",) if isinstance(found.get(key), str))
        for each in found.values():
            yield from schema_words(each)
    elif isinstance(found, list):
        for each in found:
            yield from schema_words(each)


DOCUMENTS = words(
    " ".join(
        each
        for model in (DessertDocument, KitchenDocument)
        for each in schema_words(model.model_json_schema())
    )
) | words("hole_diameter below_rim per_area label_words component bowl method formula fat")
UNITS = words("gram grams grammes cup tbsp tsp metric degree degc gallon deg litre")
"""Spellings that a document reads, in any language."""


def swapped(old: str, new: str) -> Callable[[], object]:
    """A dome with one part of its text changed, worked out."""
    assert old in DOME
    return lambda: sheet_of(DOME.replace(old, new))


DESSERTS = [
    ("pieces: 6", "pieces: none"),
    ("pieces: 6", "pieces: 0"),
    ("pieces: 6", "peices: 6"),
    ("id: dome", "id: A Dome"),
    ("id: dome\n", ""),
    ("entremetry: 1", "entremetry: 9"),
    ("entremetry: 1", "entremetry: x"),
    ("name: Dome", "name: [a, b]"),
    ("mould: hemisphere-70", "mould: hemisfere-70"),
    ("mould: hemisphere-70", "mould: {id: x, name: X, shape: {kind: cap, diameter: 60 mm}}"),
    (
        "mould: hemisphere-70",
        "mould: {id: x, name: X, shape: {kind: cap, diameter: 60 mm, height: 50 mm}}",
    ),
    ("plain-flour: 100 g", "flour: 100 g"),
    ("plain-flour: 100 g", "plain-flur: 100 g"),
    ("plain-flour: 100 g", "plain-flour: 2 pods"),
    ("plain-flour: 100 g", "plain-flour: 100"),
    ("plain-flour: 100 g", "plain-flour: {amount: 1 g, ask: How much?}"),
    ("plain-flour: 100 g", "x: {component: bse, amount: 5 g}"),
    ("plain-flour: 100 g", "x: {component: insert, amount: 5 ml}"),
    ("plain-flour: 100 g", "x: {component: insert, ingredient: puree, amount: 5 g}"),
    ("plain-flour: 100 g", "x: {component: base, amount: 5 g}"),
    ("density: 1 g/ml", "density: 1 g"),
    ("density: 1 g/ml", "density: 9 g/ml"),
    ("left_behind: 0 %", "left_behind: 0"),
    ("left_behind: 5 %", "left_behind: 100 kg"),
    ("what: [puree, cream-35]", "what: [puree, cream-53]"),
    ("step: mix, what", "step: mixx, what"),
    ("step: pour, left_behind: 5 %", "step: freeze-until"),
    ("step: pour, left_behind: 5 %", "step: simmer, to_brix: 99"),
    ("below_rim: 6 mm", "below_rim: 6 mm, from_closed_end: 6 mm"),
    ("below_rim: 6 mm", "below_rim: 1 mm"),
    ("diameter: 40 mm}", "diameter: 68 mm}"),
    ("diameter: 60 mm}", "diameter: 60 mm, hole_diameter: 60 mm}"),
    ("thickness: 6 mm", "thickness: 90 mm"),
    ("thickness: 6 mm", "thickness: 6 mm, sheet: {length: 50 mm, width: 50 mm}"),
    ("as: filling}", "as: filing}"),
    ("as: filling}", "as: layer, height: 3 mm, mass: 4 g}"),
    ("components:", "ask: [Which mould?]\ncomponents:"),
    ("components:", "ingredients: {jam: {like: purree}}\ncomponents:"),
    ("components:", "ingredients: {jam: {name: Jam}}\ncomponents:"),
    (
        "components:",
        "ingredients: {jam: {name: Jam, density: 1 g/ml, per_100g: {sugars: 90, fat: 70}}}\n"
        "components:",
    ),
    ("components:", "ingredients: {jam: {like: puree, per_100g: {suggars: 9}}}\ncomponents:"),
    ("components:", "ingredients: {jam: {like: puree, per_100g: {salt: 900}}}\ncomponents:"),
]
TEXTS = [
    "",
    "- a\n- b",
    "a: 1\na: 2",
    "b: &x 1",
    "a: *x",
    "a: {<<: {b: 1}}",
    "a: !mine x",
    "a: .nan",
    "a: 1\n---\nb: 2",
    "a\x07: 1",
    'a: "\\0"',
    "? [a]\n: b",
    "a: [1,",
    "a: 1\n b: 2",
    'a: "b',
    "a: @b",
    "a: 1\n- b",
    "a: b: c",
    "a:\n\tb: 1",
    "a: " + "[" * 25 + "]" * 25,
    "a: [" + "1," * 25_000 + "]",
    "a: " + "x" * 1_000_001,
]
KITCHENS = [
    "moulds: [{id: m, name: M, shape: {kind: hemisphere, diameter: 70 mm}, owned: none}]",
    "people: [{name: A, free: [{from: '10:00', to: '09:00', day: monday}]}]",
    "people: [{name: A, free: [{from: '9', to: '10:00', day: monday}]}]",
    "people: [{name: A, away: [tomorrow]}]",
    "time_zone: Europe/Pariss",
    "room: {temperature: hot}",
]
ASKED = [
    {},
    {"instead": "a"},
    {"instead": "a", "have": "b", "bloom-rule": "cubic"},
    {"mould": "a", "shape": "ring"},
    {"mould": "a", "cavities": "6"},
    {"mould": "a", "pieces": "many"},
    {"shape": "ring", "size": ""},
    {"shape": "rign", "size": "60 mm"},
    {"shape": "ring", "size": "60 × x mm"},
    {"wait": "a", "for": "1 h", "until": "2026-11-28 19:00"},
]
OTHERS: dict[str, Callable[[], object]] = {
    "conflict": lambda: raised(Conflict("dome", started_from=1, newest=2)),
    "fields of a name": lambda: raised(
        UnknownName("line of {component}", "x", ["xy"], component="Dome")
    ),
    "spoon of nobody": lambda: parse_amount("2 tbsp"),
    "unit": lambda: parse_amount("240 grms"),
    "two numbers": lambda: parse_amount("2 eggs 3"),
    "no text": lambda: parse_temperature(None),  # type: ignore[arg-type]
    "evaporate": lambda: evaporate(SYRUP, 1.0),
    "negative": lambda: evaporate(SYRUP, -1.0),
    "reduce": lambda: reduce_to_mass(SYRUP, 1.0),
    "reduce too far": lambda: reduce_to_mass(SYRUP, 0.01),
    "brix": lambda: reduce_to_brix(SYRUP, 10.0),
    "brix of a caramel": lambda: reduce_to_brix(SYRUP, 99.0),
    "leave": lambda: leave_behind(SYRUP, 1.0),
    "bake": lambda: bake(SYRUP, 2.0),
    "whip": lambda: whip(SYRUP, -1.0),
    "aerate": lambda: aerate_to(SYRUP, 2000.0),
    "fold": lambda: fold(SYRUP, SYRUP, kept=2.0),
    "more taken out": lambda: Mix(constituents=Constituents(sucrose=-1.0)),
    "scale": lambda: factor_for_mass(0.1, 0.0),
    "range": lambda: BLOOM.require(1000.0),
    "ring": lambda: Ring(diameter=0.06, hole_diameter=0.07, height=0.03),
    "section": lambda: Ring(diameter=0.06, hole_diameter=0.02, height=0.03, cross_section="x"),  # type: ignore[arg-type]
    "outline": lambda: require_outlines((np.zeros((2, 2)),)),
    "drawing": lambda: prism_from_svg("M0 0 H", 0.03),
    "mesh": lambda: mesh_from_stl(b"nothing"),
    "not text": lambda: text_of(b"a\0", "page.html", what="saved page"),
    "not UTF-8": lambda: text_of(b"a\xff", "page.html", what="saved page"),
    "rename": lambda: renamed("a: 1\nb: 2\n", ("a",), "b"),
    "move": lambda: moved("a: [1, 2]\n", ("a", 0), 7),
    "hour": lambda: local_time("2026-11-28", PARIS),
    "spring": lambda: local_time("2026-03-29 02:30", PARIS),
    "place": lambda: starting_place("a", "soak", Room()),
    "shape": lambda: starting_shape("cube", Room()),
    "no name": lambda: draft_text(DraftRequest(name=" ", pieces=1, mould=None, text="240 g sugar")),
    "no lines": lambda: draft_text(DraftRequest(name="Dome", pieces=1, mould=None, text="")),
    "no mould": lambda: chosen_mould(None, None, None),
    "mould": lambda: chosen_mould("hemisphere-71", None, None),
    "two moulds": lambda: chosen_mould("hemisphere-70", "70 ml", None),
    "like nothing": lambda: chosen_mould(None, "70 ml", None),
    "no component": lambda: new_component(" ", "mousse", "", {}, measures=None),
    "cavities": lambda: weighed_mould("M", "70 ml", "hemisphere-70", "none"),
    "mould of another": lambda: dessert_of(DOME, mould_id="hemisphere-71"),
}
AUTHORS = words(
    DOME
    + " Jam purree suggars salt bse cream-53 plain-flur peices filing mixx hemisfere dome A Dome"
    + " test yaml kitchen How much Which mould xyz hemisphere rign cubic many cube page html sugars"
    + "tomorrow Pariss Europe Paris hot Monday nothing simmer freeze-until pods flour mine nan "
    + "cake bread self raising wholemeal flour"
    + " Warsaw Madrid instead have linear square root size savarin for eggs grms none xff dish "
    + "ward courts frame oval coupe cylinder cone bar disc log glass straight conical"
    + " rounded"
)


def raised(error: Exception) -> None:
    """Raise an error that is made on the spot."""
    raise error


CASES: dict[str, tuple[Callable[[], object], str]] = {
    **{f"quantity {text[:20]}": (lambda p=p, t=text: p(t), text) for p, text, _ in REFUSED},  # type: ignore[misc]
    **{
        f"text {number}": (lambda t=t: read_tree(t, file="x"), "x")
        for number, t in enumerate(TEXTS)
    },  # type: ignore[misc]
    **{f"dessert {new[:40]}": (swapped(old, new), new) for old, new in DESSERTS},
    **{
        f"kitchen {text[:30]}": (
            lambda t=text: read_kitchen(f"entremetry_kitchen: 1\n{t}\n", file="kitchen"),  # type: ignore[misc]
            text,
        )
        for text in KITCHENS
    },
    **{
        f"question {number}": (lambda g=given: read_question(g, now=NOW, zone=PARIS), "")  # type: ignore[misc]
        for number, given in enumerate(ASKED)
    },
    **{name: (case, "") for name, case in OTHERS.items()},
}


@pytest.mark.usefixtures("marked")
@pytest.mark.parametrize("name", CASES)
def test_every_part_of_a_refusal_is_said(name: str) -> None:
    provoke, written = CASES[name]
    with pytest.raises(EntremetryError) as caught:
        provoke()
    told = str(caught.value)
    assert "⟦" in told
    assert words(told) - words(written) - AUTHORS - DOCUMENTS - UNITS == set(), told


@pytest.mark.usefixtures("marked")
def test_a_field_that_is_not_said_is_found() -> None:
    told = say("found {what}", what="a mapping")
    assert words(told) == {"mapping"}
