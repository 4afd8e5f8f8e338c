"""A small document with a mousse, and how it is opened."""

from __future__ import annotations

from entremetry.dessert.dessert import Dessert
from entremetry.usecases.rebalancing import dessert_of_text

MOUSSE = """\
# A mousse in glasses
entremetry: 1
id: raspberry-glass
name: Raspberry glass
pieces: 6
mould: glass-straight
components:
  raspberry-mousse:
    name: Raspberry mousse
    kind: mousse
    formula:
      gelatine-sheet-gold: 4 sheets       # gold
      raspberry-puree: 350 g
      caster-sugar: 50 g                  # more if it is sour
      cream-35: {amount: 300 g, note: very cold}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 40 g}
      - {step: melt, what: [raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 55 °C}
      - {step: cool-to, temperature: 30 °C}
      - {step: whip, what: [cream-35], bowl: cream, overrun: 90 %}
      - {step: fold, what: [cream]}
      - {step: pour, left_behind: 5 %}
  syrup:
    name: Soaking syrup
    kind: soak
    formula:
      water: 100 g
      caster-sugar: 60 g
placement:
  - {component: raspberry-mousse, as: layer, height: 30 mm}
"""
COMPONENT = "raspberry-mousse"


def opened(text: str) -> Dessert:
    """The dessert of a text."""
    return dessert_of_text(text)


def formula_of(text: str, component: str = COMPONENT) -> dict[str, float]:
    """Lines of a formula with their masses in grams."""
    found = next(each for each in opened(text).components if each.id == component)
    return {line.name: line.mass * 1e3 for line in found.lines}
