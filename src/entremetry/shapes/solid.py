"""What every shape can tell, whatever its kind."""

from __future__ import annotations

from typing import Protocol, TypeAlias

import numpy as np
from numpy.typing import NDArray

Floats: TypeAlias = NDArray[np.float64]
Flags: TypeAlias = NDArray[np.bool_]
Wholes: TypeAlias = NDArray[np.int_]


class Solid(Protocol):
    """A body as it lies in its mould: closed end at level 0, opening (rim) at level `height`.

    Lengths in m, areas in m2, volumes in m3. The axis x runs along the longest horizontal
    direction, y across it, z (the level) upward from the closed end; the body is centred on
    x = y = 0.
    """

    @property
    def height(self) -> float:
        """Distance from the closed end to the rim. [m]"""

    @property
    def volume(self) -> float:
        """Volume up to the rim. [m3]"""

    @property
    def wall_area(self) -> float:
        """Area that touches the mould: all of the surface but the opening. [m2]"""

    @property
    def length(self) -> float:
        """Greatest extent along x. [m]"""

    @property
    def width(self) -> float:
        """Greatest extent along y. [m]"""

    def volume_below(self, level: float) -> float:
        """Volume between the closed end and a level; 0 below, all above. [m3]"""

    def level_at(self, volume: float) -> float:
        """Level to which a volume fills; inverse of `volume_below`. [m]

        Raises OutsideRange if the volume is negative or more than the solid holds.
        """

    def area_at(self, level: float) -> float:
        """Horizontal cross-section area at a level inside. [m2]"""

    def section(self) -> tuple[Floats, ...]:
        """Closed outlines of the vertical section through the axis along x.

        Each is an array of shape (n, 2) of (x, z), first point not repeated. One outline for
        most shapes, two for a ring with a hole. [m]
        """

    def plan(self, level: float) -> tuple[Floats, ...]:
        """Closed outlines of the horizontal section at a level, outer first, then holes.

        Each is an array of shape (n, 2) of (x, y). [m]
        """

    def surface(self, spacing: float) -> Floats:
        """Points on the whole surface, opening included, at most `spacing` apart. (n, 3) [m]"""

    def clearance(self, points: Floats) -> Floats:
        """Distance of points (n, 3) from the wall (not the opening). Shape (n,). [m]

        Positive inside, negative outside the wall. A point above the rim counts as if the wall
        went on straight up, so an insert that stands proud of the rim is not an error here.
        """

    def scaled(self, factor: float) -> Solid:
        """Similar solid with every length multiplied by `factor`."""
