"""The fields of each kind of question, with what there is to choose from."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from entremetry.questions.choices import Choice, Choices


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """A kind of question: its id, and how people ask it."""

    id: str
    words: str


KINDS = (
    Kind(id="instead", words="I have something else"),
    Kind(id="mould", words="My mould is another one"),
    Kind(id="wait", words="Can it wait?"),
    Kind(id="without", words="Can I leave it out?"),
    Kind(id="symptom", words="What went wrong?"),
    Kind(id="contains", words="Does it contain that?"),
)
PLACES = (
    ("", "where it usually lies"),
    ("freezer", "freezer"),
    ("fridge", "fridge"),
    ("table", "table"),
)
RULES = (("", "mass times Bloom"), ("square-root", "gel strength"))


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
    button: str = "Ask"
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
                legend="Leave out",
                fields=(_list("without", "What", _options(found.without), given),),
            ),
        ),
        "symptom": lambda: (
            Part(
                legend="What you see",
                fields=(_list("symptom", "What happened", _options(found.symptoms), given),),
            ),
        ),
        "contains": lambda: (
            Part(
                legend="What it may contain",
                fields=(_list("contains", "Allergen", _allergens(), given),),
            ),
        ),
    }
    return Asking(parts=makers[kind]())


def _instead(found: Choices, given: Mapping[str, str]) -> tuple[Part, ...]:
    lines = _list("instead", "What you do not have", _options(found.instead), given)
    chosen = next((each for each in found.instead if each.value == given.get("instead")), None)
    if chosen is None:
        return (
            Part(legend="Instead of", fields=(lines,), button="Show what may stand in", first=True),
        )
    near = _list("have", "What you have", _options(chosen.alike), given)
    other = Field(
        name="have",
        label="Another ingredient",
        value="" if any(each.chosen for each in near.options) else given.get("have", ""),
        hint="Of the larder, by id or name; two with a plus: cream-48+whole-milk",
    )
    rule = _list("bloom-rule", "Gelatines are compared by", RULES, given)
    line = Field(
        name="instead",
        label="Instead of",
        options=(Option(value=chosen.value, words=chosen.words, chosen=True),),
    )
    again = Part(legend="Instead of", fields=(lines,), button="Choose this line", first=True)
    listed = Part(legend="One that is alike", fields=(line, near, rule))
    typed = Part(legend="Something else", fields=(line, other, rule))
    return (again, *((listed,) if chosen.alike else ()), typed)


def _mould(moulds: Sequence[tuple[str, str]], given: Mapping[str, str]) -> tuple[Part, ...]:
    from entremetry.questions.own_mould import SHAPES

    shapes = [
        (each.word, f"{each.word.replace('-', ' ')}: {each.asks}") for each in SHAPES.values()
    ]
    cavities = Field(
        name="cavities",
        label="Cavities in it",
        value=given.get("cavities", ""),
        hint="one if left empty",
        type="number",
    )
    size = Field(
        name="size", label="Sizes", value=given.get("size", ""), hint="180 × 45 mm, in that order"
    )
    holds = Field(
        name="holds",
        label="One holds",
        value=given.get("holds", ""),
        hint="75 ml, or the weight of the water: 75 g",
    )
    like = _list("like", "It looks like", [("", "the mould of this dessert"), *moulds], given)
    pieces = Field(name="pieces", label="Pieces", value=given.get("pieces", ""), type="number")
    return (
        Part(
            legend="A mould or glass that is known",
            fields=(_list("mould", "Mould or glass", moulds, given),),
        ),
        Part(
            legend="One I have measured",
            fields=(_list("shape", "Shape", shapes, given), size, cavities),
        ),
        Part(legend="One I have filled with water", fields=(holds, like, cavities)),
        Part(legend="More or fewer pieces", fields=(pieces,)),
    )


def _wait(found: Choices, given: Mapping[str, str]) -> tuple[Part, ...]:
    part = _list("wait", "What waits", _options(found.wait), given)
    where = _list("where", "Where", PLACES, given)
    until = Field(
        name="until",
        label="Until when",
        value=given.get("until", ""),
        type="datetime-local",
    )
    time = Field(name="for", label="How long", value=given.get("for", ""), hint="2 days, 6 h")
    return (
        Part(legend="Until a day and hour", fields=(part, where, until)),
        Part(legend="For a time, or how long at most", fields=(part, where, time)),
    )


def _allergens() -> tuple[tuple[str, str], ...]:
    from entremetry.questions.containing import allergen_names

    return tuple((name, name) for name in allergen_names())


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
