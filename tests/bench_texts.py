"""A dessert in which every bench check is content, and ways to spoil it."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from typing import Any

import yaml

from entremetry.checks.bench import Bench
from entremetry.checks.registry import RULES
from entremetry.checks.verdict import Verdict
from entremetry.dessert import read_dessert, reckon, resolve
from entremetry.dessert.reckoning import Reckoning
from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.store.larder_file import open_larder
from entremetry.store.shelf import built_in_moulds, no_mesh
from entremetry.timings.step_temperatures import StepTemperatures

SOAK = {"step": "soak", "what": ["gelatine-sheet-gold"], "water": "20 g", "time": "10 min"}
DOME: dict[str, Any] = yaml.safe_load("""
entremetry: 1
id: dome
name: Dome
pieces: 6
mould: hemisphere-70
components:
  mousse:
    name: Berry mousse
    kind: mousse
    formula: {gelatine-sheet-gold: 4 g, raspberry-puree: 150 g, caster-sugar: 30 g, cream-35: 155 g}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 20 g, time: 10 min}
      - {step: melt, what: [raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 55 °C}
      - {step: cool-to, temperature: 43 °C, time: 15 min}
      - {step: whip, what: [cream-35], bowl: cream, overrun: 90 %}
      - {step: fold, what: [cream], kept: 90 %}
      - {step: pour, left_behind: 5 %}
  insert:
    name: Vanilla insert
    kind: insert
    formula:
      gelatine-sheet-gold: 2 g
      cream-35: 130 g
      egg-yolk: 30 g
      caster-sugar: 25 g
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 10 g, time: 10 min}
      - {step: cook-to, what: [cream-35, egg-yolk, caster-sugar], temperature: 82 °C}
      - {step: mix, what: [gelatine-sheet-gold]}
      - {step: cool-to, temperature: 30 °C, time: 30 min}
      - {step: pour, left_behind: 4 %}
      - {step: freeze-until, temperature: -15 °C, time: 3 h}
  base:
    name: Shortcrust
    kind: base
    formula: {butter-unsalted: 30 g, icing-sugar: 20 g, plain-flour: 60 g, cream-35: 10 g}
    method:
      - {step: mix}
      - {step: rest, temperature: 4 °C, time: 1 h}
      - {step: roll, thickness: 3 mm}
      - {step: bake, at: 160 °C, loss: 11 %}
  glaze:
    name: Mirror glaze
    kind: glaze
    formula:
      gelatine-powder-200: 3 g
      caster-sugar: 42 g
      glucose-syrup-42de: 42 g
      water: 22 g
      condensed-milk-sweetened: 30 g
      couverture-white-30: 42 g
    method:
      - {step: soak, what: [gelatine-powder-200], water: 17 g, time: 10 min}
      - {step: cook-to, what: [caster-sugar, glucose-syrup-42de, water], temperature: 103 °C}
      - {step: mix, what: [condensed-milk-sweetened, gelatine-powder-200, couverture-white-30]}
      - {step: cool-to, temperature: 32 °C, left_behind: 4 %}
placement:
  - {component: mousse, as: filling}
  - component: insert
    as: insert
    shape: {kind: hemisphere, diameter: 40 mm}
    below_rim: 5 mm
  - {component: glaze, as: coating, film: 2 mm, pour: 60 g, caught: 85 %}
  - component: base
    as: base
    cut_out: {kind: disc, diameter: 74 mm}
    thickness: 3 mm
    sits: under
assembly:
  - {step: fill}
  - {step: freeze-until, temperature: -15 °C, time: 6 h}
  - {step: unmould}
  - {step: glaze-at, temperature: 32 °C, within: 3 min}
  - {step: place, what: [base]}
  - {step: thaw-until, temperature: 0 °C, time: 4 h}
  - {step: serve}
""")
LAYERS: dict[str, Any] = yaml.safe_load("""
entremetry: 1
id: glass
name: Glass
pieces: 4
mould: glass-straight
components:
  lower:
    name: Lower
    kind: insert
    formula: {gelatine-sheet-gold: 3 g, raspberry-puree: 200 g, caster-sugar: 20 g}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 15 g, time: 10 min}
      - {step: melt, what: [raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 60 °C}
      - {step: cool-to, temperature: 28 °C}
      - {step: pour, left_behind: 4 %}
  upper:
    name: Upper
    kind: insert
    formula: {raspberry-puree: 200 g, caster-sugar: 20 g, pectin-nh: 2.5 g}
    method:
      - {step: simmer, time: 2 min}
      - {step: cool-to, temperature: 30 °C}
      - {step: pour, left_behind: 4 %}
  crumble:
    name: Crumble
    kind: crumble
    density: 0.45 g/ml
    formula: {plain-flour: 30 g, demerara-sugar: 25 g, butter-unsalted: 27 g}
    method: [{step: mix}, {step: bake, at: 160 °C, loss: 6 %}]
placement:
  - {component: lower, as: layer, height: 25 mm}
  - {component: upper, as: layer, height: 20 mm}
  - {component: crumble, as: layer, mass: 10 g}
assembly:
  - {step: fill}
  - {step: rest, temperature: 4 °C, time: 3 h}
  - {step: place, what: [crumble]}
  - {step: serve}
""")
Changes = Mapping[str, Any]


def changed(document: Mapping[str, Any], changes: Changes) -> dict[str, Any]:
    """A copy in which the value at each path 'a/b/0/c' is another; None takes it out."""
    copy = deepcopy(dict(document))
    for path, value in changes.items():
        *way, last = path.split("/")
        place: Any = copy
        for key in way:
            place = place[int(key)] if isinstance(place, list) else place[key]
        key = int(last) if isinstance(place, list) else last
        if value is None:
            del place[key]
        else:
            place[key] = value
    return copy


def text_of(document: Mapping[str, Any]) -> str:
    """The document as a file would hold it."""
    return yaml.safe_dump(dict(document), allow_unicode=True, sort_keys=False)


def reckoned_bench(document: Mapping[str, Any]) -> Reckoning:
    """The document made and placed, with the larder and the moulds that ship."""
    read, tree = read_dessert(text_of(document), file="bench.yaml")
    dessert = resolve(
        read,
        tree,
        file="bench.yaml",
        larder=open_larder(),
        moulds=built_in_moulds(),
        read_mesh=no_mesh,
    )
    return reckon(dessert, read_mesh=no_mesh)


def bench_of(
    document: Mapping[str, Any],
    kitchen: KitchenDocument | None = None,
    temperatures: Mapping[str, StepTemperatures] | None = None,
) -> Bench:
    """The document on the bench."""
    return Bench(
        reckoning=reckoned_bench(document), kitchen=kitchen, temperatures=temperatures or {}
    )


def verdicts_of(rule_id: str, bench: Bench) -> tuple[Verdict, ...]:
    """What one rule says."""
    rule = next(rule for rule in RULES if rule.id == rule_id)
    return tuple(rule.verdicts(bench))


def step_temperatures(
    kind: str, *, written: float | None, time: float | None, facts: tuple[Any, ...] = ()
) -> StepTemperatures:
    """An answer as the solver would give it, for a step of the whole dessert."""
    return StepTemperatures(
        step=f"assembly-{kind}",
        name="Dome",
        kind=kind,
        sentence=kind,
        target=258.15,
        time=time,
        low=None if time is None else 0.7 * time,
        high=None if time is None else 1.3 * time,
        reason="",
        mostly="",
        because="",
        sources=(),
        assumptions=(),
        curves=(),
        marks=(),
        field=None,
        balance_error=0.0,
        written_time=written,
        facts=facts,
    )
