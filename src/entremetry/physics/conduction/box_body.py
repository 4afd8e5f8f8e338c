"""Bodies with square corners: frames, bars, and pieces of them between planes of symmetry."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from entremetry.errors import FitError, OutsideRange
from entremetry.physics.arrays import Floats
from entremetry.physics.conduction.body import MOST_CELLS, Body, Skin, assemble
from entremetry.physics.conduction.contact import Contact
from entremetry.physics.material import Material

FACES = ("left", "right", "front", "back", "bottom", "top")
Triple = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A box-shaped region from its low to its high corner, (length, width, height). [m]"""

    name: str
    material: Material
    low: Triple
    high: Triple
    watched: bool = True


def box_body(
    size: Triple,
    material: Material,
    blocks: Sequence[Block] = (),
    spacing: float = 2.5e-3,
    contacts: Sequence[Contact] = (),
) -> Body:
    """Box of length, width and height, with blocks of other materials inside.

    Parameters
    ----------
    size : tuple of three floats
        Length, width, height; one may be thin. [m]
    material : Material
        Of everything that no block fills; it is the region called 'body'.
    blocks : sequence of Block
        Layers and inserts; they do not overlap.
    spacing : float
        Size of the cells. [m]
    contacts : sequence of Contact
        Resistances where two regions touch; all others touch perfectly.

    Returns
    -------
    Body
        Cells with the faces left, right, front, back, bottom and top.

    Raises
    ------
    FitError
        If a block is not inside, or two overlap.
    OutsideRange
        If a length is not positive or the cells are too many.
    UnknownName
        If a contact names no region.
    """
    if not all(0.0 < length < np.inf for length in (*size, spacing)):
        raise OutsideRange(f"size {size} m and spacing {spacing} m must be positive")
    counts = [max(1, round(length / spacing)) for length in size]
    if np.prod(np.array(counts, dtype=float)) > MOST_CELLS:
        raise OutsideRange(f"a spacing of {spacing} m makes more than {MOST_CELLS} cells")
    lines = [np.linspace(0.0, side, n + 1) for side, n in zip(size, counts, strict=True)]
    shape = (counts[0], counts[1], counts[2])
    gaps = (size[0] / counts[0], size[1] / counts[1], size[2] / counts[2])
    full = np.full(int(np.prod(counts)), gaps[0] * gaps[1] * gaps[2])
    return assemble(
        shape=shape,
        spacing=gaps,
        origin=(0.0, 0.0, 0.0),
        volumes=_painted(blocks, lines, size, full),
        full=full,
        links=_links(shape, gaps),
        skin=_skin(shape, gaps, lines),
        names=("body", *(block.name for block in blocks)),
        materials=(material, *(block.material for block in blocks)),
        watched=(True, *(block.watched for block in blocks)),
        faces=FACES,
        bends=dict.fromkeys(FACES, (0.0, 0.0)),
        contacts=contacts,
    )


def _painted(
    blocks: Sequence[Block], lines: Sequence[Floats], size: Triple, full: Floats
) -> Floats:
    volumes = [full.copy()]
    for block in blocks:
        shares = [_overlap(lines[a], block.low[a], block.high[a]) for a in range(3)]
        own = np.einsum("i,j,k->ijk", *shares).ravel()
        volumes.append(own)
        volumes[0] = volumes[0] - own
        meant = float(np.prod(np.subtract(block.high, block.low)))
        over = meant - own.sum() - np.minimum(volumes[0], 0.0).sum()
        if not (np.isfinite(meant) and meant > 0.0) or over > 1e-6 * meant:
            raise FitError(
                f"block {block.name} from {block.low} to {block.high} m does not lie inside the "
                f"body of {size} m, or overlaps another block",
                parts=(block.name, "body"),
                missing=max(0.0, *np.subtract(block.high, size), *np.negative(block.low)),
            )
    return np.maximum(np.array(volumes), 0.0)


def _overlap(lines: Floats, low: float, high: float) -> Floats:
    """Length that each cell of an axis shares with a span."""
    shared: Floats = np.minimum(lines[1:], high) - np.maximum(lines[:-1], low)
    return np.maximum(shared, 0.0)


def _links(shape: tuple[int, int, int], gaps: Triple) -> list[Floats]:
    links = []
    for axis in range(3):
        face = gaps[0] * gaps[1] * gaps[2] / gaps[axis] ** 2
        link = np.full(shape, face)
        link[(slice(None),) * axis + (-1,)] = 0.0
        links.append(link.ravel())
    return links


def _skin(shape: tuple[int, int, int], gaps: Triple, lines: Sequence[Floats]) -> Skin:
    numbers = np.arange(int(np.prod(shape))).reshape(shape)
    cells, faces, areas, normals, middles = [], [], [], [], []
    centres = [0.5 * (line[1:] + line[:-1]) for line in lines]
    for axis in range(3):
        for end, sign in ((0, -1.0), (-1, 1.0)):
            cell = numbers[(slice(None),) * axis + (end,)].ravel()
            normal = np.zeros((cell.size, 3))
            normal[:, axis] = sign
            places = np.unravel_index(cell, shape)
            middle = np.stack([centres[a][places[a]] for a in range(3)], axis=1)
            middle[:, axis] = lines[axis][end]
            cells.append(cell)
            faces.append(np.full(cell.size, 2 * axis + (0 if end == 0 else 1)))
            areas.append(np.full(cell.size, gaps[0] * gaps[1] * gaps[2] / gaps[axis]))
            normals.append(normal)
            middles.append(middle)
    return Skin(
        cell=np.concatenate(cells),
        face=np.concatenate(faces),
        area=np.concatenate(areas),
        normal=np.concatenate(normals),
        middle=np.concatenate(middles),
    )
