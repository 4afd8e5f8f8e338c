"""The stops of the walk through the kitchen: what each is called and what it asks."""

from __future__ import annotations

from dataclasses import dataclass

from pydantic import BaseModel

from entremetry.kitchen.kitchen_document import Freezer, Fridge, Mixer, Oven, Person, Tray
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.web.speech import kept_by_language
from entremetry.words import say, say_as


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """A list of things at a station: where it stands, what each thing is, what is asked of it.

    `words` is what the list is called, `add` what adds to it.
    """

    key: str
    words: str
    add: str
    model: type[BaseModel]
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """One stop of the walk: what it is called, what it decides, its single fields, its shelves."""

    title: str
    why: str
    names: tuple[str, ...] = ()
    shelves: tuple[Shelf, ...] = ()


@kept_by_language(8)
def stations() -> tuple[Station, ...]:
    """The stops of the walk in their order, in the language that is spoken."""
    return (
        Station(
            title=say_as("station", "How you measure"),
            why=say(
                "Cups and spoons differ by country; the room decides how fast things cool and thaw."
            ),
            names=("name", "measures", "room_temperature", "time_zone"),
        ),
        Station(
            title=say_as("station", "Heat"),
            why=say("Two things at one temperature share an oven; at two temperatures they wait."),
            names=("hobs",),
            shelves=(
                Shelf(
                    key="ovens",
                    words=say("Ovens"),
                    add=say("Add to ovens"),
                    model=Oven,
                    names=("name", "fan", "trays"),
                ),
            ),
        ),
        Station(
            title=say_as("station", "Cold"),
            why=say(
                "How cold, how large and on what a piece stands decide how long it "
                "freezes and thaws."
            ),
            shelves=(
                Shelf(
                    key="freezers",
                    words=say("Freezers"),
                    add=say("Add to freezers"),
                    model=Freezer,
                    names=(
                        "name",
                        "temperature",
                        "volume",
                        "freezes_per_day",
                        "stands_on",
                        "blast",
                    ),
                ),
                Shelf(
                    key="fridges",
                    words=say("Fridges"),
                    add=say("Add to fridges"),
                    model=Fridge,
                    names=("name", "temperature", "volume", "stands_on", "fan"),
                ),
            ),
        ),
        Station(
            title=say_as("station", "Bench"),
            why=say(
                "One mixer means one foam at a time; a tray says how many bases come "
                "out of a sheet."
            ),
            names=("benches",),
            shelves=(
                Shelf(
                    key="mixers",
                    words=say("Mixers"),
                    add=say("Add to mixers"),
                    model=Mixer,
                    names=("name", "bowls", "volume"),
                ),
                Shelf(
                    key="trays",
                    words=say("Trays"),
                    add=say("Add to trays"),
                    model=Tray,
                    names=("name", "length", "width", "owned"),
                ),
            ),
        ),
        Station(
            title=say_as("station", "Moulds"),
            why=say("Fill one cavity to the rim with water and weigh the water: 1 g is 1 ml."),
            shelves=(
                Shelf(
                    key="moulds",
                    words=say("Moulds of your own"),
                    add=say("Add to moulds of your own"),
                    model=MouldDocument,
                    names=("name", "cavities", "owned", "material"),
                ),
            ),
        ),
        Station(
            title=say_as("station", "Hands"),
            why=say("Plans are made for the hours in which somebody is free."),
            shelves=(
                Shelf(
                    key="people",
                    words=say("People"),
                    add=say("Add to people"),
                    model=Person,
                    names=("name",),
                ),
            ),
        ),
    )
