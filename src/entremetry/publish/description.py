"""The drawing in words, for those who cannot see it."""

from __future__ import annotations

import numpy as np

from entremetry.dessert.batch_sheet import DrawnPart, Position, Section
from entremetry.publish.typography import millimetres
from entremetry.words import say, say_later


def description(section: Section) -> str:
    """What is drawn, from the top of what is served to what it stands on."""
    points = np.concatenate(section.cavity)
    width = float(np.ptp(points[:, 0]))
    parts = sorted(section.parts, key=lambda part: rank(part, section))
    message = (
        say_later("Section to scale through one glass, {width} wide and {height} high.")
        if section.is_vessel
        else say_later("Section to scale through one piece, {width} wide and {height} high.")
    )
    head = say(message, width=millimetres(width), height=millimetres(section.height))
    told = "; ".join(sentence(part) for part in parts)
    return " ".join([head, say("From the top: {parts}.", parts=told)])


def rank(part: DrawnPart, section: Section) -> tuple[int, float]:
    """Order from top to bottom; garnish first, then the coating."""
    first = {Position.GARNISH: 0, Position.COATING: 1}.get(part.position, 2)
    if part.position is Position.INSERT and part.outlines:
        level = float(np.concatenate(part.outlines)[:, 1].mean())
    else:
        level = (part.low + part.high) / 2.0
    return first, level if section.served_upside_down else -level


def sentence(part: DrawnPart) -> str:
    """One part with the sizes that matter."""
    if part.position is Position.COATING:
        thick = millimetres(part.thickness)
        return say("{part} all around, {thickness} thick", part=part.name, thickness=thick)
    if part.position is Position.GARNISH:
        return say("{part} on top", part=part.name)
    if part.position is Position.INSERT:
        points = np.concatenate(part.outlines)
        wide, high = (millimetres(float(np.ptp(points[:, k]))) for k in (0, 1))
        return say(
            "{part} inside, {width} wide and {height} high",
            part=part.name,
            width=wide,
            height=high,
        )
    high = millimetres(part.high - part.low)
    if part.position is Position.BASE:
        wide = millimetres(part.width)
        return say(
            "{part}, {width} wide and {thickness} thick",
            part=part.name,
            width=wide,
            thickness=high,
        )
    return say("{part}, {height} high", part=part.name, height=high)
