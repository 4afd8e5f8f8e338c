"""A mould of one's own from the fields of a form: a kind, its measures, how many on a tray."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from entremetry.errors import EntremetryError
from entremetry.kitchen.water_weighing import water_volume
from entremetry.quantities import format_length, format_volume
from entremetry.quantities.parsing import parse_length

WORDS: Mapping[str, str] = {
    "diameter": "Across",
    "hole_diameter": "Hole across",
    "length": "Length",
    "width": "Width",
    "height": "Height",
    "holds": "Holds",
}
MOST_CAVITIES = 500
LIKE = "{kind: hemisphere, diameter: 70 mm}"


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnKind:
    """A kind of mould: the shape it has, its measures, and what else a document says of it."""

    id: str
    name: str
    shape: str
    measures: tuple[str, ...]
    more: str = ""


KINDS = (
    OwnKind(id="dome", name="Half-sphere", shape="hemisphere", measures=("diameter",)),
    OwnKind(
        id="ring",
        name="Ring or cylinder",
        shape="cylinder",
        measures=("diameter", "height"),
        more="material: metal",
    ),
    OwnKind(
        id="savarin",
        name="Ring with a hole",
        shape="ring",
        measures=("diameter", "hole_diameter"),
    ),
    OwnKind(id="log", name="Half-round log", shape="log", measures=("length", "width")),
    OwnKind(
        id="frame",
        name="Frame",
        shape="box",
        measures=("length", "width", "height"),
        more="material: metal, fills: upright",
    ),
    OwnKind(
        id="glass",
        name="Straight glass",
        shape="cylinder",
        measures=("diameter", "height"),
        more="material: glass, vessel: true",
    ),
    OwnKind(id="holds", name="Mould of so many millilitres", shape="measured", measures=("holds",)),
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
        faults["cavities"] = f"Found '{cavities[:40]}'; a whole number up to {MOST_CAVITIES}."
    if faults:
        return OwnMould(text="", faults=faults)
    return OwnMould(
        text=_text(kind, {name: said for name, (said, _) in read.items()}, cavities), faults={}
    )


def _measure(name: str, typed: str) -> tuple[str, str]:
    """A measure as a document writes it, or what is wrong; a bare number is in mm or ml."""
    unit, example = ("ml", "75 ml") if name == "holds" else ("mm", "75 mm")
    if not typed:
        return "", f"Say how much, such as {example}."
    bare = typed.replace(",", ".")
    written = f"{bare} {unit}" if bare.replace(".", "", 1).isdigit() else typed
    try:
        said = format_volume(water_volume(written)) if name == "holds" else _length(written)
    except EntremetryError as error:
        return "", f"{error}."
    return said, ""


def _length(written: str) -> str:
    return format_length(parse_length(written))


def _text(kind: OwnKind, said: Mapping[str, str], cavities: str) -> str:
    sizes = " × ".join(said.values())
    shape = "".join(f", {name}: {value}" for name, value in said.items())
    like = f", like: {LIKE}" if kind.shape == "measured" else ""
    more = f", {kind.more}" if kind.more else ""
    return (
        f'{{id: own-{kind.id}, name: "{kind.name}, {sizes}", '
        f"shape: {{kind: {kind.shape}{shape}{like}}}, cavities: {cavities}{more}}}\n"
    )
