"""What a change does to the taste and feel of a component: a few measures before and after."""

from __future__ import annotations

from collections.abc import Iterator

from entremetry.dessert.reckoning import Reckoning
from entremetry.formula.measures import measure_named
from entremetry.formula.state import state_of
from entremetry.questions import said
from entremetry.questions.answer import Fact
from entremetry.words import say, say_later

TOLD = {
    "sweetness": say_later("{component}: {after} sweet, as sugar counts; {before} before"),
    "fat": say_later("{component}: {after} fat; {before} before"),
    "dry_solids": say_later("{component}: {after} dry solids; {before} before"),
    "freezing_point": say_later("{component}: freezes from {after}; from {before} before"),
}
DIFFERENT = {"freezing_point": 0.2}  # K
USUAL = 0.02  # of the mass, below which a share is not told of: our_own


def tasted(component: str, before: Reckoning, after: Reckoning) -> Iterator[Fact]:
    """The measures of one component that changed enough to be noticed."""
    if component not in after.makings or component not in before.makings:
        return
    name = after.dessert.names[component]
    states = [state_of(each.makings[component].mix.constituents) for each in (before, after)]
    for key, message in TOLD.items():
        measure = measure_named(key)
        was, is_ = (measure.value(each) for each in states)
        if was is None or is_ is None or abs(is_ - was) < DIFFERENT.get(key, USUAL):
            continue
        printed = said.celsius if key == "freezing_point" else said.share
        yield Fact(text=say(message, component=name, after=printed(is_), before=printed(was)))
