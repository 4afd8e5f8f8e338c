"""Where the components of a draft sit, from answers, in the order of filling."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_question import Answers, Question
from entremetry.dessert.placing_answer import PLACES, SIZES, PlacingAnswer, placing_answer
from entremetry.errors import nearest_names
from entremetry.words import say

UPSIDE_DOWN = ("layer", "insert", "filling", "base", "coating", "soak", "garnish")
UPRIGHT = ("base", "layer", "insert", "filling", "coating", "soak", "garnish")


@dataclass(slots=True, kw_only=True)
class Placing:
    """Places one component after the other; `entries` and `used` hold what is settled.

    `used` says of a component which other one it goes into, and how much of it.
    """

    names: Mapping[str, str]
    answers: Answers
    moulds: Mapping[str, Mapping[str, Any]]
    ask: Callable[[Question], None]
    entries: list[dict[str, Any]] = field(default_factory=list)
    used: dict[str, tuple[str, str]] = field(default_factory=dict)

    def place(self, component: str) -> None:
        """Settle where a component sits, or ask."""
        place = "filling" if len(self.names) == 1 else self._place(component)
        if place is None:
            return
        measures = self._measures(component, place)
        target = self._target(component, place) if place in {"soak", "used"} else ""
        if measures is None or target is None:
            return
        if place == "used":
            self.used[component] = (target, str(measures["mass"]))
        elif place == "soak":
            self.entries.append({"component": component, "as": place, "on": target, **measures})
        else:
            self.entries.append({"component": component, "as": place, **measures})

    def in_order(self, *, upright: bool) -> list[dict[str, Any]]:
        """Entries as the mould is filled: closed end first."""
        order = UPRIGHT if upright else UPSIDE_DOWN
        return sorted(self.entries, key=lambda entry: order.index(entry["as"]))

    def _place(self, component: str) -> str | None:
        name = self.names[component]
        known = {place: say(words) for place, words in PLACES}
        text = say("Where does '{name}' sit?", name=name)
        return self._choice(f"{component}-place", name, text, known)

    def _target(self, component: str, place: str) -> str | None:
        others = {other: name for other, name in self.names.items() if other != component}
        name = self.names[component]
        bases = [o for o in others if self.answers.to(f"{o}-place") == "base"]
        if place == "soak" and len(bases) == 1:
            return bases[0]
        if place == "soak":
            text = say("On which base is '{name}' brushed?", name=name)
        else:
            text = say("Into which component does '{name}' go?", name=name)
        return self._choice(f"{component}-into", name, text, others)

    def _measures(self, component: str, place: str) -> dict[str, Any] | None:
        key, name = f"{component}-size", self.names[component]
        size = self.answers.to(key) if place in SIZES else None
        found = placing_answer(component, place, size, self.moulds)
        if isinstance(found, PlacingAnswer):
            entry = dict(found.entry)
            return {word: entry[word] for word in entry if word not in {"component", "as"}}
        example, refused = SIZES[place].example, size or ""
        text = say("{name}: {question}", name=name, question=found)
        self.ask(Question(key=key, about=name, text=text, example=example, refused=refused))
        return None

    def _choice(self, key: str, name: str, text: str, known: Mapping[str, str]) -> str | None:
        answer = self.answers.to(key)
        if answer in known:
            return answer
        self.ask(choice_question(key, name, text, known, answer))
        return None


def choice_question(
    key: str, about: str, text: str, known: Mapping[str, str], answer: str | None
) -> Question:
    """A question with fixed choices; an answer that is none of them is refused by name."""
    if answer is not None:
        text = f"{_none_of(answer, known)} {text}"
    choices = tuple(known.items())
    return Question(key=key, about=about, text=text, choices=choices, refused=answer or "")


def _none_of(answer: str, known: Mapping[str, str]) -> str:
    near = ", ".join(nearest_names(answer, known))
    if near:
        return say(
            "'{answer}' is none of the choices (nearest: {names}).", answer=answer, names=near
        )
    return say("'{answer}' is none of the choices.", answer=answer)
