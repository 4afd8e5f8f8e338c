"""The words of a batch sheet: methods as sentences, assumptions, cautions."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.made_components import portions
from entremetry.dessert.requirement import Requirement
from entremetry.dessert.translating import bowl_names
from entremetry.kitchen.mould import Mould
from entremetry.method.caution import cautions, gathered
from entremetry.method.made import Made
from entremetry.method.step import AnyStep
from entremetry.method.wording import sentence, sentences
from entremetry.words import current

STRENGTH = re.compile(r"\s+\d.*$")


class Teller:
    """Tells one batch of a dessert; `fan` is the reader's oven, None for the author's."""

    def __init__(
        self,
        dessert: Dessert,
        makings: Mapping[str, Made],
        required: Mapping[str, Requirement],
        fan: bool | None,
    ) -> None:
        self.dessert = dessert
        self.makings = makings
        self.required = required
        self.fan = fan

    def method(self, component: Component) -> tuple[str, ...]:
        """The steps of a component as sentences with the masses of this batch."""
        return sentences(
            [line.name for line in component.lines],
            component.steps,
            component=component.name,
            names=line_names(component, self.dessert),
            factor=self.required[component.id].factor,
            oven_fan=self.fan,
            soaking_water=dict(self.makings[component.id].soaking_water),
        )

    def assembly(self) -> tuple[str, ...]:
        """The steps of the whole dessert as sentences."""
        into = _filled(self.dessert.mould)
        return tuple(
            sentence(step, names=self.dessert.names, oven_fan=self.fan, into=into)
            for step in self.dessert.document.assembly
        )

    def assembly_time(self) -> float:
        """All the time the assembly steps state. [s]"""
        return _sum(self.dessert.document.assembly, "time")

    def assembly_hands_on(self) -> float:
        """All the work at the bench the assembly steps state. [s]"""
        return _sum(self.dessert.document.assembly, "hands_on")

    def assumptions(self) -> tuple[str, ...]:
        """What the methods do not state and was taken for granted, by component."""
        return tuple(
            f"{component.name}: {text}"
            for component in self._made()
            for text in self.makings[component.id].assumptions
        )

    def _made(self) -> list[Component]:
        """Components of which something is made; the others need no words."""
        return [c for c in self.dessert.components if self.required[c.id].ready > 0.0]

    def cautions(self) -> tuple[str, ...]:
        """Cautions of all components, each once, the deference to local rules last."""
        groups = [
            cautions(
                portions(component, self.makings, self.dessert),
                component.steps,
                component=component.name,
            )
            for component in self._made()
        ]
        return tuple(caution.text for caution in gathered(groups))


def line_names(component: Component, dessert: Dessert) -> dict[str, str]:
    """What lines and components are called in a sentence: the name without its strength."""
    names = bowl_names(dessert.document, current().code) | dessert.names
    names |= _spoken(
        {line.name: line.ingredient.name for line in component.lines if line.ingredient}
    )
    return names | {line.name: names[line.component] for line in component.lines if line.component}


def _spoken(names: Mapping[str, str]) -> dict[str, str]:
    """Names without strength and share ('gold 200 Bloom', '35 %') where that stays clear."""
    short = {line: STRENGTH.sub("", name) for line, name in names.items()}
    full = Counter(set(names.values()))
    clear = Counter(STRENGTH.sub("", name) for name in full)
    return {line: short[line] if clear[short[line]] == 1 else name for line, name in names.items()}


def _filled(mould: Mould) -> str:
    if mould.vessel:
        return "glasses" if mould.material == "glass" else "vessels"
    return "moulds" if mould.cavities > 1 else "mould"


def _sum(steps: Sequence[AnyStep], field: str) -> float:
    return float(sum(getattr(step, field) or 0.0 for step in steps))
