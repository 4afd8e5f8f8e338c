"""Layers, inserts and bases as regions of a piece's half section."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import permutations

import numpy as np

from entremetry.dessert.placed import Filled, Inclusion, Placed
from entremetry.errors import QuantityError
from entremetry.physics.conduction.contact import Contact
from entremetry.physics.conduction.outline import Region
from entremetry.physics.material import Material
from entremetry.shapes import Floats
from entremetry.timings.half_outline import Lie, between, half_wall, is_ring, mirrored
from entremetry.timings.mould_wall import LAID
from entremetry.words import say, say_as

THINNEST = 1e-6  # m: a slice thinner than this is no part
ON_EACH_OTHER = 1e-4  # m between two solids that nothing can flow in


def main_part(placed: Placed) -> Filled:
    """The soft part that the piece has most of.

    Raises
    ------
    QuantityError
        If there is none.
    """
    if not placed.filled:
        raise QuantityError(
            say("a piece without a soft part"), say("a filling or a layer in the mould")
        )
    return max(placed.filled, key=lambda part: part.volume)


def components_of(placed: Placed) -> tuple[str, ...]:
    """Components in a cavity, each once, from the closed end up."""
    soft = [part.component for part in placed.filled]
    return tuple(dict.fromkeys([*soft, *(part.component for part in placed.inclusions)]))


def regions(
    placed: Placed, materials: Mapping[str, Material], lie: Lie
) -> tuple[tuple[Region, ...], str]:
    """Every part but the main one, and what had to be left out.

    A section has room for one insert at each level, in the middle, and a ring only for rings.
    """
    kept, left_out = _kept(placed, lie)
    layers = [(part, _layer_name(placed, part)) for part in placed.filled]
    found = [
        Region(
            name=name,
            material=materials[part.component],
            points=between(placed.cavity, part.low, part.high, lie),
        )
        for part, name in layers
        if name is not None
    ]
    for number, inclusion in enumerate(kept):
        found += _slices(inclusion, number, layers, materials[inclusion.component], lie)
    names = tuple(dict.fromkeys(part.name for part in left_out))
    return tuple(found), _without(names)


def _without(names: Sequence[str]) -> str:
    """What is left out of the section, in words; nothing if that is nothing."""
    if not names:
        return ""
    joined = say_as("between two things", " and ").join(names)
    return say("{parts} left out, not being in the middle of it", parts=joined)


def contacts(placed: Placed, found: Sequence[Region], lie: Lie) -> tuple[Contact, ...]:
    """Air between solids that lie on each other; what is poured touches all of its neighbours."""
    kept, _ = _kept(placed, lie)
    return tuple(
        Contact(between=(below.name, above.name), resistance=LAID)
        for one, other in permutations(range(len(kept)), 2)
        if abs(kept[one].high - kept[other].low) < ON_EACH_OTHER
        for below in found
        for above in found
        if below.name.startswith(f"{kept[one].component}/{one}/")
        and above.name.startswith(f"{kept[other].component}/{other}/")
    )


def _layer_name(placed: Placed, part: Filled) -> str | None:
    """Name of a layer's region; the main part fills the body itself."""
    if part is main_part(placed):
        return None
    return f"{part.component}/{placed.filled.index(part)}"


def _kept(placed: Placed, lie: Lie) -> tuple[list[Inclusion], list[Inclusion]]:
    """Inclusions that the section can show, largest first, and the others."""
    kept: list[Inclusion] = []
    left_out: list[Inclusion] = []
    for part in sorted(placed.inclusions, key=lambda p: -p.solid.volume):
        beside = any(
            min(part.high, other.high) - max(part.low, other.low) > THINNEST for other in kept
        )
        inside = _in_the_section(part, placed, lie)
        (kept if inside and not beside else left_out).append(part)
    return kept, left_out


def _in_the_section(part: Inclusion, placed: Placed, lie: Lie) -> bool:
    """Whether the part lies in the material of the section: a disc does not in a ring's hole."""
    ring = is_ring(half_wall(placed.cavity, lie))
    return not ring or is_ring(half_wall(part.solid, lie))


def _slices(
    inclusion: Inclusion,
    number: int,
    layers: list[tuple[Filled, str | None]],
    material: Material,
    lie: Lie,
) -> Iterator[Region]:
    """An insert, cut where it passes from one layer into the next."""
    for part, inside in layers:
        low, high = max(inclusion.low, part.low), min(inclusion.high, part.high)
        if high - low > THINNEST:
            yield Region(
                name=f"{inclusion.component}/{number}/{inside or 'body'}",
                material=material,
                points=_in_place(inclusion, low, high, lie),
                inside=inside,
            )


def _in_place(inclusion: Inclusion, low: float, high: float, lie: Lie) -> Floats:
    """Half section of an insert between two levels of the cavity, where it lies."""
    solid = inclusion.solid
    if inclusion.turned:
        own = between(solid, inclusion.high - high, inclusion.high - low, lie)
        return mirrored(own, inclusion.high)
    own = between(solid, low - inclusion.low, high - inclusion.low, lie)
    return np.asarray(own + (0.0, inclusion.low))
