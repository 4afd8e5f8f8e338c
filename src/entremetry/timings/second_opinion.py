"""What closed formulas make of a piece that is simple enough for them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surface import exchange
from entremetry.physics.freezing_time import (
    MINUS_TEN,
    Form,
    FreezingFood,
    cleland_earle_time,
    pham_time,
)
from entremetry.physics.heat_dimensions import heat_dimensions
from entremetry.physics.material import Material
from entremetry.physics.thawing_time import cleland_thawing_time
from entremetry.timings.half_outline import STRAIGHT, enclosed
from entremetry.timings.piece_body import PieceBody
from entremetry.timings.setting import Setting
from entremetry.timings.step_temperatures import Fact
from entremetry.words import say, say_later

EVEN = 1.5  # largest over smallest coefficient; with a shelf's, Pham's formula is 20 to 30 % short
LEFT = 0.3  # of the way from the freezing point to the air; closer to the air it is 20 % short
THAWED, NEARLY = 273.15, 0.5  # K, the one end of the thawing formula
COLDER = 5.0  # K from the cold end of the table, over which the frozen food's own heat is read
DIMENSIONS = {1.0: Form.SLAB, 2.0: Form.CYLINDER, 3.0: Form.SPHERE}
WORDS = say_later(
    "a closed formula for one body in even surroundings, within about 25 % for such a piece"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Simple:
    """A piece as a formula sees it; SI units."""

    food: FreezingFood
    dimensions: float
    half: float
    coefficient: float
    start: float
    air: float
    end: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Formula:
    """A formula for the time of a simple piece [s], its name and its source."""

    name: str
    time: Callable[[_Simple], float]
    source: str


def second_opinions(setting: Setting) -> tuple[tuple[Fact, str], ...]:
    """Times by formulas with their sources, each where piece, place and target lie in its range.

    Nothing for a piece of several materials, for what does not freeze, and for faces whose
    coefficients differ by more than half.
    """
    until = setting.stage.until
    return tuple(_opinions(setting, until)) if until else ()


def _opinions(setting: Setting, until: Target) -> Iterator[tuple[Fact, str]]:
    for formula in FREEZING if until.falling else THAWING:
        try:
            time = formula.time(_simple(setting, until))
        except OutsideRange:  # not a case for this formula
            continue
        fact = Fact(name=say(formula.name), value=time / 3600.0, unit="h", because=say(WORDS))
        yield fact, formula.source


def _pham(piece: _Simple) -> float:
    return pham_time(
        piece.dimensions,
        piece.half,
        piece.coefficient,
        piece.food,
        start=piece.start,
        air=piece.air,
        end=piece.end,
    )


def _cleland_earle(piece: _Simple) -> float:
    """By the form with the nearest number of dimensions, to which the time is inverse."""
    nearest = min(DIMENSIONS, key=lambda d: abs(d - piece.dimensions))
    time = cleland_earle_time(
        DIMENSIONS[nearest],
        piece.half,
        piece.coefficient,
        piece.food,
        start=piece.start,
        air=piece.air,
        end=piece.end,
    )
    return time * nearest / piece.dimensions


def _cleland_thawing(piece: _Simple) -> float:
    return cleland_thawing_time(
        piece.dimensions,
        piece.half,
        piece.coefficient,
        piece.food,
        start=piece.start,
        air=piece.air,
    )


FREEZING = (
    _Formula(name=say_later("time by Pham's formula"), time=_pham, source="pham_1986"),
    _Formula(
        name=say_later("time by Cleland and Earle's formula"),
        time=_cleland_earle,
        source="cleland_earle_1984",
    ),
)
THAWING = (
    _Formula(
        name=say_later("time by Cleland's formula"), time=_cleland_thawing, source="cleland_1986"
    ),
)


def _simple(setting: Setting, until: Target) -> _Simple:
    """The piece for a formula; OutsideRange if it is none for any."""
    piece, air = setting.piece, setting.place.temperature
    material = setting.materials[piece.components["body"]]
    start = setting.start["body"]
    if len(piece.components) > 1 or material.freezing_point is None:
        raise OutsideRange("a formula takes one material that freezes")
    food = _food(material, start, until)
    if until.falling and until.temperature - air < LEFT * (food.freezing_point - air):
        raise OutsideRange("too close to the air")
    half, section = _centre(piece)
    inward = half / (food.cold_conductivity if until.falling else food.warm_conductivity)
    coefficient = _coefficient(setting.stage, piece, food, inward)
    return _Simple(
        food=food,
        dimensions=heat_dimensions(half, section, piece.body.volume, coefficient * inward),
        half=half,
        coefficient=coefficient,
        start=start,
        air=air,
        end=until.temperature,
    )


def _food(material: Material, start: float, until: Target) -> FreezingFood:
    """Constants read off the material's table."""
    point, coldest = float(material.freezing_point or 0.0), material.lowest
    warm = start if until.falling else until.temperature
    if not (MINUS_TEN < point < warm and (until.falling or abs(warm - THAWED) <= NEARLY)):
        raise OutsideRange("not a freezing or a thaw that a formula is for")
    heat = {t: float(material.enthalpy(t)) for t in (coldest, MINUS_TEN, point, warm)}
    slope = (float(material.enthalpy(coldest + COLDER)) - heat[coldest]) / COLDER
    return FreezingFood(
        freezing_point=point,
        warm_heat=(heat[warm] - heat[point]) / (warm - point),
        cold_heat=slope,
        latent=heat[point] - heat[coldest] - slope * (point - coldest),
        heat_to_ten=heat[point] - heat[MINUS_TEN],
        warm_conductivity=float(material.conductivity(0.5 * (warm + point))),
        cold_conductivity=float(material.conductivity(min(until.temperature, MINUS_TEN))),
    )


def _coefficient(stage: Stage, piece: PieceBody, food: FreezingFood, inward: float) -> float:
    """Mean coefficient over all faces, walls included, with the skin on its mean way. [W/(m2 K)]"""
    areas = {face: piece.body.area(face) for face in stage.surroundings}
    air = next(iter(stage.surroundings.values())).temperature
    skin, mean = 0.5 * (food.freezing_point + air), 0.0
    for _ in range(3):
        found = {face: _through(stage, face, skin) for face in areas}
        if max(found.values()) > EVEN * min(found.values()):
            raise OutsideRange("its faces are not cooled evenly")
        mean = sum(areas[face] * found[face] for face in areas) / sum(areas.values())
        skin = air + (food.freezing_point - air) / (1.0 + 0.5 * mean * inward)
    return mean


def _through(stage: Stage, face: str, skin: float) -> float:
    """Coefficient from the food under a face to the air, for a skin of this temperature."""
    around, wall = stage.surroundings[face], stage.walls.get(face)
    film, felt = exchange(around.row(), skin)
    whole = film * (felt - skin) / (around.temperature - skin)
    layer = wall.contact + wall.thickness / wall.conductivity if wall else 0.0
    return float(1.0 / (1.0 / whole + around.contact + layer))


def _centre(piece: PieceBody) -> tuple[float, float]:
    """Way from the innermost place to the surface [m], and the smallest cut through there [m2]."""
    body, here, there = piece.body, piece.outline, np.roll(piece.outline, -1, axis=0)
    skin = np.maximum(here[:, 0], there[:, 0]) > STRAIGHT  # not the axis
    here, way = here[skin], (there - here)[skin]
    _, rows, columns = body.cells.shape
    levels = body.origin[1] + (np.arange(rows) + 0.5) * body.spacing[1]
    across = body.origin[2] + (np.arange(columns) + 0.5) * body.spacing[2]
    from_here = np.stack(np.meshgrid(across, levels), axis=-1)[:, :, None, :] - here
    along = np.clip(np.sum(from_here * way, axis=3) / np.sum(way**2, axis=1), 0.0, 1.0)
    gaps = np.linalg.norm(from_here - along[..., None] * way, axis=3).min(axis=2)
    volumes = body.volumes.sum(axis=0).reshape(rows, columns)
    gaps[volumes <= 0.0] = 0.0
    row, _ = np.unravel_index(int(gaps.argmax()), gaps.shape)
    level = float(volumes[row].sum()) / body.spacing[1]
    halves = 1.0 if piece.outline[:, 0].min() > STRAIGHT else 2.0  # a ring is cut at one side
    return float(gaps.max()), min(level, halves * enclosed(piece.outline))
