"""Formulas with methods that a cook could follow: nothing is taken that is not there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from hypothesis import strategies as st
from pydantic import TypeAdapter

from entremetry.larder.constituents import Constituents
from entremetry.method import AnyStep, Portion, Step

STEPS: TypeAdapter[tuple[AnyStep, ...]] = TypeAdapter(tuple[Step, ...])
KINDS_OF_COMPONENT = ("mousse", "insert", "base", "glaze", "soak", "crumble", "garnish")


class Recipe(NamedTuple):
    """Lines and steps that belong together."""

    lines: Mapping[str, Portion]
    steps: tuple[AnyStep, ...]
    kind: str


@st.composite
def portions(draw: st.DrawFn) -> Portion:
    """A moist line, so that every small loss of water can be paid."""
    dry = draw(st.sampled_from(["sucrose", "milk_fat", "starch", "protein", "fibre"]))
    water = draw(st.floats(min_value=0.3, max_value=0.9))
    mass = draw(st.floats(min_value=0.01, max_value=1.0))
    fractions = Constituents(**{"water": water, dry: 1.0 - water})
    return Portion(name=dry, constituents=fractions * mass)


@st.composite
def main_steps(draw: st.DrawFn) -> dict[str, Any]:
    """One step in the main bowl that takes at most a few per cent."""
    percent = f"{draw(st.integers(min_value=0, max_value=4))} %"
    return draw(
        st.sampled_from(
            [
                {"step": "mix"},
                {"step": "melt", "temperature": "45 °C"},
                {"step": "simmer", "evaporates": percent},
                {"step": "simmer"},
                {"step": "cook-to", "temperature": "82 °C", "evaporates": "0.2 g"},
                {"step": "cool-to", "temperature": "24 °C", "left_behind": percent},
                {"step": "strain", "holds_back": "0.3 g"},
                {"step": "whip", "overrun": "60 %"},
                {"step": "bake", "at": "170 °C", "loss": percent},
                {"step": "roll", "thickness": "3 mm"},
                {"step": "cut", "trim": percent},
                {"step": "pour", "left_behind": "0.1 g"},
                {"step": "rest", "time": "1 h"},
            ]
        )
    )


@st.composite
def recipes(draw: st.DrawFn) -> Recipe:
    """A soaked line, a line whipped apart and folded in, one strained out, and steps between."""
    names = ["soaked", "whipped", "pod", "fruit", "sugar"][: draw(st.integers(4, 5))]
    lines = {name: draw(portions()) for name in names}
    between = st.lists(main_steps(), max_size=3)
    overrun = f"{draw(st.integers(min_value=0, max_value=150))} %"
    written = [
        {"step": "soak", "what": ["soaked"], "water": "3 g"},
        {"step": "mix", "what": ["pod"]},
        {"step": "strain", "removes": ["pod"]},
        *draw(between),
        {"step": "whip", "what": ["whipped"], "bowl": "foam", "overrun": overrun},
        {"step": "fold", "what": ["foam"], "kept": draw(st.sampled_from(["80 %", "100 %"]))},
        *draw(between),
    ]
    kind = draw(st.sampled_from(KINDS_OF_COMPONENT))
    return Recipe(lines=lines, steps=STEPS.validate_python(written), kind=kind)
