"""Ingredients of the larder as JSON and as text for a terminal."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from entremetry.larder.constituents import NAMES
from entremetry.larder.ingredient import Ingredient
from entremetry.larder.nutrients import NUTRIENTS
from entremetry.quantities import format_density, format_mass
from entremetry.sources import cite


def as_json(found: tuple[Ingredient, ...]) -> str:
    """One JSON object that lists the ingredients."""
    return json.dumps(
        {"ingredients": [_ingredient(ingredient) for ingredient in found]},
        ensure_ascii=False,
        indent=2,
    )


def _ingredient(ingredient: Ingredient) -> dict[str, Any]:
    return {
        "id": ingredient.id,
        "name": ingredient.name,
        "aliases": list(ingredient.aliases),
        "group": ingredient.group,
        "density_g_per_ml": round(ingredient.density / 1e3, 4),
        "per_100g": {
            f"{name}_g": round(value * 100.0, 3)
            for name in NAMES
            if (value := getattr(ingredient.composition, name))
        },
        "nutrients_per_100g": {
            f"{name}_mg": None if value is None else round(value * 1e5, 5)
            for name in NUTRIENTS
            for value in [getattr(ingredient.nutrients, name)]
        },
        "parts": [
            {"id": part.id, "share_percent": round(part.share * 100.0, 2)}
            for part in ingredient.parts
        ],
        "household": [
            {"measure": w.measure, "amount": w.amount, "mass_g": round(w.mass * 1e3, 3)}
            for w in ingredient.household
        ],
        "allergens_eu": sorted(ingredient.allergens_eu),
        "allergens_us": sorted(ingredient.allergens_us),
        "tags": sorted(ingredient.tags),
        "not_reported": sorted(ingredient.not_reported),
        "source": ingredient.source,
    }


def as_text(found: tuple[Ingredient, ...]) -> str:
    """One ingredient in full, or several a line each."""
    if len(found) == 1:
        return "\n".join(_full(found[0]))
    return "\n".join(f"{ingredient.id:<32}  {ingredient.name}" for ingredient in found)


def _full(ingredient: Ingredient) -> Iterator[str]:
    yield f"{ingredient.name}  ({ingredient.id})"
    if ingredient.aliases:
        yield f"  also: {', '.join(ingredient.aliases)}"
    yield f"  density: {format_density(ingredient.density)}"
    yield "  in 100 g: " + ", ".join(
        f"{name.replace('_', ' ')} {value * 100.0:.3g} g"
        for name in NAMES
        if (value := getattr(ingredient.composition, name)) > 5e-6
    )
    yield "  for a label: " + ", ".join(
        f"{name.replace('_', ' ')} "
        + ("not reported" if value is None else format_mass(value * 0.1) if value else "none")
        for name in NUTRIENTS
        for value in [getattr(ingredient.nutrients, name)]
    )
    if ingredient.parts:
        made = ", ".join(f"{part.id} {part.share:.0%}" for part in ingredient.parts)
        yield f"  made of: {made}"
    for weight in ingredient.household:
        yield f"  {weight.amount:g} {weight.measure}: {format_mass(weight.mass)}"
    if ingredient.allergens_eu:
        yield f"  allergens (EU): {', '.join(sorted(ingredient.allergens_eu))}"
    if ingredient.allergens_us:
        yield f"  allergens (US): {', '.join(sorted(ingredient.allergens_us))}"
    if ingredient.tags:
        yield f"  tags: {', '.join(sorted(ingredient.tags))}"
    if ingredient.not_reported:
        yield f"  not reported: {', '.join(sorted(ingredient.not_reported))}"
    yield f"  source: {cite(ingredient.source).text}"
