"""Hand-made sections of the shapes that are drawn: dome, ring, log, glass, frame."""

from __future__ import annotations

import numpy as np

from entremetry.dessert.batch_sheet import DrawnPart, Position, Section
from entremetry.shapes.solid import Floats


def arc(radius: float, centre: tuple[float, float], start: float, end: float) -> Floats:
    angles = np.radians(np.linspace(start, end, 49))
    return np.column_stack(
        [centre[0] + radius * np.cos(angles), centre[1] + radius * np.sin(angles)]
    )


def bowl(radius: float, low: float = 0.0) -> Floats:
    """Hemisphere with its closed end at the level `low`."""
    return arc(radius, (0.0, low + radius), 180.0, 360.0)


def box(half: float, low: float, high: float) -> Floats:
    return np.array([[-half, low], [half, low], [half, high], [-half, high]])


def part(component: str, name: str, kind: str, position: Position, **sizes: object) -> DrawnPart:
    return DrawnPart(component=component, name=name, kind=kind, position=position, **sizes)  # type: ignore[arg-type]


def dome() -> Section:
    return Section(
        cavity=(bowl(0.035),),
        height=0.035,
        served_upside_down=True,
        is_vessel=False,
        parts=(
            part("mousse", "Blackcurrant mousse", "mousse", Position.FILLING, high=0.035),
            part(
                "insert",
                "Vanilla cream insert",
                "insert",
                Position.INSERT,
                outlines=(bowl(0.020, low=0.008),),
            ),
            part(
                "base",
                "Hazelnut shortcrust",
                "base",
                Position.BASE,
                low=0.030,
                high=0.035,
                width=0.060,
            ),
            part("glaze", "Mirror glaze", "glaze", Position.COATING, thickness=0.002),
            part("nuts", "Roasted hazelnuts", "garnish", Position.GARNISH),
        ),
    )


def savarin() -> Section:
    """Ring of 180 mm with a hole of 60 mm and a round bottom."""
    lobes = tuple(arc(0.030, (x, 0.030), 180.0, 360.0) for x in (-0.060, 0.060))
    return Section(
        cavity=lobes,
        height=0.030,
        served_upside_down=True,
        is_vessel=False,
        parts=(
            part("mousse", "Coffee mousse", "mousse", Position.FILLING, high=0.030),
            part(
                "insert",
                "Praline cream",
                "insert",
                Position.INSERT,
                outlines=tuple(arc(0.010, (x, 0.014), 0.0, 360.0)[:-1] for x in (-0.060, 0.060)),
            ),
            part(
                "base",
                "Hazelnut dacquoise",
                "base",
                Position.BASE,
                low=0.026,
                high=0.034,
                width=0.170,
            ),
            part("glaze", "Coffee glaze", "glaze", Position.COATING, thickness=0.002),
        ),
    )


def log() -> Section:
    return Section(
        cavity=(box(0.120, 0.0, 0.065),),
        height=0.065,
        served_upside_down=True,
        is_vessel=False,
        parts=(
            part("mousse", "Pear mousse", "mousse", Position.FILLING, high=0.065),
            part(
                "insert",
                "Soft caramel insert",
                "insert",
                Position.INSERT,
                outlines=(box(0.110, 0.020, 0.042),),
            ),
            part(
                "base",
                "Almond joconde",
                "base",
                Position.BASE,
                low=0.057,
                high=0.065,
                width=0.232,
            ),
            part("velvet", "Caramel glaze", "glaze", Position.COATING, thickness=0.0015),
        ),
    )


def glass() -> Section:
    profile = np.array(
        [
            [-0.024, 0.0],
            [0.024, 0.0],
            [0.028, 0.004],
            [0.033, 0.040],
            [0.036, 0.085],
            [-0.036, 0.085],
            [-0.033, 0.040],
            [-0.028, 0.004],
        ]
    )
    return Section(
        cavity=(profile,),
        height=0.085,
        served_upside_down=False,
        is_vessel=True,
        parts=(
            part("jelly", "Mango and lime jelly", "insert", Position.FILLING, high=0.022),
            part("cream", "Coconut cream", "mousse", Position.FILLING, low=0.022, high=0.052),
            part("compote", "Mango compote", "insert", Position.FILLING, low=0.052, high=0.064),
            part("crumble", "Coconut crumble", "crumble", Position.FILLING, low=0.064, high=0.074),
            part("zest", "Lime zest", "garnish", Position.GARNISH),
        ),
    )


def frame() -> Section:
    return Section(
        cavity=(box(0.300, 0.0, 0.040),),
        height=0.040,
        served_upside_down=False,
        is_vessel=False,
        parts=(
            part("sponge", "Cocoa sponge", "base", Position.FILLING, high=0.010),
            part("crunch", "Praline crunch", "crumble", Position.FILLING, low=0.010, high=0.014),
            part("cream", "Raspberry jelly", "insert", Position.FILLING, low=0.014, high=0.022),
            part(
                "mousse", "Dark chocolate mousse", "mousse", Position.FILLING, low=0.022, high=0.040
            ),
            part(
                "glaze",
                "Raspberry glaze",
                "glaze",
                Position.COATING,
                thickness=0.002,
                top_only=True,
            ),
            part("nibs", "Cocoa nibs", "garnish", Position.GARNISH),
        ),
    )


SECTIONS = {"dome": dome, "savarin": savarin, "log": log, "glass": glass, "frame": frame}
