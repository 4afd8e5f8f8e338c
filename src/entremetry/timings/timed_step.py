"""Which steps of a dessert can be timed, and by what name one asks for them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from entremetry.dessert.dessert import Component, Dessert
from entremetry.dessert.telling import line_names
from entremetry.errors import UnknownName
from entremetry.method.cooking import CoolTo, Fold, Heated, Simmer
from entremetry.method.shaping import Bake
from entremetry.method.step import AnyStep
from entremetry.method.waiting import FreezeUntil, GlazeAt, ThawUntil
from entremetry.method.wording import sentence
from entremetry.timings.start import stated_temperature

ASSEMBLY = "assembly"
FREEZE = "freeze-until"
IN_ASSEMBLY = (FreezeUntil, ThawUntil, GlazeAt)


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
    inserts = {p.component for p in dessert.document.placement if p.role == "insert"}
    for component in dessert.components:
        for number, step in enumerate(component.steps, start=1):
            before = component.steps[: number - 1]
            if _can_be_timed(step, before, is_insert=component.id in inserts):
                yield _timed(dessert, component, component.id, component.name, number, step)


def _can_be_timed(step: AnyStep, before: Sequence[AnyStep], *, is_insert: bool) -> bool:
    """Whether the document tells all that a computation needs.

    A biscuit out of the oven cools in no bowl; a fold needs a base of known warmth; on the hob
    only boiling away takes a time of its own; an insert's shape is known, a loose component's not.
    """
    if any(isinstance(other, Bake) for other in before):
        return False
    match step:
        case FreezeUntil():
            return is_insert
        case CoolTo() | Fold():
            return stated_temperature(before) is not None
        case Heated():
            return _boils_away(step)
    return False


def _boils_away(step: Heated) -> bool:
    to_brix = step.to_brix if isinstance(step, Simmer) else None
    return any(end is not None for end in (step.evaporates, step.to_mass, to_brix))


def _assembly_steps(dessert: Dessert) -> Iterator[TimedStep]:
    for number, step in enumerate(dessert.document.assembly, start=1):
        if isinstance(step, IN_ASSEMBLY) and not _lacks_coating(dessert, step):
            yield _timed(dessert, None, ASSEMBLY, dessert.document.name, number, step)


def _lacks_coating(dessert: Dessert, step: AnyStep) -> bool:
    coated = any(p.role == "coating" for p in dessert.document.placement)
    return isinstance(step, GlazeAt) and not coated


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
        sentence=sentence(
            step, names=line_names(component, dessert) if component else dessert.names
        ),
    )
