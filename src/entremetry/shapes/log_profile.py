"""Half cross-sections of logs."""

from __future__ import annotations

from entremetry.shapes.dimension import millimetres, refuse, require_between
from entremetry.shapes.piece import Arc, Piece, Segment
from entremetry.shapes.profile import Profile
from entremetry.words import say, say_later

ROUNDING = 1.0 + 1e-12


def half_round(width: float, height: float) -> Profile:
    """Return half a circle as wide as the log, with upright walls above it if higher."""
    half = width / 2.0
    if height * ROUNDING < half:
        accepted = say(
            "at least {half}, half the width; a lower log is '{kind}'",
            half=millimetres(half),
            kind="round-topped",
        )
        raise refuse(say_later("height of the half-round log"), height, accepted)
    return _round_below(half, height, half if height > half * ROUNDING else height)


def round_topped(width: float, height: float) -> Profile:
    """Return a part of a circle at most half as high as wide."""
    half = width / 2.0
    if height > half * ROUNDING:
        accepted = say(
            "at most {half}, half the width; a higher log is '{kind}'",
            half=millimetres(half),
            kind="half-round",
        )
        raise refuse(say_later("height of the round-topped log"), height, accepted)
    return _round_below(half, height, height)


def rounded(width: float, height: float, corner_radius: float) -> Profile:
    """Return upright walls above edges rounded by a radius; 0 leaves them sharp."""
    half = width / 2.0
    most = min(half, height)
    reason = say_later("so that the corner fits half the width and the height")
    require_between(say_later("corner radius of the log"), corner_radius, 0.0, most, reason)
    radius = min(corner_radius, most)
    flat = [Segment((0.0, 0.0), (half - radius, 0.0))] if radius < half else []
    corner = _corner(half, radius) if radius > 0.0 else []
    wall = [Segment((half, radius), (half, height))] if radius < height else []
    return Profile((*flat, *corner, *wall), height)


def _corner(half: float, radius: float) -> list[Piece]:
    """Return the quarter circle between closed end and wall."""
    centre = (half - radius, radius)
    return [Arc(centre=centre, radius=radius, side=1, levels=(0.0, radius))]


def _round_below(half: float, height: float, rise: float) -> Profile:
    """Return an arc that reaches the half width at `rise`, then an upright wall."""
    radius = (half**2 + rise**2) / (2.0 * rise)
    arc = Arc(centre=(0.0, radius), radius=radius, side=1, levels=(0.0, rise))
    if height <= rise * ROUNDING:
        return Profile((arc,), height)
    return Profile((arc, Segment((half, rise), (half, height))), height)
