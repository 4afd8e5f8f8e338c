"""A drawing as a picture of dots, for what takes no vector drawing."""

from __future__ import annotations


def png(svg: str, width_px: int) -> bytes:
    """Draw an SVG of its own, so many dots wide, in the fonts of this machine."""
    from resvg_py import svg_to_bytes

    return bytes(svg_to_bytes(svg_string=svg, width=width_px))
