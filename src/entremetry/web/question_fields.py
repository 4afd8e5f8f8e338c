"""The fields of each kind of question, with what there is to choose from."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from entremetry.words import say, say_as, say_later

if TYPE_CHECKING:
    from entremetry.questions.choices import Choice, Choices


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """A kind of question: its id, and how people ask it."""

    id: str
    words: str


KINDS = (
    Kind(id="instead", words=say_later("I have something else")),
    Kind(id="mould", words=say_later("My mould is another one")),
    Kind(id="wait", words=say_later("Can it wait?")),
    Kind(id="without", words=say_later("Can I leave it out?")),
    Kind(id="symptom", words=say_later("What went wrong?")),
    Kind(id="contains", words=say_later("Does it contain that?")),
)
PLACES = (
    ("", say_later("where it usually lies")),
    ("freezer", say_later("freezer")),
    ("fridge", say_later("fridge")),
    ("table", say_later("table")),
)
RULES = (("", say_later("mass times Bloom")), ("square-root", say_later("gel strength")))


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """Something to choose: what is sent for it, its words, whether it is chosen."""

    value: str
    words: str
    chosen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field: a list to choose from, or a line to type a size or a time into."""

    name: str
    label: str
    options: tuple[Option, ...] = ()
    value: str = ""
    hint: str = ""
    type: str = "text"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A form of its own; `first` asks again before the rest can be chosen."""

    legend: str
    fields: tuple[Field, ...]
    button: str = ""
    first: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Asking:
    """The forms of one kind of question."""

    parts: tuple[Part, ...]


def asking(
    kind: str, found: Choices, moulds: Sequence[tuple[str, str]], given: Mapping[str, str]
) -> Asking:
    """The forms of a kind, filled in as they were sent."""
    makers: Mapping[str, Callable[[], tuple[Part, ...]]] = {
        "instead": lambda: _instead(found, given),
        "mould": lambda: _mould(moulds, given),
        "wait": lambda: _wait(found, given),
        "without": lambda: (
            Part(
                legend=say("Leave out"),
                fields=(_list("without", say("What"), _options(found.without), given),),
            ),
        ),
        "symptom": lambda: (
            Part(
                legend=say("What you see"),
                fields=(_list("symptom", say("What happened"), _options(found.symptoms), given),),
            ),
        ),
        "contains": lambda: (
            Part(
                legend=say("What it may contain"),
                fields=(_list("contains", say("Allergen"), _allergens(), given),),
            ),
        ),
    }
    return Asking(parts=makers[kind]())


def _instead(found: Choices, given: Mapping[str, str]) -> tuple[Part, ...]:
    lines = _list("instead", say("What you do not have"), _options(found.instead), given)
    chosen = next((each for each in found.instead if each.value == given.get("instead")), None)
    if chosen is None:
        show = say("Show what may stand in")
        return (Part(legend=say("Instead of"), fields=(lines,), button=show, first=True),)
    near = _list("have", say("What you have"), _options(chosen.alike), given)
    other = Field(
        name="have",
        label=say("Another ingredient"),
        value="" if any(each.chosen for each in near.options) else given.get("have", ""),
        hint=say("Of the larder, by id or name; two with a plus: cream-48+whole-milk"),
    )
    rule = _list("bloom-rule", say("Gelatines are compared by"), _said(RULES), given)
    line = Field(
        name="instead",
        label=say("Instead of"),
        options=(Option(value=chosen.value, words=chosen.words, chosen=True),),
    )
    choose = say("Choose this line")
    again = Part(legend=say("Instead of"), fields=(lines,), button=choose, first=True)
    listed = Part(legend=say("One that is alike"), fields=(line, near, rule))
    typed = Part(legend=say("Something else"), fields=(line, other, rule))
    return (again, *((listed,) if chosen.alike else ()), typed)


def _mould(moulds: Sequence[tuple[str, str]], given: Mapping[str, str]) -> tuple[Part, ...]:
    from entremetry.questions.own_mould import SHAPES

    shapes = [
        (each.word, say("{shape}: {sizes}", shape=each.name, sizes=each.asks))
        for each in SHAPES.values()
    ]
    cavities = Field(
        name="cavities",
        label=say("Cavities in it"),
        value=given.get("cavities", ""),
        hint=say("one if left empty"),
        type="number",
    )
    size = Field(
        name="size",
        label=say("Sizes"),
        value=given.get("size", ""),
        hint=say("180 × 45 mm, in that order"),
    )
    holds = Field(
        name="holds",
        label=say("One holds"),
        value=given.get("holds", ""),
        hint=say("75 ml, or the weight of the water: 75 g"),
    )
    own = ("", say("the mould of this dessert"))
    like = _list("like", say("It looks like"), [own, *moulds], given)
    pieces = Field(name="pieces", label=say("Pieces"), value=given.get("pieces", ""), type="number")
    return (
        Part(
            legend=say("A mould or glass that is known"),
            fields=(_list("mould", say("Mould or glass"), moulds, given),),
        ),
        Part(
            legend=say("One I have measured"),
            fields=(_list("shape", say("Shape"), shapes, given), size, cavities),
        ),
        Part(legend=say("One I have filled with water"), fields=(holds, like, cavities)),
        Part(legend=say("More or fewer pieces"), fields=(pieces,)),
    )


def _wait(found: Choices, given: Mapping[str, str]) -> tuple[Part, ...]:
    part = _list("wait", say("What waits"), _options(found.wait), given)
    where = _list("where", say("Where"), _said(PLACES), given)
    until = Field(
        name="until",
        label=say("Until when"),
        value=given.get("until", ""),
        type="datetime-local",
    )
    time = Field(
        name="for", label=say("How long"), value=given.get("for", ""), hint=say("2 days, 6 h")
    )
    return (
        Part(legend=say("Until a day and hour"), fields=(part, where, until)),
        Part(legend=say("For a time, or how long at most"), fields=(part, where, time)),
    )


def _allergens() -> tuple[tuple[str, str], ...]:
    from entremetry.questions.containing import allergen_names

    return tuple((name, say_as("allergen", name)) for name in allergen_names())


def _said(choices: Sequence[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    return tuple((value, say(words)) for value, words in choices)


def _options(found: Sequence[Choice]) -> tuple[tuple[str, str], ...]:
    return tuple((each.value, each.words) for each in found)


def _list(
    name: str, label: str, choices: Sequence[tuple[str, str]], given: Mapping[str, str]
) -> Field:
    options = tuple(
        Option(value=value, words=words, chosen=value == given.get(name, ""))
        for value, words in choices
    )
    return Field(name=name, label=label, options=options)
