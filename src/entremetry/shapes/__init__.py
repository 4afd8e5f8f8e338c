"""Bodies: moulds, inserts and cut-outs; their volumes, areas, sections and nesting."""

from entremetry.shapes.box import Box
from entremetry.shapes.cap import Sphere, SphericalCap, cap_of_sphere, hemisphere
from entremetry.shapes.cone import Cylinder, TruncatedCone
from entremetry.shapes.log import Log
from entremetry.shapes.ring import Ring, half_torus
from entremetry.shapes.solid import Floats, Solid

__all__ = [
    "Box",
    "Cylinder",
    "Floats",
    "Log",
    "Ring",
    "Solid",
    "Sphere",
    "SphericalCap",
    "TruncatedCone",
    "cap_of_sphere",
    "half_torus",
    "hemisphere",
]
