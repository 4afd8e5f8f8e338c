"""What a step is called where the books speak of it: its id, else its number and its kind."""

from __future__ import annotations

from entremetry.method.step import AnyStep
from entremetry.words import say, say_later

_KINDS = {
    kind: kind
    for kind in (
        say_later("weigh"),
        say_later("soak"),
        say_later("mix"),
        say_later("melt"),
        say_later("simmer"),
        say_later("cook-to"),
        say_later("cool-to"),
        say_later("strain"),
        say_later("whip"),
        say_later("fold"),
        say_later("roll"),
        say_later("cut"),
        say_later("bake"),
        say_later("pour"),
        say_later("place"),
        say_later("fill"),
        say_later("freeze-until"),
        say_later("unmould"),
        say_later("glaze-at"),
        say_later("thaw-until"),
        say_later("rest"),
        say_later("hold"),
        say_later("serve"),
    )
}
"""Kinds of steps as a document writes them."""


def step_name(step: AnyStep, number: int) -> str:
    """Name of a step, in the language that is spoken unless the author named it."""
    return step.id or say("step {number}, {kind}", number=number, kind=say(_KINDS[step.step]))
