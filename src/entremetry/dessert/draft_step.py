"""One sentence as a typed step, as far as its words and numbers are clear, and what to ask."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from entremetry.dessert.draft_question import Answers, Question
from entremetry.dessert.draft_words import step_words
from entremetry.dessert.said_temperature import temperatures
from entremetry.dessert.said_time import SaidTime, said_times
from entremetry.dessert.step_words import kinds_said
from entremetry.errors import QuantityError, nearest_names
from entremetry.quantities import (
    Kind,
    find_slips,
    format_duration,
    format_length,
    parse_duration,
    parse_length,
    parse_temperature,
)
from entremetry.quantities.mentions import mentions
from entremetry.words import say

NOTE_ONLY = "note"
UNSAID = "unsaid"
KINDS = (
    "weigh",
    "soak",
    "mix",
    "melt",
    "simmer",
    "cook-to",
    "cool-to",
    "strain",
    "whip",
    "fold",
    "roll",
    "cut",
    "bake",
    "pour",
    "place",
    "fill",
    "freeze-until",
    "unmould",
    "glaze-at",
    "thaw-until",
    "rest",
    "hold",
    "serve",
    NOTE_ONLY,
)
OF_A_COMPONENT = tuple(kind for kind in KINDS if kind not in ("fill", "unmould", "glaze-at"))
OF_THE_ASSEMBLY = (
    *("fill", "place", "freeze-until", "unmould", "glaze-at", "thaw-until"),
    *("cut", "rest", "hold", "serve", NOTE_ONLY),
)
NEEDS_TEMPERATURE = {"cook-to": "temperature", "cool-to": "temperature", "bake": "at"}
NEEDS_TEMPERATURE["glaze-at"] = "temperature"
TAKES_TEMPERATURE = {kind: "temperature" for kind in ("melt", "simmer", "rest", "hold")}
UNTIL = ("freeze-until", "thaw-until")
ASKS_TIME = ("bake", "rest")
LONGEST_SHOWN = 160
_EXAMPLES = {"bake": "170 °C", "glaze-at": "32 °C", "cool-to": "30 °C"}
_WATER = re.compile(
    r"(\d+(?:[.,]\d+)?) ?g\b(?: of| de|,)? ?(?:\w+ )?(?:water|eau)\b", re.IGNORECASE
)
_PLACES = (
    ("blast freezer", re.compile(r"\bblast\b", re.IGNORECASE)),
    ("fridge", re.compile(r"\b(?:fridge|refrigerator|réfrigérateur|frigo)\b", re.IGNORECASE)),
    ("room", re.compile(r"\b(?:room temperature|température ambiante)\b", re.IGNORECASE)),
)
_ICE = re.compile(r"\bice (?:bath|water)\b|\bbain de glace\b", re.IGNORECASE)
_FAN = re.compile(r"\bfan\b|\bchaleur tournante\b", re.IGNORECASE)
_JOINT = re.compile(r"^[\s,;]*(?:(?:and|then|puis|et)\s+)*", re.IGNORECASE)


@dataclass(slots=True, kw_only=True)
class StepDraft:
    """Reads one sentence; `settled` tells afterwards whether nothing about it is left to ask."""

    text: str
    key: str
    answers: Answers
    ask: Callable[[Question], None]
    assembly: bool = False
    settled: bool = field(default=True)

    @property
    def note(self) -> str:
        """The sentence as a note: without the word that joined it to the one before."""
        bare = _JOINT.sub("", self.text).strip()
        whole = bare[:1].upper() + bare[1:]
        return whole if whole.endswith((".", "!", "?", "…")) else f"{whole}."

    @property
    def number(self) -> str:
        """Number of the sentence in the pasted text."""
        return self.key.rpartition(".")[2]

    def question(
        self,
        topic: str,
        text: str,
        choices: tuple[tuple[str, str], ...] = (),
        *,
        example: str = "",
        refused: str = "",
    ) -> None:
        """Ask about the sentence, and remember that it is not settled."""
        self.settled = False
        told = say("'{answer}' is no answer to this.", answer=refused[:60])
        whole = f"{told} {text}" if refused else text
        shown = self.note if len(self.note) <= LONGEST_SHOWN else self.note[:LONGEST_SHOWN] + " …"
        self.ask(
            Question(
                key=f"{self.key}.{topic}",
                about=shown,
                text=say("{question} ('{sentence}')", question=whole, sentence=shown),
                choices=choices,
                example=example,
                refused=refused,
            )
        )

    def answer(self, topic: str) -> str | None:
        """What was answered about the sentence."""
        return self.answers.to(f"{self.key}.{topic}")

    def kind(self) -> str | None:
        """The kind of step; None if it must be asked."""
        possible = OF_THE_ASSEMBLY if self.assembly else OF_A_COMPONENT
        said = tuple(dict.fromkeys(self._in_its_place(kind) for kind in kinds_said(self.text)))
        answer = self.answer("kind")
        if answer in possible:
            return answer
        if answer is None and len(said) == 1 and said[0] in possible:
            return said[0]
        likely = [kind for kind in said if kind in possible]
        choices = [*likely, *(kind for kind in possible if kind not in likely)]
        labels = tuple((kind, step_words()[kind]) for kind in choices)
        near = ", ".join(nearest_names(answer, possible)) if answer else ""
        text = say("What work is this?")
        if near:
            text = say("What work is this? (nearest: {names})", names=near)
        self.question("kind", text, labels, refused=answer or "")
        return None

    def fields(self, kind: str) -> dict[str, Any]:
        """Temperature, time, place and measures of a step of this kind."""
        found: dict[str, Any] = {}
        if kind in NEEDS_TEMPERATURE:
            found[NEEDS_TEMPERATURE[kind]] = self._temperature(kind, needed=True)
        elif kind in TAKES_TEMPERATURE:
            found[TAKES_TEMPERATURE[kind]] = self._temperature(kind, needed=False)
        elif kind in UNTIL:
            found["temperature"] = self._of_the_centre(kind)
        needed = kind in ASKS_TIME or (kind in UNTIL and not found["temperature"])
        found["time"] = self._time(kind, needed=needed)
        found |= self._around(kind)
        return {name: value for name, value in found.items() if value}

    def _in_its_place(self, kind: str) -> str:
        if kind == "prepare":
            return NOTE_ONLY
        if self.assembly:
            return "fill" if kind == "pour" else kind
        return "pour" if kind == "fill" else kind

    def _temperature(self, kind: str, *, needed: bool) -> str | None:
        answer = self.answer("temperature")
        if answer is not None:
            return self._answered("temperature", answer, _temperature, "°C", needed=needed)
        found = temperatures(self.text)
        if len(found) == 1:
            return found[0]
        if not found and not needed:
            return None
        text = say("Which temperature?")
        if not found:
            text = say("{step}: at what temperature?", step=step_words()[kind])
        slips = find_slips(self.text)
        if slips:
            text = f"{say('The two do not agree: {reason}.', reason=slips[0].because)} {text}"
        choices = tuple((each, each) for each in found)
        choices = choices if needed else (*choices, _unsaid())
        self.question("temperature", text, choices, example=_EXAMPLES.get(kind, "85 °C"))
        return None

    def _of_the_centre(self, kind: str) -> str | None:
        """A temperature to freeze or thaw to; one that may be that of the place is asked."""
        answer = self.answer("temperature")
        if answer is not None:
            return self._answered("temperature", answer, _temperature, "°C", needed=False)
        found = temperatures(self.text)
        if not found:
            return None
        text = say("Is this how cold the centre gets, or how cold the place is?")
        labels = [
            (each, say("The centre gets to {temperature}", temperature=each)) for each in found
        ]
        labels.append((UNSAID, say("It is the place: leave it out")))
        self.question("temperature", text, tuple(labels), example="-15 °C")
        return None

    def _time(self, kind: str, *, needed: bool) -> str | None:
        answer = self.answer("time")
        strict = kind in UNTIL and needed
        if answer is not None:
            return self._answered("time", answer, _duration, "40 min", needed=strict)
        found = said_times(self.text)
        if len(found) == 1 and found[0].seconds:
            return format_duration(found[0].seconds)
        if not found and not needed:
            return None
        choices = tuple((each, each) for each in _either(found))
        choices = choices if strict else (*choices, _unsaid())
        said = ", ".join(say("'{words}'", words=time.written) for time in found)
        if found:
            text = say("How long is {times}?", times=said)
        else:
            text = say("{step}: for how long?", step=step_words()[kind])
        self.question("time", text, choices, example="6 h" if kind in UNTIL else "12 min")
        return None

    def _answered(
        self,
        topic: str,
        answer: str,
        read: Callable[[str], float],
        example: str,
        *,
        needed: bool,
    ) -> str | None:
        if answer == UNSAID and not needed:
            return None
        try:
            read(answer)
        except QuantityError:
            choices = () if needed else (_unsaid(),)
            text = say("Give it with its unit.")
            example = "85 °C" if topic == "temperature" else example
            self.question(topic, text, choices, example=example, refused=answer)
            return None
        return answer

    def _around(self, kind: str) -> dict[str, Any]:
        """What the words say of the place, the oven, the water, the thickness."""
        if kind in UNTIL or kind == "cool-to":
            places = [place for place, words in _PLACES if words.search(self.text)]
            found: dict[str, Any] = {"where": places[0]} if len(places) == 1 else {}
            if kind == "cool-to" and found.get("where") not in (None, "fridge", "room"):
                found = {}
            ice = kind == "cool-to" and _ICE.search(self.text) is not None
            return found | ({"ice_bath": True} if ice else {})
        if kind == "bake":
            return {"fan": True} if _FAN.search(self.text) else {}
        if kind == "soak":
            water = _WATER.search(self.text)
            return {"water": f"{water[1]} g"} if water else {}
        return {"thickness": self._thickness()} if kind == "roll" else {}

    def _thickness(self) -> str | None:
        answer = self.answer("thickness")
        if answer is not None:
            return self._answered("thickness", answer, parse_length, "3 mm", needed=True)
        found = [m for m in mentions(self.text) if m.kind is Kind.LENGTH]
        if len(found) == 1 and len(found[0].numbers) == 1:
            return format_length(found[0].units[0].to_si(found[0].numbers[0]))
        self.question("thickness", say("How thick is it rolled?"), example="3 mm")
        return None


def _unsaid() -> tuple[str, str]:
    return UNSAID, say("The text does not say: leave it open")


def _temperature(text: str) -> float:
    return parse_temperature(text)


def _duration(text: str) -> float:
    return parse_duration(text)


def _either(found: tuple[SaidTime, ...]) -> tuple[str, ...]:
    ends = [
        end
        for time in found
        for end in (time.either or ((format_duration(time.seconds),) if time.seconds else ()))
    ]
    return tuple(dict.fromkeys(ends))
