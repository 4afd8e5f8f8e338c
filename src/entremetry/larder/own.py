"""A cook's own ingredients: new ones, and larder ones with some figures replaced.

This module alone of the room loads pydantic, so the room does not re-export it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, PlainValidator, WithJsonSchema, model_validator

from entremetry.errors import DocumentError, Fault, QuantityError, UnknownName, nearest_names
from entremetry.larder.allergens import ALLERGENS, ANIMAL, declared
from entremetry.larder.ingredient import HouseholdWeight, Ingredient, Pack
from entremetry.larder.label import LABEL_WORDS, LabelError, closed, replaced, stated_nutrients
from entremetry.larder.larder import Larder
from entremetry.larder.nutrients import NUTRIENTS, Nutrients
from entremetry.larder.tags import TAGS
from entremetry.quantities import parse_mass
from entremetry.quantities.fields import Density, Fraction, Mass
from entremetry.words import quoted, say, say_as

PER_100G = "per_100g"
SODIUM_PER_SALT = 1.0 / 2.5
TAKEN_OVER = (
    "group",
    "brix",
    "bloom",
    "dextrose_equivalent",
    "ph",
    "cocoa",
    "acidity",
    "label_name",
    "contains",
)


def _per_100g(value: Any) -> float:
    """Read '38 g' or 38 as a mass fraction."""
    grams = parse_mass(value, zero=True) * 1000.0 if isinstance(value, str) else value
    if isinstance(grams, bool) or not isinstance(grams, int | float) or not 0 <= grams <= 100:
        raise QuantityError(f"{value}", say("grams in 100 g, from 0 to 100"))
    return float(grams) / 100.0


Per100g = Annotated[
    float,
    PlainValidator(_per_100g),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "number", "minimum": 0, "maximum": 100},
                {"type": "string", "pattern": r"^\s*[0-9].*g\s*$"},
            ],
            "description": "Grams in 100 g, as a number or with its unit.",
            "examples": [38, "38 g"],
        }
    ),
]
Word = Annotated[str, Field(min_length=1, max_length=60)]
Text = Annotated[str, Field(min_length=1, max_length=120)]


class OwnPack(BaseModel):
    """A unit in which the ingredient is sold."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    name: Text
    mass: Mass
    whole: bool = False


class OwnIngredient(BaseModel):
    """An own ingredient of a dessert or kitchen: new, or `like` one of the larder."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    like: Word | None = Field(default=None, description="The larder ingredient it starts from.")
    name: Text | None = None
    group: Text | None = None
    aliases: list[Text] = Field(default_factory=list, max_length=20)
    fat: Fraction | None = Field(default=None, description="Short for per_100g: fat.")
    per_100g: dict[str, Per100g] = Field(
        default_factory=dict,
        max_length=len(LABEL_WORDS),
        description=f"Grams in 100 g. Words: {', '.join(LABEL_WORDS)}.",
    )
    density: Density | None = None
    brix: Annotated[float, Field(ge=0, le=100)] | None = None
    bloom: Annotated[float, Field(ge=50, le=350)] | None = None
    dextrose_equivalent: Annotated[float, Field(ge=1, le=100)] | None = None
    ph: Annotated[float, Field(ge=0, le=14)] | None = None
    cocoa: Fraction | None = None
    acidity: Fraction | None = None
    refuse: Annotated[Fraction, Field(lt=1)] | None = None
    measures: dict[Text, Mass] = Field(default_factory=dict, max_length=30)
    allergens: list[Literal[tuple(ALLERGENS)]] | None = None  # type: ignore[valid-type]
    tags: list[Literal[tuple(TAGS)]] | None = None  # type: ignore[valid-type]
    pack: OwnPack | None = None
    label_name: Text | None = Field(
        default=None, description="What a list of ingredients calls it: the legal name."
    )
    contains: Annotated[str, Field(max_length=2000)] | None = Field(
        default=None,
        description="Its own list of ingredients, as the packet prints it, allergens included.",
    )
    source: Text = Field(default="not stated", description="Who says so: packet, supplier.")

    @model_validator(mode="after")
    def _adds_up(self) -> OwnIngredient:
        unknown = sorted(set(self.per_100g) - set(LABEL_WORDS))
        if unknown:
            known = ", ".join(LABEL_WORDS)
            accepted = say("under {key} one of: {names}", key=PER_100G, names=known)
            nearest = nearest_names(unknown[0], LABEL_WORDS)
            found = say("{key}: '{value}'", key=PER_100G, value=unknown[0])
            raise QuantityError(found, accepted, nearest)
        if self.fat is not None and "fat" in self.per_100g:
            twice = say("fat stands twice: once of its own and once in {key}", key=PER_100G)
            raise ValueError(twice)
        if self.per_100g and self.like is None:
            closed(self.stated())
        return self

    def stated(self) -> dict[str, float]:
        """What the label states, as mass fractions."""
        return {**self.per_100g, **({} if self.fat is None else {"fat": self.fat})}


def own_ingredients(section: Mapping[str, OwnIngredient], larder: Larder) -> tuple[Ingredient, ...]:
    """Make the ingredients of a document's section `ingredients`.

    One may be like another of the same section that stands above it.

    Raises
    ------
    DocumentError
        With all faults: an unknown `like`, parts that do not add up, something missing.
    """
    made: list[Ingredient] = []
    faults: list[Fault] = []
    for ingredient_id, own in section.items():
        try:
            made.append(_ingredient(ingredient_id, own, larder.with_own(made)))
        except UnknownName as unknown:
            faults.append(_fault(ingredient_id, "like", unknown))
        except LabelError as error:
            faults.append(_fault(ingredient_id, "", error))
    if faults:
        raise DocumentError(faults)
    return tuple(made)


def _fault(ingredient_id: str, field: str, error: UnknownName | LabelError) -> Fault:
    place = ".".join(part for part in ("ingredients", ingredient_id, field) if part)
    if isinstance(error, UnknownName):
        found, accepted = quoted(error.name), say("an ingredient of the larder")
        return Fault(field=place, found=found, accepted=accepted, nearest=error.nearest)
    return Fault(field=place, found=error.found, accepted=error.accepted)


def _ingredient(ingredient_id: str, own: OwnIngredient, larder: Larder) -> Ingredient:
    """Make one: from what it is like, from the larder's of the same id, or from nothing."""
    if own.like is not None:
        return _changed(ingredient_id, own, larder.find(own.like))
    if ingredient_id in larder and not _whole(own):
        return _changed(ingredient_id, own, larder.find(ingredient_id))
    return _new(ingredient_id, own)


def _whole(own: OwnIngredient) -> bool:
    return own.name is not None and own.density is not None and bool(own.per_100g)


def _new(ingredient_id: str, own: OwnIngredient) -> Ingredient:
    wanted = {"name": own.name, "density": own.density, PER_100G: own.per_100g or None}
    missing = [word for word, value in wanted.items() if value is None]
    if own.name is None or own.density is None or missing:
        lacking = [say("no {field}", field=field) for field in missing]
        raise LabelError(
            say_as("between two things", " and ").join(lacking),
            say("name, density and {key}, or like another ingredient", key=PER_100G),
        )
    start = Ingredient(
        id=ingredient_id,
        name=own.name,
        group="own",
        composition=closed(own.stated()),
        density=own.density,
        source=_source(own),
        nutrients=Nutrients(**{n: own.per_100g.get(n) for n in NUTRIENTS}),
        not_reported=frozenset() if "salt" in own.per_100g else frozenset({"sodium"}),
    )
    return _with_the_rest(start, own)


def _changed(ingredient_id: str, own: OwnIngredient, start: Ingredient) -> Ingredient:
    composition = replaced(start.composition, own.stated()) if own.stated() else start.composition
    named = replace(
        start,
        id=ingredient_id,
        like=start.kind,
        name=own.name or (start.name if ingredient_id == start.id else f"{start.name} (own)"),
        aliases=start.aliases if ingredient_id == start.id else (),
        composition=composition,
        density=own.density or start.density,
        source=_source(own),
        nutrients=stated_nutrients(start.nutrients, own.stated(), start.composition, composition),
        parts=() if own.stated() or own.contains else start.parts,
        energy=None if own.stated() else start.energy,
        not_reported=start.not_reported - _said_by(own.per_100g),
    )
    return _with_the_rest(named, own)


def _said_by(stated: Iterable[str]) -> frozenset[str]:
    """What is reported once these words of a label are stated."""
    words = frozenset(stated)
    return words | {"sodium"} if "salt" in words else words


def _with_the_rest(start: Ingredient, own: OwnIngredient) -> Ingredient:
    """Take over all fields that do not depend on where the ingredient comes from."""
    given: dict[str, Any] = {
        word: getattr(own, word) for word in TAKEN_OVER if getattr(own, word) is not None
    }
    if own.refuse is not None:
        given["refuse"] = own.refuse
    if own.allergens is not None:
        given["allergens_eu"], given["allergens_us"] = declared(own.allergens)
    if "salt" in own.per_100g:
        given["sodium"] = own.per_100g["salt"] * SODIUM_PER_SALT
    if own.pack is not None:
        pack = Pack(name=own.pack.name, mass=own.pack.mass, whole=own.pack.whole)
        given["packs"] = (pack,)
    return replace(
        start,
        aliases=(*start.aliases, *own.aliases),
        household=_household(start.household, own),
        tags=_tags(start, own),
        density_source=_source(own) if own.density is not None else start.density_source,
        overridden=frozenset(own.model_fields_set - {"like", "source", "aliases"})
        or frozenset({"like"}),
        **given,
    )


def _household(
    before: Iterable[HouseholdWeight], own: OwnIngredient
) -> tuple[HouseholdWeight, ...]:
    mine = tuple(
        HouseholdWeight(measure=measure, amount=1.0, mass=mass, source=_source(own))
        for measure, mass in own.measures.items()
    )
    return (*mine, *(weight for weight in before if weight.measure not in own.measures))


def _tags(start: Ingredient, own: OwnIngredient) -> frozenset[str]:
    """The tags stated, or those of what it is like; milk and the like rule out 'vegan'."""
    tags = start.tags if own.tags is None else frozenset(own.tags)
    return tags - {"vegan"} if ANIMAL & set(own.allergens or ()) else tags


def _source(own: OwnIngredient) -> str:
    return f"own: {own.source}"
