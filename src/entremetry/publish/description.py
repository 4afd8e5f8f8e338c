"""The drawing in words, for those who cannot see it."""

from __future__ import annotations

import numpy as np

from entremetry.dessert.batch_sheet import DrawnPart, Position, Section
from entremetry.publish.typography import millimetres


def description(section: Section) -> str:
    """What is drawn, from the top of what is served to what it stands on."""
    points = np.concatenate(section.cavity)
    width = float(np.ptp(points[:, 0]))
    kind = "glass" if section.is_vessel else "piece"
    parts = sorted(section.parts, key=lambda part: rank(part, section))
    head = (
        f"Section to scale through one {kind}, {millimetres(width)} wide and "
        f"{millimetres(section.height)} high."
    )
    return " ".join([head, "From the top:", *(f"{sentence(part)};" for part in parts)])[:-1] + "."


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
        return f"{part.name} all around, {millimetres(part.thickness)} thick"
    if part.position is Position.GARNISH:
        return f"{part.name} on top"
    if part.position is Position.INSERT:
        points = np.concatenate(part.outlines)
        wide, high = (float(np.ptp(points[:, k])) for k in (0, 1))
        return f"{part.name} inside, {millimetres(wide)} wide and {millimetres(high)} high"
    if part.position is Position.BASE:
        thick = part.high - part.low
        return f"{part.name}, {millimetres(part.width)} wide and {millimetres(thick)} thick"
    return f"{part.name}, {millimetres(part.high - part.low)} high"
