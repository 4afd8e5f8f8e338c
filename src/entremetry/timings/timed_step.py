"""Which steps of a dessert can be timed, and by what name one asks for them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from entremetry.dessert.dessert import Component, Dessert
from entremetry.errors import UnknownName
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.wording import sentence

ASSEMBLY = "assembly"
FREEZE, THAW, COOL, GLAZE = "freeze-until", "thaw-until", "cool-to", "glaze-at"
TIMED = (FREEZE, THAW, COOL, GLAZE)


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedStep:
    """A step with its id (its own, or component and number), where it stands, and its words."""

    id: str
    name: str
    kind: str
    component: Component | None
    number: int
    step: AnyStep
    sentence: str


def timed_steps(dessert: Dessert) -> tuple[TimedStep, ...]:
    """Every step whose duration or temperatures physics can tell, in the order of the work."""
    return tuple(_component_steps(dessert)) + tuple(_assembly_steps(dessert))


def find_step(dessert: Dessert, step_id: str) -> TimedStep:
    """The step with this id, or the only one of this kind.

    Raises
    ------
    UnknownName
        With the nearest ids, if there is none or several steps are of that kind.
    """
    found = timed_steps(dessert)
    for step in found:
        if step.id == step_id:
            return step
    of_kind = [step for step in found if step.kind == step_id]
    if len(of_kind) == 1:
        return of_kind[0]
    raise UnknownName("step that can be timed", step_id, [step.id for step in found])


def _component_steps(dessert: Dessert) -> Iterator[TimedStep]:
    for component in dessert.components:
        for number, step in enumerate(component.steps, start=1):
            if step.step in TIMED and not _is_baked(component, step):
                yield _timed(dessert, component, component.id, component.name, number, step)


def _is_baked(component: Component, step: AnyStep) -> bool:
    """Whether a cool-to step is for a biscuit out of the oven, which no bowl holds."""
    before = component.steps[: component.steps.index(step)]
    return step.step == COOL and any(isinstance(other, Bake) for other in before)


def _assembly_steps(dessert: Dessert) -> Iterator[TimedStep]:
    for number, step in enumerate(dessert.document.assembly, start=1):
        if step.step in TIMED:
            yield _timed(dessert, None, ASSEMBLY, dessert.document.name, number, step)


def _timed(
    dessert: Dessert,
    component: Component | None,
    prefix: str,
    name: str,
    number: int,
    step: AnyStep,
) -> TimedStep:
    return TimedStep(
        id=step.id or f"{prefix}-{number}",
        name=name,
        kind=step.step,
        component=component,
        number=number,
        step=step,
        sentence=sentence(step, names=dessert.names),
    )
