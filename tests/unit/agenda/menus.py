"""Menus for the tests: desserts with stated times alone, a kitchen, and the short way to both."""

from __future__ import annotations

from datetime import UTC, datetime

from pydantic import TypeAdapter

from entremetry.agenda.menu import Menu
from entremetry.method.step import AnyStep, Step
from entremetry.planning import Delay, Span, Task
from entremetry.usecases.batch import surroundings
from entremetry.usecases.plans import Course, composed

NOW = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)
SERVE = "2026-11-28 19:00"
HOME = "entremetry_kitchen: 1\nname: Home\ntime_zone: Europe/Paris\n"
ONE_TRAY = """moulds:
  - {id: hemisphere-70, name: Dome tray, shape: {kind: hemisphere, diameter: 70 mm}, cavities: 6}
  - {id: small, name: Small domes, shape: {kind: hemisphere, diameter: 40 mm}, cavities: 12}
"""
LAYERS = """
entremetry: 1
id: layers
name: Layers
pieces: 6
mould: hemisphere-70
components:
  custard:
    name: Custard
    kind: insert
    formula: {whole-milk: 150 g, egg-yolk: 50 g, caster-sugar: 40 g}
    method:
      - {step: cook-to, temperature: 82 °C, time: 8 min, hands_on: 8 min}
      - {step: strain, hands_on: 1 min}
  heart:
    name: Heart
    kind: insert
    formula: {custard: {component: custard, amount: 60 g}, raspberry-puree: 60 g}
    method:
      - {step: mix, hands_on: 2 min}
      - {step: pour, left_behind: 0 %, hands_on: 3 min}
      - {step: freeze-until, time: 2 h}
  mousse:
    name: Mousse
    kind: mousse
    density: 0.6 g/ml
    formula:
      gelatine-sheet-gold: 3 sheets
      custard: {component: custard, amount: 120 g}
      cream-35: 200 g
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 30 g, time: 10 min, hands_on: 1 min}
      - {step: mix, what: [custard], hands_on: 2 min}
      - {step: mix, what: [gelatine-sheet-gold], hands_on: 2 min}
      - {step: whip, what: [cream-35], bowl: cream, overrun: 90 %, hands_on: 4 min}
      - {step: fold, what: [cream], hands_on: 4 min}
  crust:
    name: Crust
    kind: base
    formula: {plain-flour: 100 g, butter-unsalted: 60 g, caster-sugar: 30 g}
    method:
      - {step: mix, hands_on: 5 min}
      - {step: bake, at: 160 °C, loss: 10 %, time: 20 min, hands_on: 2 min}
  glaze:
    name: Glaze
    kind: glaze
    formula: {water: 60 g, caster-sugar: 160 g, couverture-white-30: 80 g}
    method:
      - {step: simmer, what: [water, caster-sugar], time: 6 min, hands_on: 2 min}
      - {step: mix, what: [couverture-white-30], hands_on: 3 min}
placement:
  - {component: mousse, as: filling}
  - {component: heart, as: insert, shape: {kind: hemisphere, diameter: 40 mm}, below_rim: 8 mm}
  - {component: glaze, as: coating, film: 2 mm, pour: 60 g}
  - component: crust
    as: base
    cut_out: {kind: disc, diameter: 60 mm}
    thickness: 4 mm
    sits: under
assembly:
  - {step: fill, hands_on: 10 min}
  - {step: freeze-until, time: 5 h}
  - {step: unmould, hands_on: 5 min}
  - {step: glaze-at, temperature: 32 °C, within: 3 min, hands_on: 5 min}
  - {step: place, hands_on: 5 min}
  - {step: thaw-until, time: 4 h, where: fridge}
  - {step: serve}
"""
SHORTBREAD = """
entremetry: 1
id: shortbread
name: Shortbread
pieces: 6
mould: hemisphere-70
components:
  dough:
    name: Dough
    kind: base
    formula: {plain-flour: 100 g, butter-unsalted: 60 g}
    method:
      - {step: mix, hands_on: 5 min}
      - {step: bake, at: 180 °C, time: 20 min, hands_on: 2 min}
placement:
  - component: dough
    as: base
    cut_out: {kind: disc, diameter: 60 mm}
    thickness: 4 mm
    sits: under
assembly: [{step: serve}]
"""


def step(**written: object) -> AnyStep:
    """A step as a document writes it."""
    return TypeAdapter[AnyStep](Step).validate_python(written)


def swapped(*swaps: tuple[str, str], text: str = LAYERS) -> str:
    """A document with some of its text replaced; each old text must be there."""
    for old, new in swaps:
        assert old in text, old
        text = text.replace(old, new)
    return text


def menu(
    *desserts: str | Course,
    kitchen: str | None = HOME,
    serve: str = SERVE,
    begin: str | None = None,
    now: datetime = NOW,
) -> Menu:
    """A menu, not yet planned."""
    courses = [each if isinstance(each, Course) else Course(text=each) for each in desserts]
    around = surroundings(kitchen, "kitchen")
    return composed(courses, serve=serve, around=around, begin=begin, now=now)


def task(found: Menu, name: str) -> Task:
    """A task by the end of its id."""
    return next(each for each in found.problem.tasks if each.id.endswith(f"/{name}"))


def delays(found: Menu, before: str, after: str) -> list[Delay]:
    """Limits between two tasks, by the ends of their ids."""
    return [
        delay
        for delay in found.problem.delays
        if delay.before.endswith(f"/{before}") and delay.after.endswith(f"/{after}")
    ]


def before(found: Menu, after: str) -> set[str]:
    """What a task waits for, without the keys of desserts."""
    return {
        delay.before.split("/", 1)[1]
        for delay in found.problem.delays
        if delay.after.endswith(f"/{after}")
    }


def spans(found: Menu, resource: str) -> dict[str, Span]:
    """Who takes up a resource, by the first task without the key of its dessert."""
    return {
        span.first.split("/", 1)[1]: span
        for span in found.problem.spans
        if span.resource == resource
    }
