"""Dessert documents for the tests, and the short way from a text to its batch."""

from __future__ import annotations

from textwrap import dedent

from entremetry.dessert import batch_sheet, read_dessert, reckon, resolve
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.reckoning import Reckoning
from entremetry.store.shelf import built_in_moulds, no_mesh
from small_larder import SMALL_LARDER

DOME = """
entremetry: 1
id: dome
name: Dome
pieces: 6
mould: hemisphere-70
components:
  mousse:
    name: Fruit mousse
    kind: mousse
    density: 0.6 g/ml
    formula: {puree: 240 g, cream-35: 200 g, gelatine-sheet-gold: 4 sheets}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 40 g}
      - {step: mix, what: [puree, cream-35]}
      - {step: pour, left_behind: 5 %}
  insert:
    name: Cream insert
    kind: insert
    density: 1 g/ml
    formula: {cream-35: 100 g}
    method: [{step: pour, left_behind: 0 %}]
  base:
    name: Shortcrust
    kind: base
    density: 0.6 g/ml
    formula: {plain-flour: 100 g}
placement:
  - {component: mousse, as: filling}
  - {component: insert, as: insert, shape: {kind: hemisphere, diameter: 40 mm}, below_rim: 6 mm}
  - {component: base, as: base, cut_out: {kind: disc, diameter: 60 mm}, thickness: 6 mm}
"""


def dessert_of(text: str, **choices: str) -> Dessert:
    """Read and resolve a text against the small larder and the built-in shelf."""
    document, tree = read_dessert(dedent(text), file="test.yaml")
    return resolve(
        document,
        tree,
        file="test.yaml",
        larder=SMALL_LARDER,
        moulds=built_in_moulds(),
        read_mesh=no_mesh,
        **choices,  # type: ignore[arg-type]
    )


def reckoning_of(text: str, **choices: str) -> Reckoning:
    """Reckon a text."""
    return reckon(dessert_of(text, **choices), read_mesh=no_mesh)


def sheet_of(text: str, pieces: int | None = None, **choices: str) -> BatchSheet:
    """Batch sheet of a text."""
    reckoning = reckoning_of(text, **choices)
    number = reckoning.dessert.document.pieces if pieces is None else pieces
    return batch_sheet(reckoning, pieces=number, measures="us", fan=None)
