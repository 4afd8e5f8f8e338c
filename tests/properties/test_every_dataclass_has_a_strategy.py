"""Every public class of the rooms with documents is drawn: as a document, or in what follows.

The strategies draw documents and pasted texts; everything else in these rooms follows from them.
"""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import json
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from types import ModuleType
from typing import Any

import pytest
from hypothesis import given, settings
from pydantic import BaseModel

from entremetry import dessert, kitchen
from entremetry.dessert import DraftRequest, draft
from entremetry.dessert.alteration import setting
from entremetry.dessert.draft_amount import Wanted
from entremetry.dessert.draft_line import drafted_line
from entremetry.dessert.draft_method import Line, Method
from entremetry.dessert.draft_placement import Placing
from entremetry.dessert.draft_question import Answers, Question
from entremetry.dessert.draft_sentences import Sentences
from entremetry.dessert.draft_step import StepDraft
from entremetry.dessert.draft_whole import Whole
from entremetry.dessert.fill_steps import Soak
from entremetry.dessert.named_lines import named_lines
from entremetry.dessert.page_recipe import PageRecipe, page_recipe
from entremetry.dessert.pasted_components import PastedText, pasted_text
from entremetry.dessert.pasted_line import PastedLine, pasted_line
from entremetry.dessert.placing_answer import SIZES, placing_answer
from entremetry.dessert.said_time import said_times
from entremetry.dessert.starting_place import Room
from entremetry.documents import written
from entremetry.errors import EntremetryError
from entremetry.kitchen import moulds_of, read_kitchen
from entremetry.store.shelf import no_mesh
from properties.strategies_dessert import case_of, pasted, texts
from properties.strategies_kitchen import kitchens
from small_larder import SMALL_LARDER

ROOMS = (dessert, kitchen)
READ_FROM_FILES = {"Mesh"}
MOST = settings(max_examples=60)


def public_classes(room: ModuleType) -> Iterator[type]:
    """Dataclasses and models that a module of the room defines and shows."""
    for info in pkgutil.iter_modules(room.__path__, f"{room.__name__}."):
        module = importlib.import_module(info.name)
        for name, found in inspect.getmembers(module, inspect.isclass):
            if found.__module__ == info.name and not name.startswith("_") and _holds_data(found):
                yield found


def _holds_data(kind: type) -> bool:
    return dataclasses.is_dataclass(kind) or issubclass(kind, BaseModel)


def kinds_within(value: Any) -> set[type]:
    """Classes of a value and of everything in it."""
    if isinstance(value, Mapping):
        return {kind for each in value.values() for kind in kinds_within(each)}
    if isinstance(value, list | tuple):
        return {kind for each in value for kind in kinds_within(each)}
    if isinstance(value, BaseModel):
        parts = [getattr(value, name) for name in type(value).model_fields]
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        parts = [getattr(value, field.name) for field in dataclasses.fields(value)]
    else:
        return set()
    return {type(value), *kinds_within(parts)}


@pytest.fixture(scope="module")
def drawn() -> set[type]:
    """Every class that turns up while the strategies are drawn from."""
    seen: set[type] = kinds_within(SIZES)
    seen |= kinds_within(placing_answer("x", "filling", None, {}))
    seen |= kinds_within([setting(("pieces",), 3), Room()])

    @MOST
    @given(texts)
    def desserts(text: str) -> None:
        case = case_of(text)
        required = case.reckoning.requirements(case.sheet.pieces)
        seen.update(kinds_within([case.reckoning, case.sheet, required]))
        brushed = [n for n in case.reckoning.needs if n.component == "soak"]
        soaks = [Soak(component=n.component, name="Soak", mass=n.mass) for n in brushed]
        seen.update(kinds_within(soaks))

    @settings(max_examples=300)
    @given(kitchens)
    def kitchen_documents(kitchen_document: Any) -> None:
        document = read_kitchen(written(kitchen_document), file="kitchen.yaml")
        moulds = moulds_of(document, file="kitchen.yaml", read_mesh=no_mesh)
        seen.update(kinds_within([document, moulds]))

    asked: list[Question] = []

    @MOST
    @given(pasted)
    def drafts(text: str) -> None:
        request = DraftRequest(name="Drawn", pieces=6, mould="cap-80", text=text)
        lines = [pasted_line(line) for line in text.splitlines()]
        wanted = [
            Wanted(pasted=line, key="x-1", ingredient=SMALL_LARDER.find("water"), measures=None)
            for line in lines
        ]
        whole = pasted_text(text, "Drawn")
        seen.update(kinds_within([request, wanted, whole]))
        answers = Answers({})
        seen.update(
            kinds_within([drafted_line(each, "x-1", answers, SMALL_LARDER, "us") for each in lines])
        )
        placing = Placing(names={"x": "X"}, answers=answers, moulds={}, ask=asked.append)
        seen.update(kinds_within([placing, told(whole, asked.append), page_of(lines)]))
        try:
            seen.update(kinds_within(draft(request, SMALL_LARDER, {})))
        except EntremetryError:
            return

    desserts()
    kitchen_documents()
    drafts()
    return seen


def told(pasted: PastedText, ask: Callable[[Question], None]) -> list[Any]:
    """What is made of the sentences and the facts of a pasted text."""
    answers = Answers({})
    lines = [Line(key="water", name="water", number=1)]
    sentences = [
        StepDraft(text=step.text, key=f"step.{number}", answers=answers, ask=ask)
        for number, step in enumerate(pasted.steps, start=1)
    ]
    method = Method(lines=lines, sentences=sentences)
    names = {"drawn": "Drawn"}
    shared = Sentences(steps=pasted.steps, lines=[lines], names=names, answers=answers, ask=ask)
    shared.write({"drawn": {}})
    whole = Whole(request_pieces=None, facts=pasted.facts, answers=answers, ask=ask, moulds={})
    said = [each for step in pasted.steps for each in said_times(step.text)]
    named = [named_lines(step.text, ["water"]) for step in pasted.steps]
    return [sentences, method, method.drafted(), shared, whole, said, named]


def page_of(lines: list[PastedLine]) -> PageRecipe:
    """A page with these lines as data."""
    said = [line.written for line in lines] or ["5 g salt"]
    recipe = {"@type": "Recipe", "name": "Drawn", "recipeIngredient": ["5 g salt", *said]}
    return page_recipe(json.dumps(recipe))


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.__name__.rpartition(".")[2])
def test_every_public_class_is_drawn(room: ModuleType, drawn: set[type]) -> None:
    missing = {kind.__name__ for kind in set(public_classes(room)) - drawn}
    assert missing - READ_FROM_FILES == set()
