"""What the content of a bowl has been through."""

from __future__ import annotations

import pytest

from dessert_texts import dessert_of
from entremetry.timings.bowl_content import steps_before
from entremetry.timings.start import stated_temperature

TEXT = """
entremetry: 1
id: mousse
name: Mousse
pieces: 6
mould: hemisphere-70
components:
  mousse:
    name: Fruit mousse
    kind: mousse
    formula: {puree: 200 g, caster-sugar: 60 g, water: 20 g, cream-35: 200 g}
    method:
      - {step: cook-to, what: [caster-sugar, water], bowl: syrup, temperature: 118 °C}
      - {step: cool-to, what: [puree], temperature: 40 °C}
      - {step: whip, what: [cream-35], bowl: cream, overrun: 90 %}
      - {step: fold, what: [cream]}
      - {step: mix, what: [syrup]}
placement:
  - {component: mousse, as: filling}
"""


def test_a_syrup_in_another_bowl_does_not_warm_the_base() -> None:
    (mousse,) = dessert_of(TEXT).components
    assert stated_temperature(steps_before(mousse, 3)) == pytest.approx(313.15)


def test_a_bowl_poured_into_an_empty_one_brings_its_steps_along() -> None:
    text = TEXT.replace(
        "{step: cool-to, what: [puree], temperature: 40 °C}", "{step: mix, what: [syrup]}"
    )
    text = text.replace(
        "      - {step: mix, what: [syrup]}\nplacement",
        "      - {step: mix, what: [puree]}\nplacement",
    )
    (mousse,) = dessert_of(text).components
    assert stated_temperature(steps_before(mousse, 3)) == pytest.approx(391.15)
