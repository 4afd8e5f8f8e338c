"""How long each step takes the cook's hands, for however many pieces."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.method.step import AnyStep
from entremetry.words import say

BY_PIECES = ("fill", "unmould", "glaze-at", "place", "cut", "roll", "pour")
"""Steps done piece by piece; the others are done in a bowl, a pan or an oven."""
FIXED = {True: 0.2, False: 0.8}
"""Share of a stated time that does not depend on the pieces, by whether it is by pieces."""
USUAL: dict[str, tuple[float, float]] = {
    "weigh": (5.0, 0.0),
    "soak": (1.0, 0.0),
    "mix": (3.0, 0.0),
    "melt": (5.0, 0.0),
    "simmer": (5.0, 0.0),
    "cook-to": (6.0, 0.0),
    "cool-to": (1.0, 0.0),
    "strain": (2.0, 0.0),
    "whip": (5.0, 0.0),
    "fold": (4.0, 0.0),
    "roll": (8.0, 0.0),
    "cut": (2.0, 20.0),
    "bake": (2.0, 0.0),
    "pour": (2.0, 15.0),
    "place": (1.0, 30.0),
    "fill": (3.0, 60.0),
    "freeze-until": (2.0, 0.0),
    "unmould": (2.0, 20.0),
    "glaze-at": (3.0, 45.0),
    "thaw-until": (2.0, 10.0),
    "rest": (1.0, 0.0),
    "hold": (1.0, 0.0),
    "serve": (0.0, 0.0),
}
"""Minutes for the step and seconds for each piece where a document states none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HandsOn:
    """Minutes that do not depend on the pieces, seconds for each, and where they come from."""

    fixed: float
    per_piece: float
    because: str

    def minutes(self, pieces: int) -> float:
        """Minutes for so many pieces."""
        return self.fixed + self.per_piece * pieces / 60.0


def hands_on(step: AnyStep, pieces_written: int) -> HandsOn:
    """Hands for a step, as stated for the pieces of its document, else as is usual.

    The share of a stated time that grows with the pieces, and the usual times, are ours: common
    practice, no source.
    """
    if step.hands_on is None:
        fixed, per_piece = USUAL[step.step]
        because = say("hands as is usual, no source; state hands_on") if fixed else ""
        return HandsOn(fixed=fixed, per_piece=per_piece, because=because)
    minutes = step.hands_on / 60.0
    share = FIXED[step.step in BY_PIECES]
    return HandsOn(
        fixed=minutes * share,
        per_piece=minutes * (1.0 - share) * 60.0 / pieces_written,
        because=say(
            "hands as the document says for {pieces}, {share} of it whatever the number",
            pieces=pieces_written,
            share=say("{number}%", number=f"{100.0 * share:.0f}"),
        ),
    )
