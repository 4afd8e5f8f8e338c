"""Resistance where two regions of a body touch: an air gap, a base laid on something set."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeVar

import numpy as np
from numpy.typing import NDArray

from entremetry.errors import OutsideRange, UnknownName
from entremetry.physics.arrays import Flags, Floats, Integers

Number = TypeVar("Number", np.float64, np.int64, np.bool_)
LEVEL = 0.05  # the least part of a normal along an axis; what leans less lets next to no heat by


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Resistance between two regions, named in either order. [m2 K/W]

    A gap of still air has its thickness over 0.024 W/(m K); nought is a perfect contact, which
    all regions have that are not named.
    """

    between: tuple[str, str]
    resistance: float

    def __post_init__(self) -> None:
        if not 0.0 <= self.resistance < np.inf:
            raise OutsideRange(f"a contact resistance of {self.resistance} m2 K/W is not positive")
        if self.between[0] == self.between[1]:
            raise OutsideRange(
                f"a contact is between two regions, not {self.between[0]} and itself"
            )


class Resisted(NamedTuple):
    """Faces with a resistance: cell before each, axis towards the next, and the number. [K/W]"""

    cell: Integers
    axis: Integers
    resistance: Floats


def resisted(
    contacts: Sequence[Contact],
    names: Sequence[str],
    volumes: Floats,
    links: Sequence[Floats],
    shape: tuple[int, int, int],
    spacing: tuple[float, float, float],
) -> Resisted:
    """Faces between the cells of two regions that have a resistance between them.

    A cell belongs to the region that it holds most of. Where a boundary leans, these faces are
    its stairs; each has the resistance over the normal's part along its axis, and so the stairs
    pass what the smooth boundary would. `volumes` is (regions, cells), `links` are area over
    distance to the next cell along each axis.
    """
    found = [
        part
        for contact in contacts
        if contact.resistance > 0.0
        for part in _faces(contact, names, volumes, links, shape, spacing)
    ]
    none = np.zeros(0, dtype=np.int64)
    cells = [none, *(part.cell for part in found)]
    axes = [none, *(part.axis for part in found)]
    numbers = [np.zeros(0), *(part.resistance for part in found)]
    return Resisted(np.concatenate(cells), np.concatenate(axes), np.concatenate(numbers))


def _faces(
    contact: Contact,
    names: Sequence[str],
    volumes: Floats,
    links: Sequence[Floats],
    shape: tuple[int, int, int],
    spacing: tuple[float, float, float],
) -> Iterator[Resisted]:
    one, other = (_number(names, name) for name in contact.between)
    whole = volumes.sum(axis=0)
    owner = np.where(whole > 0.0, volumes.argmax(axis=0), -1).reshape(shape)
    seen = (whole > 0.0).reshape(shape)
    share = (volumes[one] - volumes[other]).reshape(shape) / np.where(seen, whole.reshape(shape), 1)
    slopes = _slopes(_smoothed(share, seen), seen, spacing)
    for axis in range(3):
        here, there = _pairs(owner, axis)
        touch = ((here == one) & (there == other)) | ((here == other) & (there == one))
        link = _pairs(links[axis].reshape(shape), axis)[0]
        touch &= link > 0.0
        slant = np.array([np.add(*_pairs(slope, axis))[touch] for slope in slopes])
        part = np.abs(slant[axis]) / np.linalg.norm(slant, axis=0)
        cells = _pairs(np.arange(owner.size).reshape(shape), axis)[0][touch]
        area = link[touch] * spacing[axis]
        yield Resisted(
            cell=cells,
            axis=np.full(cells.size, axis),
            resistance=contact.resistance / (area * np.maximum(part, LEVEL)),
        )


def _number(names: Sequence[str], name: str) -> int:
    if name not in names:
        raise UnknownName("region", name, names)
    return list(names).index(name)


def _pairs(values: NDArray[Number], axis: int) -> tuple[NDArray[Number], NDArray[Number]]:
    """Values of the cells before and behind each face along an axis."""
    ahead = [slice(None)] * 3
    behind = [slice(None)] * 3
    ahead[axis], behind[axis] = slice(None, -1), slice(1, None)
    return values[tuple(ahead)], values[tuple(behind)]


def _smoothed(values: Floats, seen: Flags) -> Floats:
    """Weighted 1-2-1 along each axis over the filled cells, for a normal without stairs."""
    total, weight = np.where(seen, values, 0.0), seen.astype(float)
    for axis in range(3):
        total, weight = _blurred(total, axis), _blurred(weight, axis)
    return np.asarray(total / np.maximum(weight, 1.0))


def _blurred(values: Floats, axis: int) -> Floats:
    out = 2.0 * values
    low, high = _pairs(out, axis)
    before, after = _pairs(values, axis)
    low += after
    high += before
    return out


def _slopes(values: Floats, seen: Flags, spacing: tuple[float, float, float]) -> list[Floats]:
    """Gradient along each axis, one-sided beside cells that are not filled."""
    slopes = []
    for axis in range(3):
        before, after = _pairs(values, axis)
        both = np.logical_and(*_pairs(seen, axis))
        step = np.where(both, after - before, 0.0) / spacing[axis]
        total, count = np.zeros_like(values), np.zeros_like(values)
        for part in _pairs(total, axis):
            part += step
        for part in _pairs(count, axis):
            part += both
        slopes.append(total / np.maximum(count, 1.0))
    return slopes
