"""What a plan has to say about each of its tasks."""

from __future__ import annotations

from dataclasses import dataclass

from entremetry.words import say


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskWords:
    """One task in words: whose it is, what is done, with what, and why it takes so long."""

    dessert: str
    dessert_name: str
    component: str
    component_name: str
    kind: str
    text: str
    amounts: tuple[str, ...] = ()
    because: str = ""
    round: int = 1
    rounds: int = 1
    together: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """What it is called in a sentence about the plan."""
        whose = self.component_name or self.dessert_name
        if self.kind == "serve":
            return whose
        named = say("{whose}: {step}", whose=whose, step=first_words(self.text))
        if self.rounds <= 1:
            return named
        return say("{step} (round {number})", step=named, number=self.round)


def first_words(text: str) -> str:
    """The first sentence of a step, without its full stop."""
    return text.split(". ", 1)[0].removesuffix(".")
