"""What a component is no longer once a line of it is left out: a foam, or set by an agent."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.dessert import Component
from entremetry.formula.gelatine_swap import agent
from entremetry.questions.answer import Fact
from entremetry.questions.reckoned import State
from entremetry.words import say


def losses(component: str, before: State, after: State) -> Iterator[Fact]:
    """What the bench checks may not see: that nothing is whipped, or that no agent sets it."""
    was, is_ = _component(component, before), _component(component, after)
    if _is_whipped(was) and not _is_whipped(is_):
        yield Fact(
            text=say("{name}: nothing is whipped any more, so it sets dense", name=was.name),
            because=say("the air in it came from what is left out"),
        )
    if _has_agent(was) and not _has_agent(is_):
        sets = [v for v in after.verdicts if v.id == "sets" and v.component == component]
        yield Fact(
            text=say("{name}: no setting agent is left in it", name=was.name),
            because=sets[0].because if sets else "",
            source=sets[0].source if sets else "common_practice",
        )


def _component(component: str, state: State) -> Component:
    return next(c for c in state.reckoning.dessert.components if c.id == component)


def _is_whipped(component: Component) -> bool:
    return any(step.step == "whip" for step in component.steps)


def _has_agent(component: Component) -> bool:
    lines = (line.ingredient for line in component.lines if line.ingredient is not None)
    return any(each.bloom is not None or agent(each) is not None for each in lines)
