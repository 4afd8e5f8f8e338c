"""Words of the choices that a draft offers, in the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping

from entremetry.words import say, say_as


def kind_words() -> Mapping[str, str]:
    """Kinds of components."""
    return {
        "mousse": say_as("component", "Mousse"),
        "insert": say_as("component", "Insert"),
        "base": say_as("component", "Base"),
        "glaze": say_as("component", "Glaze"),
        "soak": say_as("component", "Soak"),
        "crumble": say_as("component", "Crumble"),
        "garnish": say_as("component", "Garnish"),
    }


def measure_words() -> Mapping[str, str]:
    """Whose cups and spoons may be meant."""
    return {
        "us": say("US: cup 237 ml, tablespoon 14.8 ml"),
        "metric": say("Metric: cup 250 ml, tablespoon 15 ml"),
        "au": say("Australian: cup 250 ml, tablespoon 20 ml"),
        "uk": say("British: tablespoon 15 ml, pint 568 ml"),
    }


def step_words() -> Mapping[str, str]:
    """Kinds of steps, and what is no step."""
    return {
        "weigh": say_as("work", "Weigh out"),
        "soak": say_as("work", "Soak in water"),
        "mix": say_as("work", "Mix or stir in"),
        "melt": say_as("work", "Melt"),
        "simmer": say_as("work", "Simmer"),
        "cook-to": say_as("work", "Heat to a temperature"),
        "cool-to": say_as("work", "Cool to a temperature"),
        "strain": say_as("work", "Strain"),
        "whip": say_as("work", "Whip air in"),
        "fold": say_as("work", "Fold in"),
        "roll": say_as("work", "Roll out"),
        "cut": say_as("work", "Cut to shape"),
        "bake": say_as("work", "Bake"),
        "pour": say_as("work", "Pour or pipe"),
        "place": say_as("work", "Put in place"),
        "fill": say_as("work", "Fill the mould"),
        "freeze-until": say_as("work", "Freeze"),
        "unmould": say_as("work", "Unmould"),
        "glaze-at": say_as("work", "Glaze"),
        "thaw-until": say_as("work", "Thaw"),
        "rest": say_as("work", "Leave to rest or set"),
        "hold": say_as("work", "Keep"),
        "serve": say_as("work", "Serve"),
        "note": say("No step of its own: keep the sentence as a note"),
    }
