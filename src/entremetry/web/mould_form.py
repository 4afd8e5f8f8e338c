"""A mould of one's own from the fields of a form: a kind, its measures, how many on a tray."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from entremetry.documents.rendering import flow_text
from entremetry.errors import EntremetryError
from entremetry.kitchen.water_weighing import water_volume
from entremetry.quantities import format_length, format_volume
from entremetry.quantities.parsing import parse_length
from entremetry.questions.own_mould import SHAPES, measured, sized
from entremetry.words import say, say_later

WORDS: Mapping[str, str] = {
    "diameter": say_later("Across"),
    "hole_diameter": say_later("Hole across"),
    "length": say_later("Length"),
    "width": say_later("Width"),
    "height": say_later("Height"),
    "holds": say_later("Holds"),
}
MOST_CAVITIES = 500
HOLDS = "holds"
LIKE = {"kind": "hemisphere", "diameter": "70 mm"}
NAMES: Mapping[str, str] = {
    "dome": say_later("Half-sphere"),
    "ring": say_later("Ring or cylinder"),
    "savarin": say_later("Ring with a hole"),
    "log": say_later("Half-round log"),
    "frame": say_later("Frame"),
    "glass": say_later("Straight glass"),
    HOLDS: say_later("Mould of so many millilitres"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnKind:
    """A kind of mould that can be asked for: its word, its name, and its measures."""

    id: str
    name: str
    measures: tuple[str, ...]


KINDS = tuple(
    OwnKind(id=word, name=name, measures=SHAPES[word].sizes if word in SHAPES else (HOLDS,))
    for word, name in NAMES.items()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnMould:
    """A mould as a document writes it, empty if none is asked for; or faults by field."""

    text: str
    faults: Mapping[str, str]


def own_mould(fields: Mapping[str, str]) -> OwnMould:
    """Read the fields; every fault is told at once."""
    kind = next((each for each in KINDS if each.id == fields.get("own", "")), None)
    if kind is None:
        return OwnMould(text="", faults={})
    read = {name: _measure(name, fields.get(name, "").strip()) for name in kind.measures}
    faults = {name: fault for name, (_, fault) in read.items() if fault}
    cavities = fields.get("cavities", "").strip() or "1"
    if not (cavities.isascii() and cavities.isdigit() and 1 <= int(cavities[:6]) <= MOST_CAVITIES):
        faults["cavities"] = say(
            "Found '{found}'; a whole number up to {most}.", found=cavities[:40], most=MOST_CAVITIES
        )
    if faults:
        return OwnMould(text="", faults=faults)
    said = [text for text, _ in read.values()]
    return OwnMould(text=flow_text(_written(kind, said, int(cavities))) + "\n", faults={})


def _measure(name: str, typed: str) -> tuple[str, str]:
    """A measure as a document writes it, or what is wrong; a bare number is in mm or ml."""
    unit, example = ("ml", "75 ml") if name == HOLDS else ("mm", "75 mm")
    if not typed:
        return "", say("Say how much, such as {example}.", example=example)
    bare = typed.replace(",", ".")
    written = f"{bare} {unit}" if bare.replace(".", "", 1).isdigit() else typed
    try:
        said = format_volume(water_volume(written)) if name == HOLDS else _length(written)
    except EntremetryError as error:
        return "", f"{error}."
    return said, ""


def _length(written: str) -> str:
    return format_length(parse_length(written))


def _written(kind: OwnKind, said: Sequence[str], cavities: int) -> dict[str, Any]:
    """The mould as a document writes it."""
    if kind.id == HOLDS:
        return measured(said[0], LIKE, {}, cavities=cavities)
    return sized(SHAPES[kind.id], [parse_length(each) for each in said], cavities=cavities)
