"""A base as a body."""

from __future__ import annotations

from entremetry.dessert.placement import BasePlacement, DiscCutOut
from entremetry.shapes import Box, Cylinder, Ring, Solid


def cut_out_solid(placement: BasePlacement) -> Solid:
    """A base as a solid of its thickness."""
    cut, thickness = placement.cut_out, placement.thickness
    if isinstance(cut, DiscCutOut):
        if cut.hole_diameter:
            return Ring(
                diameter=cut.diameter,
                hole_diameter=cut.hole_diameter,
                height=thickness,
                cross_section="flat",
            )
        return Cylinder(diameter=cut.diameter, height=thickness)
    return Box(length=cut.length, width=cut.width, height=thickness)
