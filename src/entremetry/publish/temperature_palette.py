"""Colours from cold to warm: deep blue over mauve to butter, each lighter than the one before."""

from __future__ import annotations

from entremetry.publish.colour import INK, WHITE, Colour, contrast, mixed

# Lightness grows evenly from end to end, so that the order is read without any hue.
COLD_TO_WARM: tuple[Colour, ...] = (
    (22, 33, 66),
    (32, 62, 108),
    (62, 92, 142),
    (116, 115, 160),
    (172, 132, 158),
    (220, 156, 148),
    (245, 190, 146),
    (253, 229, 178),
)
LINES: tuple[Colour, ...] = ((191, 76, 128), (62, 136, 180), (184, 116, 34), (112, 128, 62))


def warmth(share: float) -> Colour:
    """Colour at a share of the way from the coldest (0) to the warmest (1)."""
    place = min(max(share, 0.0), 1.0) * (len(COLD_TO_WARM) - 1)
    index = min(int(place), len(COLD_TO_WARM) - 2)
    return mixed(COLD_TO_WARM[index], COLD_TO_WARM[index + 1], place - index)


def band_colours(count: int) -> tuple[Colour, ...]:
    """So many colours, from the coldest to the warmest."""
    return tuple(warmth(k / max(count - 1, 1)) for k in range(count))


def ink_on(ground: Colour) -> Colour:
    """Ink or white, whichever is read better on a colour."""
    return max(INK, WHITE, key=lambda ink: contrast(ink, ground))
