"""What a component is no longer once a line of it is gone, where no bench check would see it."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.dessert import Component
from entremetry.formula.gelatine_swap import agent
from entremetry.larder.ingredient import Ingredient
from entremetry.questions import said
from entremetry.questions.answer import Fact
from entremetry.questions.reckoned import State
from entremetry.words import say

MOST = 0.5  # part of a component beyond which it is another thing without it: our_own
FLOUR = "raw-flour"
WHIPS = "whippable"


def losses(component: str, line: str, before: State, after: State) -> Iterator[Fact]:
    """What is lost with a line: the air, the gel, the flour that binds, or most of it all."""
    was, is_ = _component(component, before), _component(component, after)
    yield from _mostly(was, line)
    if _has_step(was, "whip") and not _has_step(is_, "whip"):
        yield Fact(
            text=say("{name}: nothing is whipped any more, so it sets dense", name=was.name),
            because=say("the air in it came from what is left out"),
        )
    if any(map(_sets, _ingredients(was))) and not any(map(_sets, _ingredients(is_))):
        sets = [v for v in after.verdicts if v.id == "sets" and v.component == component]
        yield Fact(
            text=say("{name}: no setting agent is left in it", name=was.name),
            because=sets[0].because if sets else "",
            source=sets[0].source if sets else "common_practice",
        )
    if _has_step(was, "bake") and _tagged(was, FLOUR) and not _tagged(is_, FLOUR):
        yield Fact(
            text=say("{name}: no flour is left to hold it together", name=was.name),
            because=say("what is baked falls apart or runs without it"),
            source="common_practice",
        )


def not_whipping(component: str, before: State, after: State) -> Iterator[Fact]:
    """That what the method whips held something that whips, and now holds nothing of the kind."""
    was, is_ = _component(component, before), _component(component, after)
    if _whipped_with(was) and not _whipped_with(is_) and _has_step(is_, "whip"):
        yield Fact(
            text=say("{name}: nothing that whips is left in what is whipped", name=was.name),
            because=say("without air it weighs more and sets dense"),
            source="common_practice",
        )


def _mostly(component: Component, line: str) -> Iterator[Fact]:
    whole = sum(each.mass for each in component.lines)
    mass = next(each.mass for each in component.lines if each.name == line)
    if mass > MOST * whole:
        share = said.share(mass / whole)
        yield Fact(
            text=say("{name}: {share} of it goes", name=component.name, share=share),
            because=say("what is left is another thing, whatever the bench checks say"),
            source="our_own",
        )


def _component(component: str, state: State) -> Component:
    return next(c for c in state.reckoning.dessert.components if c.id == component)


def _ingredients(component: Component) -> list[Ingredient]:
    return [line.ingredient for line in component.lines if line.ingredient is not None]


def _has_step(component: Component, kind: str) -> bool:
    return any(step.step == kind for step in component.steps)


def _sets(ingredient: Ingredient) -> bool:
    return ingredient.bloom is not None or agent(ingredient) is not None


def _tagged(component: Component, tag: str) -> bool:
    return any(tag in ingredient.tags for ingredient in _ingredients(component))


def _whipped_with(component: Component) -> bool:
    """Whether a step that whips names a line that can be whipped."""
    whips = {
        line.name
        for line in component.lines
        if line.ingredient is not None and WHIPS in line.ingredient.tags
    }
    return any(whips & set(step.what) for step in component.steps if step.step == "whip")
