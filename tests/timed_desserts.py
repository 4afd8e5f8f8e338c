"""A dessert with every step that can be timed, and the short way to its temperatures."""

from __future__ import annotations

from textwrap import dedent

from entremetry.dessert.reckoning import Reckoning
from entremetry.timings.step_temperatures import StepTemperatures
from entremetry.usecases.batch import reckoned, surroundings
from entremetry.usecases.temperatures import temperatures_of_text

TIMED = """
entremetry: 1
id: timed-dome
name: Timed dome
measures: metric
pieces: 6
mould: hemisphere-70
components:
  heart:
    name: Raspberry heart
    kind: insert
    formula: {raspberry-puree: 120 g, caster-sugar: 20 g, gelatine-sheet-gold: 1 sheet}
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 10 g}
      - {step: melt, what: [raspberry-puree, caster-sugar, gelatine-sheet-gold], temperature: 60 °C}
      - {step: cool-to, id: cool-heart, temperature: 30 °C}
      - {step: pour, left_behind: 4 %}
      - {step: freeze-until, id: freeze-heart, temperature: -12 °C}
  mousse:
    name: Vanilla mousse
    kind: mousse
    formula:
      gelatine-sheet-gold: 3 sheets
      whole-milk: 120 g
      caster-sugar: 40 g
      cream-35: 180 g
    method:
      - {step: soak, what: [gelatine-sheet-gold], water: 30 g}
      - step: simmer
        id: simmer-milk
        what: [whole-milk, caster-sugar]
        evaporates: 10 g
      - {step: mix, what: [gelatine-sheet-gold]}
      - {step: cool-to, id: cool-base, temperature: 42 °C, ice_bath: true}
      - {step: whip, what: [cream-35], bowl: cream, overrun: 90 %}
      - {step: fold, id: fold-cream, what: [cream]}
      - {step: pour, left_behind: 5 %}
  crust:
    name: Shortcrust
    kind: base
    formula: {plain-flour: 100 g, butter-unsalted: 60 g, caster-sugar: 30 g}
    method:
      - {step: mix, what: [plain-flour, butter-unsalted, caster-sugar]}
      - {step: bake, at: 160 °C, loss: 10 %}
  glaze:
    name: White glaze
    kind: glaze
    formula:
      water: 60 g
      caster-sugar: 80 g
      glucose-syrup-42de: 80 g
      couverture-white-30: 80 g
      gelatine-powder-200: 6 g
    method:
      - {step: soak, what: [gelatine-powder-200], water: 30 g}
      - step: cook-to
        what: [water, caster-sugar, glucose-syrup-42de]
        temperature: 103 °C
      - {step: mix, what: [couverture-white-30, gelatine-powder-200]}
      - {step: cool-to, id: cool-glaze, temperature: 32 °C}
placement:
  - {component: mousse, as: filling}
  - {component: heart, as: insert, shape: {kind: hemisphere, diameter: 40 mm}, below_rim: 8 mm}
  - {component: glaze, as: coating, film: 2 mm, pour: 60 g}
  - {component: crust, as: base, cut_out: {kind: disc, diameter: 60 mm}, thickness: 4 mm}
assembly:
  - {step: fill}
  - {step: freeze-until, id: freeze, temperature: -12 °C}
  - {step: unmould}
  - {step: glaze-at, id: glaze-it, temperature: 30 °C}
  - {step: thaw-until, id: thaw, temperature: -2 °C, where: fridge, on: glass shelf}
  - {step: serve}
"""

Swap = tuple[str, str]


def unused(*names: str) -> tuple[Swap, ...]:
    """Take components that lie nowhere out of the document."""
    swaps = []
    for name in names:
        begin = TIMED.index(f"  {name}:\n")
        rest = TIMED[begin + 3 :]
        ends = [
            rest.index(f"\n  {n}:\n") for n in ("mousse", "crust", "glaze") if f"\n  {n}:\n" in rest
        ]
        end = begin + 3 + min([*ends, rest.index("\nplacement:")]) + 1
        swaps.append((TIMED[begin:end], ""))
    return tuple(swaps)


MOUSSE_ALONE: tuple[Swap, ...] = (
    (
        "  - {component: heart, as: insert, shape: {kind: hemisphere, diameter: 40 mm}, "
        "below_rim: 8 mm}\n",
        "",
    ),
    (
        "  - {component: crust, as: base, cut_out: {kind: disc, diameter: 60 mm}, "
        "thickness: 4 mm}\n",
        "",
    ),
    ("  - {component: glaze, as: coating, film: 2 mm, pour: 60 g}\n", ""),
    ("  - {step: glaze-at, id: glaze-it, temperature: 30 °C}\n", ""),
    *unused("heart", "crust", "glaze"),
)
"""What is taken out so that nothing but the mousse is in the mould."""

KITCHEN = """
entremetry_kitchen: 1
name: Home
room_temperature: 21 °C
freezers:
  - {name: chest, temperature: -20 °C, stands_on: metal shelf, freezes_per_day: 12 kg}
  - {name: cabinet, temperature: -35 °C, blast: true, stands_on: wire shelf}
fridges: [{name: larder fridge, temperature: 5 °C, fan: true, stands_on: board}]
"""


def changed(*swaps: tuple[str, str], text: str = TIMED) -> str:
    """The dessert with some of its text replaced; each old text must be there."""
    for old, new in swaps:
        assert old in text, old
        text = text.replace(old, new)
    return text


def told(
    step: str, *swaps: tuple[str, str], kitchen: str | None = None, pictures: bool = False
) -> StepTemperatures:
    """Temperatures of one step of the dessert, changed if need be."""
    return temperatures_of_text(
        changed(*swaps),
        step=step,
        kitchen_text=None if kitchen is None else dedent(kitchen),
        pictures=pictures,
    )


def reckoning_of(*swaps: tuple[str, str], mould: str | None = None) -> Reckoning:
    """The dessert reckoned, in another mould if one is named."""
    return reckoned(changed(*swaps), "test.yaml", surroundings(None, "kitchen"), mould)


def fact(answer: StepTemperatures, name: str) -> float:
    """Value of one of an answer's facts."""
    return next(f.value for f in answer.facts if f.name == name)
