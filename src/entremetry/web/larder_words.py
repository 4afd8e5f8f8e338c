"""What the pages call the marks of the larder: kinds, groups, constituents, measures, tags."""

from __future__ import annotations

from collections.abc import Iterable

from entremetry.dessert.household_amount import STATES
from entremetry.larder.ingredient import HouseholdWeight
from entremetry.quantities.things import things
from entremetry.words import decimal, say, say_as, say_as_later, say_later

KINDS = {
    kind: kind
    for kind in (
        say_as_later("component", "mousse"),
        say_as_later("component", "insert"),
        say_as_later("component", "base"),
        say_as_later("component", "glaze"),
        say_as_later("component", "soak"),
        say_as_later("component", "crumble"),
        say_as_later("component", "garnish"),
    )
}
GROUPS = {
    group: group
    for group in (
        say_as_later("larder", "biscuit and cake"),
        say_as_later("larder", "butter and fat"),
        say_as_later("larder", "chocolate and cocoa"),
        say_as_later("larder", "colour"),
        say_as_later("larder", "confection"),
        say_as_later("larder", "drink"),
        say_as_later("larder", "egg"),
        say_as_later("larder", "flour and starch"),
        say_as_later("larder", "fruit"),
        say_as_later("larder", "fruit juice"),
        say_as_later("larder", "fruit purée"),
        say_as_later("larder", "glaze"),
        say_as_later("larder", "leavening"),
        say_as_later("larder", "milk and cream"),
        say_as_later("larder", "nut and seed"),
        say_as_later("larder", "plant milk and cream"),
        say_as_later("larder", "salt and acid"),
        say_as_later("larder", "setting agent"),
        say_as_later("larder", "spice and flavouring"),
        say_as_later("larder", "spirit and wine"),
        say_as_later("larder", "sugar and syrup"),
        say_as_later("larder", "vegetable"),
    )
}
"""Groups of the larder; the group of an own ingredient stays as it is written."""
FACTS = {
    fact: fact
    for fact in (
        say_as_later("constituent", "acidity"),
        say_as_later("constituent", "alcohol"),
        say_as_later("constituent", "allergens"),
        say_as_later("constituent", "ash"),
        say_as_later("constituent", "bloom"),
        say_as_later("constituent", "brix"),
        say_as_later("constituent", "cocoa"),
        say_as_later("constituent", "cocoa butter"),
        say_as_later("constituent", "contains"),
        say_as_later("constituent", "density"),
        say_as_later("constituent", "dextrose equivalent"),
        say_as_later("constituent", "fat"),
        say_as_later("constituent", "fibre"),
        say_as_later("constituent", "fructose"),
        say_as_later("constituent", "galactose"),
        say_as_later("constituent", "glucose"),
        say_as_later("constituent", "group"),
        say_as_later("constituent", "label name"),
        say_as_later("constituent", "lactose"),
        say_as_later("constituent", "maltose"),
        say_as_later("constituent", "measures"),
        say_as_later("constituent", "milk fat"),
        say_as_later("constituent", "name"),
        say_as_later("constituent", "organic acids"),
        say_as_later("constituent", "other carbohydrate"),
        say_as_later("constituent", "other fat"),
        say_as_later("constituent", "pack"),
        say_as_later("constituent", "per 100g"),
        say_as_later("constituent", "polyols"),
        say_as_later("constituent", "protein"),
        say_as_later("constituent", "refuse"),
        say_as_later("constituent", "sodium"),
        say_as_later("constituent", "starch"),
        say_as_later("constituent", "sucrose"),
        say_as_later("constituent", "sugars"),
        say_as_later("constituent", "tags"),
        say_as_later("constituent", "trehalose"),
        say_as_later("constituent", "unsplit sugars"),
        say_as_later("constituent", "water"),
    )
}
"""Constituents and other figures of an ingredient, as its fields are named."""
TAGS = {
    tag: tag
    for tag in (
        say_as_later("tag", "acidic"),
        say_as_later("tag", "alcoholic"),
        say_as_later("tag", "animal"),
        say_as_later("tag", "chocolate"),
        say_as_later("tag", "dairy"),
        say_as_later("tag", "emulsifier"),
        say_as_later("tag", "fat"),
        say_as_later("tag", "fruit"),
        say_as_later("tag", "gelling"),
        say_as_later("tag", "leavening"),
        say_as_later("tag", "liquid"),
        say_as_later("tag", "paste"),
        say_as_later("tag", "powder"),
        say_as_later("tag", "proteolytic"),
        say_as_later("tag", "puree"),
        say_as_later("tag", "raw-egg"),
        say_as_later("tag", "raw-flour"),
        say_as_later("tag", "sets-with-calcium"),
        say_as_later("tag", "sets-with-sugar-and-acid"),
        say_as_later("tag", "sweetener"),
        say_as_later("tag", "thickening"),
        say_as_later("tag", "vegan"),
        say_as_later("tag", "weigh-only"),
        say_as_later("tag", "whippable"),
    )
}
CUPS = {
    "us cup": say_later("US cup"),
    "us tbsp": say_later("US tbsp"),
    "us tsp": say_later("US tsp"),
    "us fl oz": say_later("US fl oz"),
    "us quart": say_later("US quart"),
}


def kind(name: str) -> str:
    """Kind of a component."""
    return say_as("component", KINDS.get(name, name))


def group(name: str) -> str:
    """Group of an ingredient; one that a cook named keeps its name."""
    return say_as("larder", GROUPS[name]) if name in GROUPS else name


def fact(name: str) -> str:
    """A constituent or another figure of an ingredient, by the name of its field."""
    words = name.replace("_", " ")
    return say_as("constituent", FACTS[words]) if words in FACTS else words


def facts(names: Iterable[str]) -> str:
    """Several of them, by their names."""
    return ", ".join(fact(name) for name in sorted(names))


def tag(name: str) -> str:
    """A mark on an ingredient."""
    return say_as("tag", TAGS.get(name, name))


def measure(weight: HouseholdWeight) -> str:
    """So much of a household measure, with the state of what is in it: '1 US cup, sliced'."""
    plain, _, state = weight.measure.partition(", ")
    name = say(CUPS[plain]) if plain in CUPS else things(plain, weight.amount)
    amount = f"{decimal(f'{weight.amount:g}')} {name}"
    return f"{amount}, {say(STATES[state]) if state in STATES else state}" if state else amount
