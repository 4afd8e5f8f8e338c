"""A mesh from an STL file, refused unless it bounds one body."""

from __future__ import annotations

import io
from typing import Any, Literal

import numpy as np

from entremetry.errors import OutsideRange
from entremetry.shapes.dimension import require_length
from entremetry.shapes.mesh import FLAT, MeshSolid
from entremetry.shapes.solid import Floats
from entremetry.words import say, say_as, say_later

MILLIMETRE = 0.001
MOST_BYTES = 64_000_000
MOST_FACES = 400_000
BINARY_HEAD = 84
BINARY_FACE = 50
Opening = Literal["top", "bottom"]


def mesh_from_stl(
    content: bytes, *, opening: Opening | None = None, unit: float = MILLIMETRE
) -> MeshSolid:
    """Return the body an STL file describes: the cavity itself, not the mould around it.

    Parameters
    ----------
    content : bytes
        The file, binary or text.
    opening : 'top' or 'bottom', optional
        Which end of the mesh is the opening; the end with the larger flat face unless told.
    unit : float
        Length of one unit of the file, for STL has none. [m]

    Raises
    ------
    OutsideRange
        If the content is no STL, the mesh is open, its faces point different ways, or it is
        more than one body. A mesh with all faces inward is turned right.
    """
    mesh = _loaded(content)
    _require_one_body(mesh)
    vertices, faces = np.array(mesh.vertices, dtype=float) * unit, np.array(mesh.faces)
    if mesh.volume < 0.0:
        faces = faces[:, ::-1]
    vertices = _lying_in_its_mould(vertices, vertices[faces], opening)
    return MeshSolid(vertices=vertices, faces=faces)


def _loaded(content: bytes) -> Any:
    """Return the mesh in a file, vertices merged."""
    import trimesh

    _require_stl(content)
    try:
        mesh = trimesh.load_mesh(io.BytesIO(content), file_type="stl")
        faces = len(mesh.faces)
    except Exception as error:
        raise OutsideRange(say("mesh: it cannot be read as STL ({error})", error=error)) from error
    if not 4 <= faces <= MOST_FACES or not np.all(np.isfinite(mesh.vertices)):
        accepted = say("4 to {most}, with finite corners", most=MOST_FACES)
        raise OutsideRange.of(say("mesh"), say("{number} faces", number=faces), accepted)
    return mesh


def _require_stl(content: bytes) -> None:
    """Raise OutsideRange unless the content has the length or the words of an STL file."""
    if len(content) > MOST_BYTES:
        accepted = say("up to {size}", size=_megabytes(MOST_BYTES))
        raise OutsideRange.of(say("mesh"), _megabytes(len(content)), accepted)
    told = int.from_bytes(content[80:BINARY_HEAD], "little")
    binary = len(content) == BINARY_HEAD + BINARY_FACE * told
    text = content.lstrip()[:5] == b"solid" and b"facet" in content[:2000]
    if not (binary or text):
        raise OutsideRange(say("mesh: this is no STL file; accepted: STL, binary or text"))


def _require_one_body(mesh: Any) -> None:
    """Raise OutsideRange unless the mesh is closed, of one piece, and turned one way."""
    if not mesh.is_watertight:
        raise OutsideRange(
            say(
                "mesh: its surface has holes; accepted: a closed mesh (close it in the program "
                "that drew it)"
            )
        )
    if not mesh.is_winding_consistent:
        raise OutsideRange(
            say(
                "mesh: some faces point inward, others outward; accepted: all outward (recalculate "
                "the normals in the program that drew it)"
            )
        )
    if mesh.body_count != 1:
        raise OutsideRange.of(
            say("mesh"), say("{number} bodies", number=mesh.body_count), say_as("of bodies", "one")
        )
    if not abs(mesh.volume) > 0.0:
        raise OutsideRange(say("mesh: it encloses no volume; accepted: a closed mesh"))


def _lying_in_its_mould(vertices: Floats, triangles: Floats, opening: Opening | None) -> Floats:
    """Centre the mesh, closed end down at level 0, its longer side along x."""
    low, high = vertices.min(axis=0), vertices.max(axis=0)
    length, width, height = (float(extent) for extent in high - low)
    require_length(say_later("length of the mesh"), length)
    require_length(say_later("width of the mesh"), width)
    require_length(say_later("height of the mesh"), height)
    if (opening or _flat_end(triangles, low[2], high[2])) == "bottom":
        vertices = vertices * (1.0, -1.0, -1.0)
        low, high = vertices.min(axis=0), vertices.max(axis=0)
    middle = (low + high) / 2.0
    vertices = vertices - (middle[0], middle[1], low[2])
    long, wide, _ = high - low
    if wide > long * (1.0 + 1e-6):
        vertices = np.column_stack([-vertices[:, 1], vertices[:, 0], vertices[:, 2]])
    return vertices


def _flat_end(triangles: Floats, low: float, high: float) -> Opening:
    """Say which end of a mesh has the larger flat face."""
    levels, near = triangles[:, :, 2], FLAT * (high - low)
    edges = triangles[:, 1:, :2] - triangles[:, :1, :2]
    areas = 0.5 * np.abs(edges[:, 0, 0] * edges[:, 1, 1] - edges[:, 0, 1] * edges[:, 1, 0])
    top = float(np.sum(areas[levels.min(axis=1) >= high - near]))
    bottom = float(np.sum(areas[levels.max(axis=1) <= low + near]))
    return "bottom" if bottom > top * (1.0 + 1e-6) else "top"


def _megabytes(size: int) -> str:
    return f"{size / 1e6:.0f} MB"
