"""Words of a document that a field offers to choose from, in the language that is spoken.

A document keeps its own word; English shows it as it is written.
"""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.web import larder_words
from entremetry.web.speech import kept_by_language
from entremetry.words import say_as

LANGUAGES = 8  # whose words are kept at once


def choice_words(name: str) -> Mapping[str, str]:
    """What the choices of a field are called, by the word of the document; empty if unknown."""
    return _words().get(name, {})


@kept_by_language(LANGUAGES)
def kinds() -> Mapping[str, str]:
    """Kinds of components, by the word of the document."""
    return {name: larder_words.kind(name) for name in larder_words.KINDS}


@kept_by_language(LANGUAGES)
def _words() -> Mapping[str, Mapping[str, str]]:
    under = {
        "metal shelf": say_as("stands on", "metal shelf"),
        "wire shelf": say_as("stands on", "wire shelf"),
        "glass shelf": say_as("stands on", "glass shelf"),
        "board": say_as("stands on", "board"),
        "box": say_as("stands on", "box"),
    }
    return {
        "measures": {
            "us": say_as("measures", "us"),
            "metric": say_as("measures", "metric"),
            "au": say_as("measures", "au"),
            "uk": say_as("measures", "uk"),
        },
        "where": {
            "room": say_as("where", "room"),
            "fridge": say_as("where", "fridge"),
            "freezer": say_as("where", "freezer"),
            "blast freezer": say_as("where", "blast freezer"),
            "all": say_as("where", "all"),
            "top": say_as("where", "top"),
        },
        "on": under,
        "stands_on": under,
        "sits": {
            "inside": say_as("base", "inside"),
            "under": say_as("base", "under"),
        },
        "section": {
            "half-round": say_as("section", "half-round"),
            "rounded": say_as("section", "rounded"),
            "round-topped": say_as("section", "round-topped"),
            "flat": say_as("section", "flat"),
        },
        "material": {
            "silicone": say_as("material", "silicone"),
            "metal": say_as("material", "metal"),
            "plastic": say_as("material", "plastic"),
            "glass": say_as("material", "glass"),
            "ceramic": say_as("material", "ceramic"),
            "paper": say_as("material", "paper"),
        },
        "kind": {**kinds(), **_shapes()},
        "day": {
            "monday": say_as("weekday", "monday"),
            "tuesday": say_as("weekday", "tuesday"),
            "wednesday": say_as("weekday", "wednesday"),
            "thursday": say_as("weekday", "thursday"),
            "friday": say_as("weekday", "friday"),
            "saturday": say_as("weekday", "saturday"),
            "sunday": say_as("weekday", "sunday"),
        },
    }


def _shapes() -> Mapping[str, str]:
    """Shapes of an insert."""
    return {
        "cylinder": say_as("shape", "cylinder"),
        "hemisphere": say_as("shape", "hemisphere"),
        "cap": say_as("shape", "cap"),
        "sphere": say_as("shape", "sphere"),
        "cone": say_as("shape", "cone"),
        "ellipsoid": say_as("shape", "ellipsoid"),
        "box": say_as("shape", "box"),
        "log": say_as("shape", "log"),
        "ring": say_as("shape", "ring"),
    }
