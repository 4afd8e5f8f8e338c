"""Colours as three numbers from 0 to 255, and how to mix them."""

from __future__ import annotations

from typing import TypeAlias

Colour: TypeAlias = tuple[int, int, int]

WHITE: Colour = (255, 248, 236)
INK: Colour = (38, 26, 22)


def mixed(first: Colour, second: Colour, share: float) -> Colour:
    """First colour with a share (0 to 1) of the second."""
    red, green, blue = (round(a + (b - a) * share) for a, b in zip(first, second, strict=True))
    return red, green, blue


def lighter(colour: Colour, share: float) -> Colour:
    """Colour moved towards white."""
    return mixed(colour, WHITE, share)


def darker(colour: Colour, share: float) -> Colour:
    """Colour moved towards ink."""
    return mixed(colour, INK, share)


def difference(first: Colour, second: Colour) -> float:
    """How far apart two colours look, roughly; under about 40 they are hard to tell apart."""
    weights = (2.0, 4.0, 3.0)
    squares = (weight * (a - b) ** 2 for weight, a, b in zip(weights, first, second, strict=True))
    return float(sum(squares) ** 0.5) / 2.0


def hex_colour(colour: Colour) -> str:
    """Colour as a stylesheet writes it."""
    return "#{:02x}{:02x}{:02x}".format(*colour)


def luminance(colour: Colour) -> float:
    """Relative luminance, 0 for black to 1 for white (wcag_22)."""
    shares = [value / 255.0 for value in colour]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first: Colour, second: Colour) -> float:
    """Contrast ratio of two colours, 1 to 21 (wcag_22)."""
    dark, light = sorted((luminance(first), luminance(second)))
    return (light + 0.05) / (dark + 0.05)


def legible(colour: Colour, ground: Colour, *, least: float = 5.0) -> Colour:
    """Nearest tone of a colour that can be read on a ground."""
    change = darker if luminance(ground) > 0.4 else lighter
    for step in range(20):
        tone = change(colour, 0.05 * step)
        if contrast(tone, ground) >= least:
            return tone
    return change(colour, 1.0)
