"""Bodies given by a section: turned around the axis, or drawn out straight."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from entremetry.errors import FitError, OutsideRange, UnknownName
from entremetry.physics.arrays import Floats, Integers
from entremetry.physics.conduction.body import MOST_CELLS, Body, Skin, assemble
from entremetry.physics.conduction.clip import cut_cells, cut_edges, volume_of
from entremetry.physics.conduction.contact import Contact
from entremetry.physics.conduction.outline import Outline, Region
from entremetry.physics.material import Material

BODY = "body"


def round_body(
    outline: Outline,
    material: Material,
    regions: Sequence[Region] = (),
    spacing: float = 1e-3,
    contacts: Sequence[Contact] = (),
) -> Body:
    """Body of revolution around the vertical axis.

    Parameters
    ----------
    outline : Outline
        Section from the axis outward: (radius, level), radius not negative. [m]
    material : Material
        Of everything that no region fills; it is the region called 'body'.
    regions : sequence of Region
        Inserts, layers, bases: each wholly inside the body or the region it names.
    spacing : float
        Size of the cells. [m]
    contacts : sequence of Contact
        Resistances where two regions touch; all others touch perfectly.

    Returns
    -------
    Body
        Cells with the true volume and the true surface.

    Raises
    ------
    FitError
        If a region is not inside, or two overlap.
    OutsideRange
        If the spacing is not positive, the cells are too many or a radius is negative.
    UnknownName
        If a contact names no region.
    """
    if float(outline.points[:, 0].min()) < -1e-9:
        raise OutsideRange("a round body's outline lies at radii of 0 or more")
    return _section_body(outline, material, regions, spacing, contacts, None)


def plane_body(
    outline: Outline,
    material: Material,
    regions: Sequence[Region] = (),
    spacing: float = 1e-3,
    contacts: Sequence[Contact] = (),
    depth: float = 1.0,
) -> Body:
    """Straight body of one section (a log) whose ends do not count; else as `round_body`.

    `depth` is the length that volumes, areas and heats are given for. [m]
    """
    if not 0.0 < depth < np.inf:
        raise OutsideRange(f"a depth of {depth} m is not positive")
    return _section_body(outline, material, regions, spacing, contacts, depth)


def _section_body(
    outline: Outline,
    material: Material,
    regions: Sequence[Region],
    spacing: float,
    contacts: Sequence[Contact],
    depth: float | None,
) -> Body:
    outline = outline.anticlockwise
    across, levels = _grid(outline.points, spacing)
    outline = Outline(_snapped(outline.points, across, levels), outline.faces)
    turned = depth is None
    scale = 1.0 if depth is None else depth
    whole, sides = cut_cells(outline.points, across, levels, turned)
    volumes = scale * _painted(regions, across, levels, turned, whole)
    edges, made = cut_edges(outline.points, across, levels, turned)
    faces = tuple(dict.fromkeys(outline.faces))
    places = [faces.index(face) for face in outline.faces]
    dx, dz = float(across[1] - across[0]), float(levels[1] - levels[0])
    radius = 0.5 * (across[1:] + across[:-1])
    full = np.broadcast_to(2.0 * np.pi * radius if turned else np.ones_like(radius), whole.shape)
    middles = [region.material for region in regions]
    return assemble(
        shape=(1, levels.size - 1, across.size - 1),
        spacing=(1.0, dz, dx),
        origin=(0.0, float(levels[0]), float(across[0])),
        volumes=volumes,
        full=(scale * dx * dz * full).ravel(),
        links=_links(sides, dx, dz, scale),
        skin=_skin(edges[:made], np.array(places, dtype=np.int64), across.size - 1, scale),
        names=(BODY, *(region.name for region in regions)),
        materials=(material, *middles),
        watched=(True, *(region.watched for region in regions)),
        faces=faces,
        bends=_bends(outline, faces, turned),
        axis_at_origin=turned and float(across[0]) == 0.0,
        contacts=contacts,
    )


def _grid(points: Floats, spacing: float) -> tuple[Floats, Floats]:
    """Grid lines across and up, fitted to the outline's extent."""
    low, high = points.min(axis=0), points.max(axis=0)
    if not 0.0 < spacing < np.inf:
        raise OutsideRange(f"a spacing of {spacing} m is not positive")
    counts = np.maximum(np.round((high - low) / spacing), 1.0)
    if counts[0] * counts[1] > MOST_CELLS:
        raise OutsideRange(f"a spacing of {spacing} m makes more than {MOST_CELLS} cells")
    low[0] = 0.0 if abs(low[0]) < 1e-9 else low[0]
    return (
        np.linspace(low[0], high[0], int(counts[0]) + 1),
        np.linspace(low[1], high[1], int(counts[1]) + 1),
    )


def _snapped(points: Floats, across: Floats, levels: Floats) -> Floats:
    """Points within a hair of a grid line are put on it, so that no sliver is cut."""
    moved = points.copy()
    for axis, lines in enumerate((across, levels)):
        gap = lines[1] - lines[0]
        near = np.clip(np.round((moved[:, axis] - lines[0]) / gap), 0, lines.size - 1).astype(int)
        close = np.abs(moved[:, axis] - lines[near]) < 1e-7 * gap
        moved[:, axis] = np.where(close, lines[near], moved[:, axis])
    return moved


def _painted(
    regions: Sequence[Region], across: Floats, levels: Floats, turned: bool, whole: Floats
) -> Floats:
    """Volume of the body's own material and of each region, per cell."""
    names = [BODY, *(region.name for region in regions)]
    volumes = [whole.ravel()]
    for number, region in enumerate(regions, start=1):
        if region.inside is not None and region.inside not in names[:number]:
            raise UnknownName("region before it", region.inside, names[:number])
        parent = names.index(region.inside or BODY)
        own = Outline(region.points, ("",) * len(region.points)).anticlockwise
        points = _snapped(own.points, across, levels)
        volumes.append(cut_cells(points, across, levels, turned)[0].ravel())
        volumes[parent] = volumes[parent] - volumes[number]
        meant = volume_of(points, len(points), turned)
        over = meant - volumes[number].sum() - np.minimum(volumes[parent], 0.0).sum()
        if over > 1e-6 * meant:
            raise FitError(
                f"region {region.name} does not lie inside {names[parent]}: "
                f"{over / meant:.1%} of it is outside or taken by another region",
                parts=(region.name, names[parent]),
                missing=float(over / meant * np.ptp(points[:, 1])),
            )
    return np.maximum(np.array(volumes), 0.0)


def _links(sides: Floats, dx: float, dz: float, scale: float) -> list[Floats]:
    """Open area over distance to the next cell: none, upward, across."""
    rows, columns = sides.shape[:2]
    across = np.zeros((rows, columns))
    upward = np.zeros((rows, columns))
    across[:, :-1] = np.minimum(sides[:, :-1, 1], sides[:, 1:, 0]) / dx
    upward[:-1, :] = np.minimum(sides[:-1, :, 3], sides[1:, :, 2]) / dz
    return [np.zeros(rows * columns), scale * upward.ravel(), scale * across.ravel()]


def _skin(edges: Floats, faces: Integers, columns: int, scale: float) -> Skin:
    """Pieces of the outline as pieces of skin; axes are (none, up, across)."""
    nought = np.zeros(len(edges))
    whole = edges[:, :3].astype(np.int64)
    return Skin(
        cell=whole[:, 1] * columns + whole[:, 2],
        face=faces[whole[:, 0]],
        area=scale * edges[:, 3],
        normal=np.column_stack([nought, edges[:, 5], edges[:, 4]]),
        middle=np.column_stack([nought, edges[:, 7], edges[:, 6]]),
    )


def _bends(
    outline: Outline, faces: Sequence[str], turned: bool
) -> Mapping[str, tuple[float, float]]:
    """How the area of each face grows with a layer on it, by two offsets of its edges."""
    probe = 1e-4 * float(np.ptp(outline.points))
    once, twice = (_offset_areas(outline, faces, turned, way) for way in (probe, 2.0 * probe))
    bends = {}
    for face in faces:
        second = (twice[face] - 2.0 * once[face]) / (2.0 * probe**2)
        bends[face] = (once[face] / probe - second * probe, second)
    return bends


def _offset_areas(
    outline: Outline, faces: Sequence[str], turned: bool, way: float
) -> Mapping[str, float]:
    """Relative growth of each face's area when it is moved outward by `way`, inside one face."""
    points, names = outline.points, np.array(outline.faces)
    steps = np.roll(points, -1, axis=0) - points
    lengths = np.hypot(steps[:, 0], steps[:, 1])
    normals = np.column_stack([steps[:, 1], -steps[:, 0]]) / lengths[:, None]
    before = np.roll(np.arange(len(points)), 1)
    smooth = (names == names[before]) & (np.einsum("ij,ij->i", normals, normals[before]) > 0.7)
    begin = _moved(points, normals, np.where(smooth, before, np.arange(len(points))), way)
    after = np.roll(np.arange(len(points)), -1)
    end = _moved(
        points[after], normals, np.where(smooth[after], after, np.arange(len(points))), way
    )
    old, new = _swept(points, points[after], turned), _swept(begin, end, turned)
    growth = {}
    for face in faces:
        area = float(old[names == face].sum())
        growth[face] = float(new[names == face].sum()) / area - 1.0 if area > 0.0 else 0.0
    return growth


def _moved(points: Floats, normals: Floats, beside: Integers, way: float) -> Floats:
    """Corner points moved outward along the mean of both edges' normals, to full distance."""
    mean = normals + normals[beside]
    return np.asarray(points + 2.0 * way * mean / np.sum(mean**2, axis=1)[:, None])


def _swept(begin: Floats, end: Floats, turned: bool) -> Floats:
    """Length of edges, or the area they sweep around the axis."""
    length = np.hypot(*(end - begin).T)
    if not turned:
        return np.asarray(length)
    return np.asarray(np.pi * np.abs(begin[:, 0] + end[:, 0]) * length)
