"""Moulds to choose from, with a small picture of each."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from markupsafe import Markup

from entremetry.kitchen.mould import Mould
from entremetry.shapes import Floats, Log
from entremetry.usecases.batch import moulds
from entremetry.web.speech import kept_by_language
from entremetry.words import say

WIDTH = 100.0
HEIGHT = 56.0
MARGIN = 3.0
MOST_POINTS = 64
LARGEST_PORTION = 250e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class MouldTile:
    """One mould as the chooser shows it. Volume in m3."""

    id: str
    name: str
    size: str
    volume: float
    cavities: int
    picture: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class MouldGroup:
    """Moulds that are used alike."""

    name: str
    moulds: tuple[MouldTile, ...]


@kept_by_language(8)
def mould_groups(kitchen_text: str | None) -> tuple[MouldGroup, ...]:
    """Moulds and vessels of the kitchen and the built-in shelf."""
    every = moulds(kitchen_text)
    groups = (
        MouldGroup(name=say("Small moulds, one piece each"), moulds=_tiles(every, _is_small)),
        MouldGroup(name=say("Large moulds"), moulds=_tiles(every, _is_large)),
        MouldGroup(
            name=say("Glasses and dishes"), moulds=_tiles(every, lambda mould: mould.vessel)
        ),
    )
    return tuple(group for group in groups if group.moulds)


def tile_of(kitchen_text: str | None, mould_id: str) -> MouldTile | None:
    """Tile of one mould, if there is such a mould."""
    tiles = (tile for group in mould_groups(kitchen_text) for tile in group.moulds)
    return next((tile for tile in tiles if tile.id == mould_id), None)


def picture(mould: Mould, share: float = 1.0) -> Markup:
    """Section of a mould as what is made in it will stand, filling a share of the tile."""
    outlines = [_upright(outline, mould) for outline in _telling_section(mould)]
    points = np.concatenate(outlines)
    low, high = points.min(axis=0), points.max(axis=0)
    scale = share / _extent(mould)
    middle = (low[0] + high[0]) / 2
    placed = (
        np.column_stack(
            (
                WIDTH / 2 + (outline[:, 0] - middle) * scale,
                HEIGHT - MARGIN - (outline[:, 1] - low[1]) * scale,
            )
        )
        for outline in outlines
    )
    return Markup(
        '<svg viewBox="0 0 {} {}" aria-hidden="true" focusable="false">'
        '<path class="mould-cavity" d="{}"/></svg>'
    ).format(f"{WIDTH:g}", f"{HEIGHT:g}", " ".join(_path(outline) for outline in placed))


def _extent(mould: Mould) -> float:
    """How much mould there is for each unit of the tile, by what is tightest. [m]"""
    points = np.concatenate(_telling_section(mould))
    width, height = points.max(axis=0) - points.min(axis=0)
    return float(max(width / (WIDTH - 2 * MARGIN), height / (HEIGHT - 2 * MARGIN)))


def _tiles(every: Sequence[Mould], wanted: Callable[[Mould], bool]) -> tuple[MouldTile, ...]:
    chosen = [mould for mould in every if wanted(mould)]
    largest = max((_extent(mould) for mould in chosen), default=1.0)
    return tuple(_tile(mould, (_extent(mould) / largest) ** 0.5) for mould in chosen)


def _tile(mould: Mould, share: float) -> MouldTile:
    return MouldTile(
        id=mould.id,
        name=mould.name,
        size=mould.size,
        volume=mould.solid.volume,
        cavities=mould.cavities,
        picture=picture(mould, share),
    )


def _is_small(mould: Mould) -> bool:
    return not mould.vessel and mould.solid.volume <= LARGEST_PORTION


def _is_large(mould: Mould) -> bool:
    return not mould.vessel and mould.solid.volume > LARGEST_PORTION


def _upright(outline: Floats, mould: Mould) -> Floats:
    thinned = outline[:: max(1, len(outline) // MOST_POINTS)]
    if not mould.fills_upside_down:
        return thinned
    return np.column_stack((thinned[:, 0], mould.solid.height - thinned[:, 1]))


def _path(points: Floats) -> str:
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z"


def _telling_section(mould: Mould) -> tuple[Floats, ...]:
    """The section that shows what a mould is: of a log the one across its length."""
    solid = mould.solid
    return solid.cross_outline() if isinstance(solid, Log) else solid.section()
