"""Textures that tell the kinds of parts apart without colour."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from functools import lru_cache

from entremetry.dessert.batch_sheet import DrawnPart
from entremetry.publish.colour import Colour, darker, hex_colour, lighter
from entremetry.publish.markup import element

TILE = 36.0
OPEN_CRUMB = re.compile(r"sponge|joconde|genoise|dacquoise|ladyfinger|biscuit|cake|meringue")


def texture(part: DrawnPart) -> str:
    """Name of the texture of a part."""
    if part.kind == "base":
        return (
            "sponge" if OPEN_CRUMB.search(f"{part.name} {part.component}".casefold()) else "crumb"
        )
    if part.kind in {"crumble", "garnish"}:
        return "rubble"
    return {"mousse": "foam", "insert": "gel"}.get(part.kind, "smooth")


def pattern(name: str, colour: Colour, *, id_: str, scale: float) -> str:
    """Seamless tile of a texture over a colour, for shapes drawn `scale` units to the mm."""
    return element(
        "pattern",
        _marks(name, colour) or element("g"),
        id=id_,
        width=TILE,
        height=TILE,
        patternUnits="userSpaceOnUse",
        patternTransform=f"scale({1.0 / scale:.5f})",
    )


@lru_cache(maxsize=64)
def _marks(name: str, colour: Colour) -> str:
    return "".join(MARKS[name](colour)) if name in MARKS else ""


def scattered(count: int, seed: str) -> Iterator[tuple[float, float, float]]:
    """Places in the tile and a size from 0 to 1, each kept clear of the others."""
    source = random.Random(seed)
    kept: list[tuple[float, float]] = []
    for _ in range(40 * count):
        if len(kept) == count:
            return
        x, y = source.uniform(0, TILE), source.uniform(0, TILE)
        if all(wrapped(x - a) ** 2 + wrapped(y - b) ** 2 > 0.45 * TILE**2 / count for a, b in kept):
            kept.append((x, y))
            yield x, y, source.random()


def wrapped(distance: float) -> float:
    """Distance across the seam of the tile where that is shorter."""
    return abs((distance + TILE / 2.0) % TILE - TILE / 2.0)


def copies(x: float, y: float, reach: float) -> Iterator[tuple[float, float]]:
    """A place, and its copies that reach over a seam."""
    for dx in (0.0, TILE, -TILE):
        for dy in (0.0, TILE, -TILE):
            if -reach < x + dx < TILE + reach and -reach < y + dy < TILE + reach:
                yield x + dx, y + dy


def dots(
    count: int, seed: str, smallest: float, largest: float, fill: Colour, opacity: float
) -> Iterator[str]:
    """Round marks."""
    for x, y, size in scattered(count, seed):
        radius = smallest + (largest - smallest) * size**2
        for a, b in copies(x, y, radius):
            yield element(
                "circle", cx=a, cy=b, r=radius, fill=hex_colour(fill), fill_opacity=opacity
            )


def pebbles(count: int, seed: str, size: float, fill: Colour, opacity: float) -> Iterator[str]:
    """Broken, angular marks."""
    source = random.Random(seed)
    for x, y, part in scattered(count, seed):
        reach = size * (0.6 + 0.6 * part)
        corners = [
            (reach * source.uniform(0.55, 1.0), turn * 1.2566 + source.uniform(-0.3, 0.3))
            for turn in range(5)
        ]
        for a, b in copies(x, y, reach):
            yield pebble(a, b, corners, fill, opacity)


def pebble(
    x: float, y: float, corners: list[tuple[float, float]], fill: Colour, opacity: float
) -> str:
    """One angular mark from its corners in polar form."""
    import math

    points = " ".join(
        f"{x + r * math.cos(angle):.2f},{y + r * math.sin(angle):.2f}" for r, angle in corners
    )
    return element("polygon", points=points, fill=hex_colour(fill), fill_opacity=opacity)


def foam(colour: Colour) -> Iterator[str]:
    """Fine bubbles of a mousse."""
    yield from dots(26, "foam-light", 0.35, 1.0, lighter(colour, 0.6), 0.7)
    yield from dots(16, "foam-dark", 0.3, 0.7, darker(colour, 0.3), 0.35)


def gel(colour: Colour) -> Iterator[str]:
    """Slanting gleams of a smooth gel or cream."""
    for place, length in ((3.0, 7.0), (15.0, 11.0), (27.0, 5.0)):
        for a, b in copies(place, (place * 2.3) % TILE, length):
            yield element(
                "path",
                d=f"M{a:.2f} {b:.2f}l{length:.2f} {-0.62 * length:.2f}",
                stroke=hex_colour(lighter(colour, 0.62)),
                stroke_width=1.1,
                stroke_linecap="round",
                stroke_opacity=0.6,
                fill="none",
            )


def crumb(colour: Colour) -> Iterator[str]:
    """Grains of a crust."""
    yield from pebbles(34, "crumb-dark", 1.15, darker(colour, 0.42), 0.6)
    yield from pebbles(22, "crumb-light", 1.0, lighter(colour, 0.5), 0.8)


def sponge(colour: Colour) -> Iterator[str]:
    """Open pores of a sponge."""
    yield from dots(16, "sponge-pore", 0.5, 1.9, darker(colour, 0.34), 0.55)
    yield from dots(12, "sponge-gleam", 0.3, 0.8, lighter(colour, 0.6), 0.8)


def rubble(colour: Colour) -> Iterator[str]:
    """Lumps of a crumble."""
    yield from pebbles(12, "rubble-shade", 3.6, darker(colour, 0.4), 0.75)
    yield from pebbles(12, "rubble-light", 2.9, lighter(colour, 0.25), 1.0)


MARKS = {"foam": foam, "gel": gel, "crumb": crumb, "sponge": sponge, "rubble": rubble}
