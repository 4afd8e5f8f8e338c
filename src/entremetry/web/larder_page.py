"""The larder: look for an ingredient, and see what is known of it."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import ClassVar

from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from entremetry.errors import nearest_names
from entremetry.larder.constituents import Constituents
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.larder import Larder
from entremetry.larder.spelling import plain
from entremetry.larder.spoken_name import ingredient_name
from entremetry.publish.typography import grams, per_cent
from entremetry.quantities.things import things
from entremetry.sources import BIBLIOGRAPHY
from entremetry.usecases import larder as usecases_larder
from entremetry.usecases.library import kitchen_text
from entremetry.web.answers import larder
from entremetry.web.larder_words import fact
from entremetry.web.rendering import fragment, rendered
from entremetry.web.speech import kept_by_language
from entremetry.web.workbench import workbench_of
from entremetry.words import decimal, say

LONGEST_QUERY = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderPage:
    """Context of larder.html."""

    template: ClassVar[str] = "larder.html"
    everything: int
    q: str
    found: Markup


@dataclass(frozen=True, slots=True)
class Fact:
    """A name and what is said of it."""

    name: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class IngredientPage:
    """Context of ingredient.html."""

    template: ClassVar[str] = "ingredient.html"
    ingredient: Ingredient
    rows: tuple[Fact, ...]
    facts: tuple[Fact, ...]
    household_sources: tuple[str, ...]
    packs: str
    known_source: bool


def show_larder(request: Request) -> Response:
    """GET /larder"""
    kitchen, q = _kitchen(request), _query(request)
    page = LarderPage(everything=len(larder(kitchen)), q=q, found=found_by(q, kitchen))
    return rendered(request, page)


def show_found(request: Request) -> Response:
    """GET /larder/found: the part of the page that a search changes."""
    return HTMLResponse(found_by(_query(request), _kitchen(request)))


@kept_by_language(64)
def found_by(q: str, kitchen: str | None) -> Markup:
    """What a search finds, as the page shows it."""
    every = larder(kitchen)
    found = search(every, q)
    return fragment("larder_found.html", q=q, found=found, nearest=near(every, q, found))


def show_ingredient(request: Request) -> Response:
    """GET /larder/{id}"""
    ingredient = larder(_kitchen(request)).find(request.path_params["id"])
    keys = tuple(dict.fromkeys(weight.source for weight in ingredient.household))
    page = IngredientPage(
        ingredient=ingredient,
        rows=made_of(ingredient.composition),
        facts=measured(ingredient),
        household_sources=tuple(key for key in keys if key in BIBLIOGRAPHY),
        packs=", ".join(f"{things(each.name)} ({grams(each.mass)})" for each in ingredient.packs),
        known_source=ingredient.source in BIBLIOGRAPHY,
    )
    return rendered(request, page)


def search(every: Larder, q: str) -> tuple[Ingredient, ...]:
    """Ingredients that bear every word of the query; those whose name bears it stand first."""
    found = usecases_larder.search(q, every)
    return tuple(sorted(found, key=lambda each: (_rank(each, q), plain(ingredient_name(each)))))


def near(every: Larder, q: str, found: tuple[Ingredient, ...]) -> tuple[str, ...]:
    """Nearest names when a search finds nothing."""
    if found or not q:
        return ()
    return nearest_names(
        q, (name for each in every for name in (ingredient_name(each), *each.aliases))
    )


def made_of(composition: Constituents) -> tuple[Fact, ...]:
    """Constituents that are there, the most first."""
    amounts = ((field.name, getattr(composition, field.name)) for field in fields(composition))
    there = sorted(((name, part) for name, part in amounts if part > 0), key=lambda row: -row[1])
    return tuple(Fact(fact(name), _in_100_grams(part)) for name, part in there)


def measured(ingredient: Ingredient) -> tuple[Fact, ...]:
    """What else is known of an ingredient, in words."""
    known = (
        (say("Energy in 100 g"), ingredient.energy, lambda energy: f"{energy / 41_840:.0f} kcal"),
        (say("Bloom"), ingredient.bloom, lambda bloom: decimal(f"{bloom:g}")),
        (say("Brix"), ingredient.brix, lambda brix: decimal(f"{brix:g} °Bx")),
        (say("Cocoa"), ingredient.cocoa, per_cent),
        (say("Not eaten"), ingredient.refuse or None, per_cent),
    )
    return tuple(Fact(name, told(value)) for name, value, told in known if value is not None)


def _kitchen(request: Request) -> str | None:
    return kitchen_text(workbench_of(request).library)


def _query(request: Request) -> str:
    return request.query_params.get("q", "").strip()[:LONGEST_QUERY]


def _rank(ingredient: Ingredient, q: str) -> tuple[bool, bool]:
    name, wanted = plain(ingredient_name(ingredient)), plain(q)
    return wanted not in name, not name.startswith(wanted)


def _in_100_grams(fraction: float) -> str:
    mass = fraction * 100.0
    return decimal(f"{mass:.1f}") if mass >= 0.05 else say("under 0.1")
