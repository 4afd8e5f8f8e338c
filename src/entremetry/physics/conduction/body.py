"""A body cut into cells: what the section and the box builders make, and what a run needs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from entremetry.errors import OutsideRange, UnknownName
from entremetry.physics.arrays import Flags, Floats, Integers
from entremetry.physics.conduction.blend import pure_or_mixed, stack
from entremetry.physics.conduction.cells import Cells, Tables
from entremetry.physics.conduction.contact import Contact, resisted
from entremetry.physics.material import Material

Number = TypeVar("Number", np.float64, np.int64)
MOST_CELLS = 2_000_000
SMALLEST = 0.02
"""Cells filled less than this are joined to a neighbour."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin:
    """Pieces of the surface, one per cell and face. Normals have three parts, outward."""

    cell: Integers
    face: Integers
    area: Floats  # m2
    normal: Floats  # (pieces, 3)
    middle: Floats  # (pieces, 3) [m]


@dataclass(frozen=True, slots=True, kw_only=True, repr=False)
class Body:
    """Cells, tables and surface of a body, with the names that its runs speak of."""

    cells: Cells
    tables: Tables
    skin: Skin
    faces: tuple[str, ...]
    regions: tuple[str, ...]
    materials: tuple[Material, ...]
    volumes: Floats  # (regions, cells of the box) [m3]
    spacing: tuple[float, float, float]
    origin: tuple[float, float, float]  # low corner of the box of cells
    distance: Floats  # of each piece of skin from its cell's centre, signed [m]
    axis_at_origin: bool = False  # a round body that reaches its axis
    bends: Mapping[str, tuple[float, float]]  # of each face: area of its offset, see `spread`
    shares: Floats  # (3, pieces): squares of the normals' parts, adding up to one

    def __repr__(self) -> str:
        filled = int((self.cells.volume > 0.0).sum())
        return f"Body of {filled} cells: {', '.join(self.regions)}; {', '.join(self.faces)}"

    @property
    def volume(self) -> float:
        """Volume of the whole body; of a plane one, of its depth. [m3]"""
        return float(self.cells.volume.sum())

    def area(self, face: str) -> float:
        """Area of a face. [m2]"""
        return float(self.skin.area[self.skin.face == self.face_number(face)].sum())

    def face_number(self, face: str) -> int:
        """Place of a face among the faces; UnknownName with the nearest if there is none."""
        if face not in self.faces:
            raise UnknownName("face", face, self.faces)
        return self.faces.index(face)

    def region_number(self, region: str) -> int:
        """Place of a region among the regions; UnknownName with the nearest if there is none."""
        if region not in self.regions:
            raise UnknownName("region", region, self.regions)
        return self.regions.index(region)

    def spread(self, face: str, thickness: float) -> float:
        """Outer area of a layer of this thickness on a face, over the area of the face."""
        if not 0.0 <= thickness < 1e3:
            raise OutsideRange(f"a layer of {thickness} m on a face is none")
        first, second = self.bends[face]
        return max(1.0 + first * thickness + second * thickness**2, 0.1)


def assemble(
    *,
    shape: tuple[int, int, int],
    spacing: tuple[float, float, float],
    origin: tuple[float, float, float],
    volumes: Floats,
    full: Floats,
    links: Sequence[Floats],
    skin: Skin,
    names: Sequence[str],
    materials: Sequence[Material],
    watched: Sequence[bool],
    faces: Sequence[str],
    bends: Mapping[str, tuple[float, float]],
    axis_at_origin: bool = False,
    contacts: Sequence[Contact] = (),
) -> Body:
    """Join small cells to their neighbours, table the mixed ones and lay all in flat arrays.

    `volumes` is (regions, cells); `full` the volume of each whole cell; `links` are area over
    distance to the next cell along each axis.
    """
    volumes, cell = _joined(shape, volumes, full, links, skin)
    table, mixtures = pure_or_mixed(volumes)
    solid = shape[0] > 1 or bool(np.any(skin.normal[:, 0] != 0.0))
    pad = shape[1] * shape[2] if solid else shape[2]
    total = volumes.sum(axis=0)
    if not np.any(total > 0.0):
        raise OutsideRange("the body has no volume at this spacing")
    seen = volumes[np.array(watched, dtype=bool)].sum(axis=0)
    tables = stack(materials, mixtures)
    gaps = resisted(contacts, names, volumes, links, shape, spacing)
    inverse = np.where(total > 0.0, 1.0 / np.where(total > 0.0, total, 1.0), 0.0)
    cells = Cells(
        shape=shape,
        pad=pad,
        volume=_padded(total, pad),
        bulk=_padded(np.where(total > 0.0, total, full), pad, 1.0),
        table=_padded(table, pad),
        gain=_padded(inverse * tables.inverse_step[table], pad),
        shift=_padded((tables.start * tables.inverse_step)[table], pad),
        end=_padded(tables.last[table].astype(np.float64), pad),
        offset=_padded((tables.offset[table] + table + 1).astype(np.float64), pad),
        link0=_padded(links[0], pad),
        link1=_padded(links[1], pad),
        link2=_padded(links[2], pad),
        same0=_same(table, shape[1] * shape[2], pad),
        same1=_same(table, shape[2], pad),
        same2=_same(table, 1, pad),
        resisted=gaps.cell + pad,
        resisted_axis=gaps.axis,
        resistance=gaps.resistance,
        watched=_padded(np.where(seen > 0.5 * total, seen, 0.0), pad),
    )
    somewhere = np.maximum(cell, 0)  # skin without a cell is dropped by `_patched`
    places = np.stack(np.unravel_index(somewhere, shape), axis=1)
    centres = np.array(origin) + (places + 0.5) * np.array(spacing)
    merged, distance = _patched(skin, cell, centres)
    squares = merged.normal**2 / np.sum(merged.normal**2, axis=1)[:, None]
    return Body(
        cells=cells,
        tables=tables,
        skin=merged,
        faces=tuple(faces),
        regions=tuple(names),
        materials=tuple(materials),
        volumes=volumes,
        spacing=spacing,
        origin=origin,
        distance=distance,
        axis_at_origin=axis_at_origin,
        bends=bends,
        shares=np.ascontiguousarray(squares.T),
    )


def _padded(values: NDArray[Number], pad: int, fill: float = 0.0) -> NDArray[Number]:
    """The same values with a margin before and behind."""
    whole = np.full(values.size + 2 * pad, fill, dtype=values.dtype)
    whole[pad : pad + values.size] = values
    return whole


def _same(table: Integers, stride: int, pad: int) -> Flags:
    """Whether each cell and the one a stride further share their table."""
    same = np.zeros(table.size + 2 * pad, dtype=bool)
    same[pad : pad + table.size - stride] = table[stride:] == table[:-stride]
    return same


def _joined(
    shape: tuple[int, int, int],
    volumes: Floats,
    full: Floats,
    links: Sequence[Floats],
    skin: Skin,
) -> tuple[Floats, Integers]:
    """Volumes after joining, and the cell that each piece of skin now belongs to; shuts links."""
    volumes = volumes.copy()
    total = volumes.sum(axis=0)
    cell = skin.cell.copy()
    strides = (shape[1] * shape[2], shape[2], 1)
    for small in np.flatnonzero((total < SMALLEST * full) & (total > 0.0)):
        target = _neighbour(int(small), total, full, links, strides)
        if target >= 0:
            volumes[:, target] += volumes[:, small]
            cell[cell == small] = target
        volumes[:, small] = 0.0
    gone = volumes.sum(axis=0) == 0.0
    for link, stride in zip(links, strides, strict=True):
        link[gone] = 0.0
        link[: link.size - stride][gone[stride:]] = 0.0
    return volumes, _rehomed(cell, gone, strides)


def _neighbour(
    small: int,
    total: Floats,
    full: Floats,
    links: Sequence[Floats],
    strides: tuple[int, int, int],
) -> int:
    """The neighbour over the widest open face that is itself large enough, or -1."""
    best, widest = -1, 0.0
    for link, stride in zip(links, strides, strict=True):
        for other, face in ((small + stride, small), (small - stride, small - stride)):
            inside = 0 <= other < total.size and face >= 0
            if inside and total[other] >= SMALLEST * full[other] and link[face] > widest:
                best, widest = other, float(link[face])
    return best


def _rehomed(cell: Integers, gone: Floats, strides: tuple[int, int, int]) -> Integers:
    """Give skin that lies on an empty cell to a filled neighbour, if there is one."""
    homes = cell.copy()
    for piece in np.flatnonzero(gone[cell]):
        around = [cell[piece] + way * stride for stride in strides for way in (1, -1)]
        filled = [c for c in around if 0 <= c < gone.size and not gone[c]]
        homes[piece] = filled[0] if filled else -1
    return homes


def _patched(skin: Skin, cell: Integers, centres: Floats) -> tuple[Skin, Floats]:
    """Join pieces of one face in one cell; their signed distances, weighted by area."""
    apart = np.einsum("ij,ij->i", skin.middle - centres, skin.normal)
    keep = (cell >= 0) & (skin.area > 0.0)
    key = cell * (skin.face.max() + 1) + skin.face
    _, first, group = np.unique(key[keep], return_index=True, return_inverse=True)
    count = first.size

    def gathered(values: Floats) -> Floats:
        weighted = skin.area[keep] * values[keep]
        return np.asarray(np.bincount(group, weighted, minlength=count) / area, dtype=np.float64)

    area = np.asarray(np.bincount(group, skin.area[keep], minlength=count), dtype=np.float64)
    normal = np.stack([gathered(skin.normal[:, a] ** 2) for a in range(3)], axis=1)
    middle = np.stack([gathered(skin.middle[:, a]) for a in range(3)], axis=1)
    patches = Skin(
        cell=cell[keep][first],
        face=skin.face[keep][first],
        area=area,
        normal=np.sqrt(normal),
        middle=middle,
    )
    return patches, gathered(apart)
