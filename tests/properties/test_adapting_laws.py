"""Laws of adapted documents: every demo dessert in every mould and vessel of the shelf.

Either the new document can be made, or it is refused with the reason and what would do.
"""

from __future__ import annotations

from functools import cache

import pytest

from entremetry.adapt.build import build_of
from entremetry.adapt.form import form_of
from entremetry.adapt.moulding import layout_of, reshaped, same_cavity, wanted_of
from entremetry.dessert.placed import fluid
from entremetry.dessert.translating import settled
from entremetry.documents import read_tree
from entremetry.errors import FitError
from entremetry.store.demo import demo_texts
from entremetry.store.shelf import built_in_moulds
from entremetry.usecases.adapting import Adaptation, adapt_of_text
from entremetry.usecases.batch import reckoned, reckoned_sheet, surroundings

AROUND = surroundings(None, "kitchen")
MOULDS = built_in_moulds()
SMALL = ("hemisphere-30", "sphere-50", "savarin-80", "disc-40", "disc-160")
"""Moulds for inserts and sweets, in which a dessert with an insert need not fit."""
PAIRS = [(demo, mould) for demo in demo_texts() for mould in MOULDS]


@cache
def adapted(demo: str, mould: str) -> str | FitError:
    """The new document without its times computed, or the refusal."""
    text = demo_texts()[demo]
    build = build_of(reckoned(text, demo, AROUND), read_tree(text, file=demo).data)
    if same_cavity(build.reckoning.dessert.mould, MOULDS[mould]):
        return text
    wanted = wanted_of(build, MOULDS[mould], None)
    try:
        return settled(reshaped(text, wanted, layout_of(wanted)))
    except FitError as error:
        return error


@pytest.mark.parametrize(("demo", "mould"), PAIRS)
def test_it_can_be_made_or_is_refused_with_a_reason(demo: str, mould: str) -> None:
    found = adapted(demo, mould)
    if isinstance(found, FitError):
        is_bars = form_of(MOULDS[mould]).value == "bars"
        assert mould in SMALL or is_bars, found
        assert "finds no room" in str(found) or "holds nothing that sets it" in str(found)
        return
    reckoning, sheet = reckoned_sheet(found, "new", AROUND)
    placed, cavity = reckoning.placed, reckoning.placed.cavity
    assert all(wall.thinnest >= 0.0 for wall in placed.walls)
    inside = sum(part.volume for part in placed.filled)
    inside += sum(part.solid.volume for part in placed.inclusions)
    free = fluid(cavity, placed.inclusions, cavity.height - placed.free_height, cavity.height)
    assert inside + free == pytest.approx(cavity.volume, rel=1e-3)
    for component in sheet.components:
        weighed = sum(line.mass for line in component.lines)
        gone = sum(change.mass for change in component.changes if change.mass < 0.0)
        assert weighed + gone == pytest.approx(component.ready_mass, rel=1e-6)


@pytest.mark.parametrize(("demo", "mould"), PAIRS)
def test_something_changed_is_told(demo: str, mould: str) -> None:
    text = demo_texts()[demo]
    build = build_of(reckoned(text, demo, AROUND), read_tree(text, file=demo).data)
    if same_cavity(build.reckoning.dessert.mould, MOULDS[mould]):
        assert adapted(demo, mould) == text
    elif isinstance(adapted(demo, mould), str):
        layout = layout_of(wanted_of(build, MOULDS[mould], None))
        assert layout.changes and all(c.because or c.kind == "caution" for c in layout.changes)


@pytest.mark.parametrize("demo", demo_texts())
def test_its_own_mould_changes_nothing(demo: str) -> None:
    text = demo_texts()[demo]
    mould = reckoned(text, demo, AROUND).dessert.mould
    asked = Adaptation(vessel=mould.id) if mould.vessel else Adaptation(mould=mould.id)
    result = adapt_of_text(text, asked)
    assert result.text == text and result.changes == ()
