"""What the fields of a dessert and a kitchen are called, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.web.speech import kept_by_language
from entremetry.words import say, say_as

LANGUAGES = 8  # whose words are kept at once


@kept_by_language(LANGUAGES)
def labels() -> Mapping[str, str]:
    """Labels by the name of the field, or by model and name where one model says it otherwise."""
    return {
        "ComponentDocument.kind": say_as("field", "What it is"),
        "about": say_as("field", "What it is like"),
        "amount": say_as("field", "Amount"),
        "aside": say_as("field", "Aside"),
        "at": say_as("field", "Oven at"),
        "base_diameter": say_as("field", "Diameter at the closed end"),
        "below_rim": say_as("field", "Below the rim"),
        "benches": say_as("field", "Places at the bench"),
        "blast": say_as("field", "Blast cabinet"),
        "bowl": say_as("field", "In the bowl"),
        "bowls": say_as("field", "Bowls"),
        "caught": say_as("field", "Caught and used again"),
        "cavities": say_as("field", "Cavities"),
        "corner_radius": say_as("field", "Corner radius"),
        "covered": say_as("field", "Covered"),
        "date": say_as("field", "Or one date"),
        "day": say_as("field", "Weekday"),
        "density": say_as("field", "Density"),
        "diameter": say_as("field", "Diameter"),
        "end": say_as("field", "To"),
        "evaporates": say_as("field", "Water that boils away"),
        "fan": say_as("field", "With fan"),
        "film": say_as("field", "Film"),
        "freezes_per_day": say_as("field", "Freezes in a day"),
        "from_closed_end": say_as("field", "From the closed end"),
        "hands_on": say_as("field", "Hands-on"),
        "height": say_as("field", "Height"),
        "hobs": say_as("field", "Hob rings"),
        "holds_back": say_as("field", "The sieve holds back"),
        "hole_diameter": say_as("field", "Hole"),
        "ice_bath": say_as("field", "In ice water"),
        "keeps": say_as("field", "Keeps for"),
        "kept": say_as("field", "Air that stays"),
        "kind": say_as("field", "Shape"),
        "left_behind": say_as("field", "Left behind"),
        "length": say_as("field", "Length"),
        "loss": say_as("field", "Loses"),
        "mass": say_as("field", "Mass"),
        "material": say_as("field", "Material"),
        "measures": say_as("field", "Whose cups and spoons"),
        "name": say_as("field", "Name"),
        "note": say_as("field", "Note"),
        "on": say_as("field", "On"),
        "overrun": say_as("field", "Overrun"),
        "owned": say_as("field", "How many"),
        "per_area": say_as("field", "Mass for each area"),
        "pieces": say_as("field", "Pieces"),
        "pour": say_as("field", "Poured over one piece"),
        "removes": say_as("field", "Takes out"),
        "room_temperature": say_as("field", "Room temperature"),
        "section": say_as("field", "Section"),
        "serves": say_as("field", "One piece serves"),
        "sits": say_as("field", "Sits"),
        "stands_on": say_as("field", "A piece stands on"),
        "start": say_as("field", "From"),
        "temperature": say_as("field", "Temperature"),
        "thickness": say_as("field", "Thickness"),
        "time": say_as("field", "Takes"),
        "time_zone": say_as("field", "Time zone"),
        "to_brix": say_as("field", "Down to (°Brix)"),
        "to_mass": say_as("field", "Down to"),
        "trays": say_as("field", "Trays at once"),
        "trim": say_as("field", "Trimmed off"),
        "turned": say_as("field", "Flat side to the closed end"),
        "volume": say_as("field", "Volume"),
        "water": say_as("field", "Cold water"),
        "what": say_as("field", "Goes in"),
        "where": say_as("field", "Where"),
        "width": say_as("field", "Width"),
        "within": say_as("field", "Within"),
    }


EXAMPLES: Mapping[str, str] = {
    "Freezer.freezes_per_day": "4 kg",
    "Freezer.temperature": "-18 °C",
    "Freezer.volume": "80 l",
    "Fridge.temperature": "4 °C",
    "Fridge.volume": "150 l",
    "KitchenDocument.room_temperature": "22 °C",
    "Mixer.volume": "4 l",
    "Tray.length": "400 mm",
    "Tray.width": "300 mm",
    "start": "18:00",
    "end": "22:00",
    "date": "2026-12-23",
    "time_zone": "Europe/Paris",
    "left_behind": "4 %",
    "overrun": "90 %",
}
"""What may be typed, as a document writes it, where the schema's own example says less."""


@kept_by_language(LANGUAGES)
def hints() -> Mapping[str, str]:
    """Hints that are no example, by the name of the field."""
    return {
        "note": say_as("field", "Note"),
        "about": say_as("field", "What it is like"),
        "what": say("names, with commas between"),
        "removes": say("names, with commas between"),
        "within": say("how soon after the step before"),
    }


@kept_by_language(LANGUAGES)
def places() -> Mapping[str, str]:
    """How a component may lie in the mould, by the word of the document."""
    return {
        "filling": say_as("in the mould", "fills what is left"),
        "layer": say_as("in the mould", "level layer"),
        "insert": say_as("in the mould", "insert"),
        "base": say_as("in the mould", "base"),
        "coating": say_as("in the mould", "coating"),
        "soak": say_as("in the mould", "soak"),
        "garnish": say_as("in the mould", "garnish"),
    }


@kept_by_language(LANGUAGES)
def steps() -> Mapping[str, str]:
    """Kinds of steps, by the word of the document."""
    return {
        "weigh": say_as("step", "Weigh out"),
        "soak": say_as("step", "Soak"),
        "mix": say_as("step", "Mix"),
        "melt": say_as("step", "Melt"),
        "simmer": say_as("step", "Simmer"),
        "cook-to": say_as("step", "Heat to a temperature"),
        "cool-to": say_as("step", "Cool to a temperature"),
        "strain": say_as("step", "Strain"),
        "whip": say_as("step", "Whip"),
        "fold": say_as("step", "Fold in"),
        "roll": say_as("step", "Roll out"),
        "cut": say_as("step", "Cut to shape"),
        "bake": say_as("step", "Bake"),
        "pour": say_as("step", "Pour"),
        "place": say_as("step", "Put in place"),
        "fill": say_as("step", "Fill the mould"),
        "freeze-until": say_as("step", "Freeze"),
        "unmould": say_as("step", "Unmould"),
        "glaze-at": say_as("step", "Glaze"),
        "thaw-until": say_as("step", "Thaw"),
        "rest": say_as("step", "Rest"),
        "hold": say_as("step", "Keep until wanted"),
        "serve": say_as("step", "Serve"),
    }
