"""From a shape as written to the body it is."""

from __future__ import annotations

from collections.abc import Callable

from entremetry.kitchen.shape_document import (
    Box,
    Cap,
    Cone,
    Cylinder,
    Ellipsoid,
    Hemisphere,
    HoledRing,
    Log,
    Measured,
    Mesh,
    Prism,
    Profile,
    ShapeDocument,
    Sphere,
)
from entremetry.quantities import format_length, format_volume
from entremetry.shapes import Box as BoxSolid
from entremetry.shapes import Cylinder as CylinderSolid
from entremetry.shapes import (
    EllipsoidCap,
    Revolution,
    Ring,
    Solid,
    SphericalCap,
    TruncatedCone,
    hemisphere,
    measured_by_water,
    mesh_from_stl,
    prism_from_svg,
)
from entremetry.shapes import Log as LogSolid
from entremetry.shapes import Sphere as SphereSolid
from entremetry.words import say


def build(shape: ShapeDocument, *, read_mesh: Callable[[str], bytes]) -> Solid:
    """Make the body of a shape; `read_mesh` gives the bytes of an STL file by its name.

    Raises
    ------
    OutsideRange
        If the measures make no body.
    """
    if isinstance(shape, Measured):
        return measured_by_water(shape.holds, build(shape.like, read_mesh=read_mesh))
    if isinstance(shape, Mesh):
        return mesh_from_stl(read_mesh(shape.file))
    if isinstance(shape, Prism):
        return prism_from_svg(shape.outline, shape.height, shape.width)
    return _straight(shape) if isinstance(shape, Box | Log | HoledRing) else _round(shape)


def _round(shape: Hemisphere | Cap | Sphere | Cylinder | Cone | Ellipsoid | Profile) -> Solid:
    match shape:
        case Hemisphere():
            return hemisphere(shape.diameter)
        case Cap():
            return SphericalCap(diameter=shape.diameter, height=shape.height)
        case Sphere():
            return SphereSolid(diameter=shape.diameter)
        case Cylinder():
            return CylinderSolid(diameter=shape.diameter, height=shape.height)
        case Cone():
            return TruncatedCone(
                diameter=shape.diameter, base_diameter=shape.base_diameter, height=shape.height
            )
        case Ellipsoid():
            return EllipsoidCap(length=shape.length, width=shape.width, height=shape.height)
        case Profile():
            return Revolution(points=tuple((p.radius, p.level) for p in shape.points))


def _straight(shape: Box | Log | HoledRing) -> Solid:
    match shape:
        case Box():
            return BoxSolid(
                length=shape.length,
                width=shape.width,
                height=shape.height,
                corner_radius=shape.corner_radius,
                taper=shape.taper,
            )
        case Log():
            return LogSolid(
                length=shape.length,
                width=shape.width,
                height=shape.width / 2.0 if shape.height is None else shape.height,
                cross_section=shape.section,
                corner_radius=shape.corner_radius,
            )
        case HoledRing():
            band = (shape.diameter - shape.hole_diameter) / 2.0
            return Ring(
                diameter=shape.diameter,
                hole_diameter=shape.hole_diameter,
                height=band / 2.0 if shape.height is None else shape.height,
                cross_section=shape.section,
            )


def described(shape: ShapeDocument) -> str:
    """Size of a shape in the words of the trade: '70 mm across, 35 mm high'."""
    match shape:
        case Hemisphere() | Sphere():
            return say("{diameter} across", diameter=format_length(shape.diameter))
        case Cap() | Cylinder() | Cone():
            across, high = format_length(shape.diameter), format_length(shape.height)
            return say("{diameter} across, {height} high", diameter=across, height=high)
        case HoledRing():
            across, hole = format_length(shape.diameter), format_length(shape.hole_diameter)
            return say("{diameter} across with a hole of {hole}", diameter=across, hole=hole)
        case Box() | Ellipsoid():
            sides = f"{format_length(shape.length)} × {format_length(shape.width)}"
            return say("{sides}, {height} high", sides=sides, height=format_length(shape.height))
        case Log():
            long, wide = format_length(shape.length), format_length(shape.width)
            return say("{length} long, {width} wide", length=long, width=wide)
        case Measured():
            volume, like = format_volume(shape.holds), described(shape.like)
            return say("holds {volume} of water, {like} or like it", volume=volume, like=like)
        case Profile() | Prism() | Mesh():
            return _odd(shape)


def _odd(shape: Profile | Prism | Mesh) -> str:
    if isinstance(shape, Profile):
        widest = max(point.radius for point in shape.points)
        across = format_length(2.0 * widest)
        return say("{diameter} across, by a measured profile", diameter=across)
    if isinstance(shape, Prism):
        return say("{height} high over a drawn outline", height=format_length(shape.height))
    return say("as in {file}", file=shape.file)
