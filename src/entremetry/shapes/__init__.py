"""Bodies: moulds, inserts and cut-outs; their volumes, areas, sections and nesting."""

from entremetry.shapes.box import Box
from entremetry.shapes.cap import Sphere, SphericalCap, cap_of_sphere, hemisphere
from entremetry.shapes.cone import Cylinder, TruncatedCone
from entremetry.shapes.cutting import (
    Cutting,
    bars_in_frame,
    discs_in_rectangle,
    rectangles_in_rectangle,
)
from entremetry.shapes.ellipsoid import EllipsoidCap, cap_of_ellipsoid
from entremetry.shapes.log import Log
from entremetry.shapes.measured import measured_by_water
from entremetry.shapes.mesh import MeshSolid
from entremetry.shapes.nesting import (
    WallThickness,
    gap_between,
    placed_section,
    thinnest_wall,
    volume_within,
)
from entremetry.shapes.prism import Prism, regular_prism
from entremetry.shapes.revolution import Revolution, revolution_from_table
from entremetry.shapes.ring import Ring, half_torus
from entremetry.shapes.solid import Floats, Solid
from entremetry.shapes.stl import mesh_from_stl
from entremetry.shapes.svg import prism_from_svg

__all__ = [
    "Box",
    "Cutting",
    "Cylinder",
    "EllipsoidCap",
    "Floats",
    "Log",
    "MeshSolid",
    "Prism",
    "Revolution",
    "Ring",
    "Solid",
    "Sphere",
    "SphericalCap",
    "TruncatedCone",
    "WallThickness",
    "bars_in_frame",
    "cap_of_ellipsoid",
    "cap_of_sphere",
    "discs_in_rectangle",
    "gap_between",
    "half_torus",
    "hemisphere",
    "measured_by_water",
    "mesh_from_stl",
    "placed_section",
    "prism_from_svg",
    "rectangles_in_rectangle",
    "regular_prism",
    "revolution_from_table",
    "thinnest_wall",
    "volume_within",
]
