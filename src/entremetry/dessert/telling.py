"""The words of a batch sheet: methods as sentences, assumptions, cautions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.made_components import portions
from entremetry.dessert.requirement import Requirement
from entremetry.method.caution import cautions, gathered
from entremetry.method.made import Made
from entremetry.method.step import AnyStep
from entremetry.method.wording import sentence, sentences


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
            names=self._line_names(component),
            factor=self.required[component.id].factor,
            oven_fan=self.fan,
            soaking_water=dict(self.makings[component.id].soaking_water),
        )

    def assembly(self) -> tuple[str, ...]:
        """The steps of the whole dessert as sentences."""
        return tuple(
            sentence(step, names=self.dessert.names, oven_fan=self.fan)
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
            for component in self.dessert.components
            for text in self.makings[component.id].assumptions
        )

    def cautions(self) -> tuple[str, ...]:
        """Cautions of all components, each once, the deference to local rules last."""
        groups = [
            cautions(
                portions(component, self.makings, self.dessert.names),
                component.steps,
                component=component.name,
            )
            for component in self.dessert.components
        ]
        return tuple(caution.text for caution in gathered(groups))

    def _line_names(self, component: Component) -> dict[str, str]:
        names = dict(self.dessert.names)
        for line in component.lines:
            if line.ingredient is not None:
                names[line.name] = line.ingredient.name
            elif line.component is not None:
                names[line.name] = self.dessert.names[line.component]
        return names


def _sum(steps: Sequence[AnyStep], field: str) -> float:
    return float(sum(getattr(step, field) or 0.0 for step in steps))
